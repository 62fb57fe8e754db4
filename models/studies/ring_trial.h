/* Private to ring_choice.c and ring_trial.c: a study in work. */
#ifndef CG_RING_TRIAL_H
#define CG_RING_TRIAL_H

#include "ring_choice.h"

/* A boost looked at, and whether it could be computed. */
struct cg_rung {
    double boost;
    bool own; /* the case's: computed with the candidates */
    enum cg_status status;
};

struct cg_choice_study {
    const struct cg_case *c;
    struct cg_ring_choice *choice;
    size_t choices;
    struct cg_rung *rung;
    size_t rungs;
    double *load;           /* [choices][rungs][CG_RING_LIMITS] */
    enum cg_status *status; /* [choices] of the full run, and why */
    struct cg_error *error;
};

/* The loads of a candidate at a boost [CG_RING_LIMITS]. */
double *cg_choice_load(const struct cg_choice_study *study, size_t choice,
                       size_t rung);

/* The rung of the case's own boost. */
size_t cg_choice_own_rung(const struct cg_choice_study *study);

/* All candidates at one boost, on the gas side of the case's own ring; not for
 * the own rung, whose loads come with the candidates.  Its status is kept. */
void cg_choice_climb(struct cg_choice_study *study, size_t rung);

/* One candidate at the case's own boost, in full.  Errors: as
 * cg_answer_find. */
enum cg_status cg_choice_try(struct cg_choice_study *study, size_t choice,
                             struct cg_error *error);

#endif
