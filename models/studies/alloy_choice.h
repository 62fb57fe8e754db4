/* The choice of a piston alloy: the cold skirt clearance that each asks of one
 * engine and duty, by the same margin. */
#ifndef CG_ALLOY_CHOICE_H
#define CG_ALLOY_CHOICE_H

#include "answer.h"

struct cg_alloy_choice {
    const struct cg_material *alloy;
    bool own;                   /* the case's own */
    double cold_gap;            /* of the top ring [m] */
    double crown, groove, skirt_at; /* hottest; skirt at its largest closure
                                       [K] */
    struct cg_skirt_answer skirt; /* `given`: the trade's middle, or the
                                     case's own where the alloy says none */
    struct cg_clearance clearance; /* smallest hot, with that skirt [m] */
};

/* The case with that alloy, and the skirt clearance that the trade gives it.
 * Cannot fail. */
struct cg_case cg_alloy_choice_case(const struct cg_case *c,
                                    const struct cg_material *alloy);

/* The case with that alloy, through the whole model.  `alloy` must outlive the
 * choice.  Errors: as cg_answer_find. */
enum cg_status cg_alloy_choice_run(const struct cg_case *c,
                                   const struct cg_material *alloy,
                                   struct cg_alloy_choice *choice,
                                   struct cg_error *error);

#endif
