/* The stages of a step, for pack_step.c alone. */
#ifndef CG_PACK_STAGE_H
#define CG_PACK_STAGE_H

#include <stdbool.h>

#include "pack_step.h"

enum { CG_PACK_STAGES = 3 };

/* A tried step. */
struct cg_pack_trial {
    double degrees;
    struct cg_pack_point stage[CG_PACK_STAGES];
    double flow[CG_PACK_STAGES][CG_PACK_FLOWS]; /* [kg/s] */
    double push[CG_PACK_STAGES][CG_PACK_RINGS]; /* [m/s2] */
    double moved[CG_PACK_FLOWS];                /* over the step [kg] */
    double mass[CG_PACK_VOLUMES];               /* at its end [kg] */
    double error; /* largest estimate over its tolerance [1] */
};

/* Tries a step of `degrees` from the state; false if a stage has no solution
 * that Newton finds. */
bool cg_pack_try(const struct cg_ring_pack *pack,
                 const struct cg_pack_control *control,
                 const struct cg_pack_state *state, double degrees,
                 struct cg_pack_trial *trial);

#endif
