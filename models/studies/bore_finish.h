/* Whether a bore's finish holds the oil that the boost target's fuel asks for
 * and has a plateau to run on, and which stage of honing to change.
 *
 * Fuel reaches the bore each cycle and thins and washes the oil; what the
 * valleys hold is what is left to lubricate with.  The scale starts from a
 * proven finish of an unboosted engine and rises with the fuel,
 *
 *     Vo needed = reference oil * (fuel per area and cycle / reference fuel)^n
 *
 * With n = 1/2 a road engine without boost (Rvk 1 um) and a hard-fed race
 * engine (Rvk 2 to 3 um, where fuel is five times as much) both come out as
 * they are honed: from memory, common practice, no source.  It is a scale and
 * not a law.  How much of the fuel reaches the wall, how much oil the rings
 * leave, oil flow and consumption are not looked at.
 */
#ifndef CG_BORE_FINISH_H
#define CG_BORE_FINISH_H

#include "case.h"
#include "material_ratio.h"
#include "status.h"

/* Above these a plateau is not yet one [m]: upper ends for plateau-honed road
 * engines, from memory; common practice, no source. */
#define CG_FINISH_MOST_RPK 0.3e-6
#define CG_FINISH_MOST_RK 1.0e-6
/* Valleys that take up a third of the area leave little to run on [1]. */
#define CG_FINISH_LEAST_MR2 0.67
/* A finish of which the plateau stage has left a fifth as valleys, the usual
 * amount (common practice, no source) [1]. */
#define CG_FINISH_USUAL_VALLEYS 0.20
/* Oil held over oil needed, from where it is oil burned for nothing [1]. */
#define CG_FINISH_AMPLE 3.0

enum cg_honing_change {
    CG_BASE_COARSER,
    CG_BASE_FINER,
    CG_PLATEAU_SHORTER,
    CG_PLATEAU_LONGER,
    CG_PLATEAU_FINER
};

enum cg_finish_reason {
    CG_FINISH_SHALLOW, /* valleys too shallow for the oil needed */
    CG_FINISH_WORN,    /* valleys deep enough, but too few are left */
    CG_FINISH_DEEP,    /* far more oil than needed */
    CG_FINISH_PEAKS,   /* Rpk */
    CG_FINISH_ROUGH,   /* Rk */
    CG_FINISH_STRAIGHT,/* heights of one law: a base stage alone */
    CG_FINISH_BARE     /* Mr2: too little plateau */
};

struct cg_finish_advice {
    enum cg_honing_change change;
    enum cg_finish_reason reason;
    int grit; /* class to go to from the case's stones; 0: none to name */
};

enum { CG_FINISH_ADVICE = 4 };

struct cg_finish_verdict {
    double fuel_flow;     /* of the engine, at the boost target [kg/s] */
    double fuel_per_area; /* liquid, per swept area and cycle [m3/m2] */
    double oil_held, oil_needed; /* per area [m3/m2] */
    bool holds;           /* oil_held >= oil_needed */
    bool bends;           /* heights of two laws: material_probability.h */
    bool plateau;         /* cg_finish_plateau */
    int advices;
    struct cg_finish_advice advice[CG_FINISH_ADVICE]; /* oil first */
};

/* Whether a plateau is there to run on.  None: heights of one law (`bends`
 * false), or a core past CG_FINISH_MOST_RK and rougher than the valleys are
 * deep, which is a base stage still.  Cannot fail. */
bool cg_finish_plateau(const struct cg_core *core, bool bends);

/* Whether the finish may run: oil enough, and a plateau.  Cannot fail. */
bool cg_finish_passes(const struct cg_finish_verdict *verdict);

/* Fuel from the engine cycle at rated speed and load 1; the swept area is that
 * of the cylinder wall, pi bore stroke.  `bends` as cg_probability's.
 * CG_BAD_INPUT, CG_NUMERICAL and CG_NO_MEMORY as the cycle's. */
enum cg_status cg_finish_judge(const struct cg_case *c,
                               const struct cg_core *core, bool bends,
                               struct cg_finish_verdict *verdict,
                               struct cg_error *error);

/* Fuel and oil needed alone, the rest zero; the same errors. */
enum cg_status cg_finish_need(const struct cg_case *c,
                              struct cg_finish_verdict *verdict,
                              struct cg_error *error);

/* The rest, for a verdict that has those.  Cannot fail. */
void cg_finish_hold(const struct cg_case *c, const struct cg_core *core,
                    bool bends, struct cg_finish_verdict *verdict);

/* The advice alone, for oil_held, oil_needed, holds, bends and plateau already
 * in *verdict.  Cannot fail. */
void cg_finish_advise(const struct cg_case *c, const struct cg_core *core,
                      struct cg_finish_verdict *verdict);

#endif
