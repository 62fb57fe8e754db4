/* What ends that touched, or stayed apart, say of the gap itself, whatever the
 * model makes of it. */
#ifndef CG_EVIDENCE_GAP_H
#define CG_EVIDENCE_GAP_H

#include "evidence.h"

/* Uncertainty allowance on a closure by the model that ends which touched ask
 * for [m]: with it the hot gap left is the minimum one of a gap as wide as the
 * widest that touched, and wider by what the model makes of a duty that closes
 * more than the run in which it touched.  -INFINITY where none touched.  Cannot
 * fail. */
double cg_evidence_allowance(const struct cg_case *c, double closure);

/* Whether a run that closed by `run` was at least as hard as what closes by
 * `closure`, both by the same model [m]; closures of the same run in two
 * computations count as the same.  Cannot fail. */
bool cg_evidence_as_hard(double run, double closure);

/* A gap that the engine's own evidence has earned. */
struct cg_earned {
    double gap;   /* [m]; NaN: none */
    size_t entry; /* of the evidence: the run that earned it */
};

/* The smallest gap for which there is a run without contact, at least as hard
 * as a duty that closes by `closure` (nominal, by the updated model [m]; give
 * the hardest of all duties): never below the gap shown in that run, nor below
 * `need`, the updated model's own figure [m].  Other engines' runs earn nothing.
 * The maker's minimum is the caller's to keep.  Cannot fail. */
struct cg_earned cg_evidence_earned(const struct cg_case *c, double closure,
                                    double need);

/* What the engine's own ends showed, with the closures learned.  Cannot
 * fail. */
struct cg_ends_case cg_evidence_ends(const struct cg_evidence *evidence,
                                     const struct cg_learned *learned);

#endif
