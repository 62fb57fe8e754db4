/* The passes of an engine cycle, for cycle.c alone: crank angle in legs, the
 * zone stepped through them from top centre to top centre until it repeats.
 */
#ifndef CG_CYCLE_PASS_H
#define CG_CYCLE_PASS_H

#include "cycle.h"
#include "status.h"
#include "zone.h"

/* A stretch of crank angle in one phase, from edge to edge: intake closing,
 * start of combustion and exhaust opening are kinks and must be edges. */
struct cg_leg {
    enum cg_phase phase;
    double from_deg, to_deg;
    double step_deg;
    double long_step_deg; /* in rough passes */
};

enum {
    CG_LEG_INTAKE,
    CG_LEG_BOTTOM,    /* between bottom centre and intake closing */
    CG_LEG_COMPRESSION,
    CG_LEG_BURN,
    CG_LEG_DIFFUSION, /* an injected fuel's, behind its premixed burn */
    CG_LEG_EXPANSION, /* from 99.9 % burned */
    CG_LEG_BLOW_DOWN, /* to bottom centre */
    CG_LEG_LATE_BLOW_DOWN, /* beyond it, if the valve opens late */
    CG_LEG_EXHAUST,
    CG_LEGS
};

/* State of the residual gas at top dead centre, which a cycle hands on. */
enum { CG_RESIDUAL_TEMPERATURE, CG_RESIDUAL_MASS, CG_RESIDUAL_BURNED };

struct cg_pass {
    const struct cg_cycle_input *input;
    struct cg_zone zone;
    struct cg_leg leg[CG_LEGS];
    bool rough, guessed; /* as the input says */
    double crevice_in_law;
    double residual[CG_RESIDUALS];
    double put_in[CG_RESIDUALS];   /* last useful pair of changes, relative: */
    double came_out[CG_RESIDUALS]; /* of the residual, and of what it becomes */
    struct cg_knock_start knock;   /* the burn, and where it came from */
    double edge[CG_LEGS + 1][CG_ZONE_VARIABLES]; /* at the start of each leg */
};

/* Lays out zone, legs and the residual to begin with.  The input must outlive
 * the pass.  Cannot fail on an input that cg_cycle_check accepts. */
void cg_pass_set(struct cg_pass *pass, const struct cg_cycle_input *input);

/* Runs passes until the residual repeats; writes cycle->point, points and
 * passes.  CG_NUMERICAL as cg_cycle_run. */
enum cg_status cg_pass_settle(struct cg_pass *pass, struct cg_cycle *cycle,
                              struct cg_error *error);

/* The gas of the pass just run as its intake closed, ready for the knock
 * integral of any burn; not with an octane of 0.  Cannot fail. */
void cg_pass_knock(const struct cg_pass *pass, struct cg_knock_limit *limit);

/* Knock integral along the cycle's recorded points [1]; likewise. */
double cg_pass_knock_integral(const struct cg_pass *pass,
                              const struct cg_cycle *cycle);

#endif
