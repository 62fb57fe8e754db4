/* The answer's confidence by sampling: all uncertain inputs (uncertain.h) are
 * moved at once and the duty run again, many times.  It sees what first order
 * leaves out: curvature, and inputs that work together.
 *
 * Inputs go together as their joint law says (input_law.h).  An input is
 * swapped for a value drawn anew with all others kept, so that its total effect
 * is what stays uncertain when all others are known: the usual one where inputs
 * are independent, and that of S. Kucherenko, S. Tarantola and P. Annoni,
 * "Estimation of global sensitivity indices for models with dependent
 * variables", Comput. Phys. Commun. 183 (2012), where they are not.
 *
 * Runs are those of cg_spread_closure: in the spread's cells, gas side, films
 * and joints from the nominal run, the cycles anew.
 *
 * Begun and ended once; in between each item 0 .. items - 1 is run once, in any
 * order and from any thread, each with its own workspace: results do not depend
 * on it.
 */
#ifndef CG_CONFIDENCE_H
#define CG_CONFIDENCE_H

#include "answer.h"
#include "sample.h"

/* Samples beyond the quantile that make it worth reading. */
#define CG_CONFIDENCE_BEYOND 10

struct cg_confidence_work;
struct cg_confidence_workspace;

/* `c` must outlive the work; `nominal` is from cg_duty_run_create for it, and
 * `closure` is what its duty closes [m].  samples >= 2.  Errors: as
 * cg_spread_create.  Caller frees. */
enum cg_status cg_confidence_begin(const struct cg_case *c,
                                   const struct cg_duty_run *nominal,
                                   double closure, size_t samples,
                                   unsigned long seed,
                                   struct cg_confidence_work **work,
                                   struct cg_error *error);
void cg_confidence_free(struct cg_confidence_work *work); /* accepts NULL */

/* Number of items; the first ones cost most. */
size_t cg_confidence_items(const struct cg_confidence_work *work);

/* What one thread runs its items in.  CG_NO_MEMORY.  Caller frees. */
enum cg_status
cg_confidence_workspace_create(const struct cg_confidence_work *work,
                               struct cg_confidence_workspace **workspace,
                               struct cg_error *error);
void cg_confidence_workspace_free(
    struct cg_confidence_workspace *workspace); /* or NULL */

/* Runs a sample and, for the first ones, what its shares need.  A run that
 * fails is kept as failed. */
void cg_confidence_run(struct cg_confidence_work *work,
                       struct cg_confidence_workspace *workspace, size_t item);

/* Adds up into the answer of cg_answer_find: confidence, the total effects,
 * and the sum, second ring and verdict with the sampled spread.  With fewer
 * than CG_CONFIDENCE_BEYOND samples beyond the quantile, the larger spread of
 * first order and sampling.  CG_NUMERICAL when more than 1 % of the samples
 * failed, with the reason of the first, or CG_NO_MEMORY. */
enum cg_status cg_confidence_end(struct cg_confidence_work *work,
                                 struct cg_answer *answer,
                                 struct cg_error *error);

/* Closures found, ascending [m], after cg_confidence_end. */
const double *cg_confidence_closures(const struct cg_confidence_work *work,
                                     size_t *count);

#endif
