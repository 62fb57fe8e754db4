/* What learning works on.  Private to the evidence. */
#ifndef CG_EVIDENCE_WORK_H
#define CG_EVIDENCE_WORK_H

#include "duty_run.h"
#include "evidence.h"
#include "input_law.h"
#include "posterior.h"

enum { CG_EVIDENCE_UNKNOWNS = CG_INPUTS * (CG_EVIDENCE_RUNS + 1) };

/* Inputs with a spread: first the `shared` that are the engine's own, then
 * the conditions of a run (up to `moving`), then those that only add to the
 * closure.  Unknowns of the posterior: the shared ones, then the conditions
 * of each run; independent (input_law.h). */
struct cg_evidence_work {
    const struct cg_evidence *evidence;
    size_t row[CG_INPUTS]; /* of cg_uncertains */
    size_t shared, moving, inputs;
    struct cg_input_law law;
    struct cg_sight sight[CG_EVIDENCE];
    struct cg_duty_run *run[CG_EVIDENCE_RUNS]; /* at the last values */
    double at[CG_EVIDENCE_UNKNOWNS]; /* where slopes are taken */
};

/* What each sight sees: temperatures [K], or the closure [m]; for struct
 * cg_posterior_model, `context` is the work. */
enum cg_status cg_evidence_values(void *context, const double *u, double *y,
                                  struct cg_error *error);
enum cg_status cg_evidence_slopes(void *context, const double *u,
                                  double *slope, struct cg_error *error);

/* Refuses evidence that cannot be true; unless `fitted`, only what is too far
 * off to be fitted at all. */
enum cg_status cg_evidence_check(const struct cg_evidence_work *work,
                                 const struct cg_posterior_model *model,
                                 const struct cg_posterior *posterior,
                                 bool fitted, struct cg_error *error);

#endif
