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
    /* Standard deviations of the shared unknowns over those of before [1]; no
     * others than 1 but for the straight model. */
    double wide;
    bool too_low; /* ends that touched do not judge the rest */
    /* The straight model: values and slopes at the prior. */
    double line[CG_EVIDENCE];
    double line_slope[CG_EVIDENCE * CG_EVIDENCE_UNKNOWNS];
    size_t row[CG_INPUTS]; /* of cg_uncertains */
    size_t shared, moving, inputs;
    struct cg_input_law law;
    struct cg_sight sight[CG_EVIDENCE];
    struct cg_duty_run *run[CG_EVIDENCE_RUNS]; /* at the last values */
    double at[CG_EVIDENCE_UNKNOWNS]; /* where slopes are taken */
    /* Slopes of logged runs as last taken, and where; not taken: wide 0. */
    double kept[CG_EVIDENCE * CG_EVIDENCE_UNKNOWNS];
    double kept_at[CG_EVIDENCE_RUNS][CG_EVIDENCE_UNKNOWNS];
    double kept_wide[CG_EVIDENCE_RUNS];
};

/* What each sight sees: temperatures [K], or the closure [m]; for struct
 * cg_posterior_model, `context` is the work. */
enum cg_status cg_evidence_values(void *context, const double *u, double *y,
                                  struct cg_error *error);
enum cg_status cg_evidence_slopes(void *context, const double *u,
                                  double *slope, struct cg_error *error);

/* Fits the inputs chosen, and fills what was learned.  Errors: as
 * cg_evidence_learn. */
enum cg_status cg_evidence_fit(struct cg_evidence_work *work,
                               struct cg_learned *learned,
                               struct cg_error *error);

/* Refuses evidence that cannot be true; unless `fitted`, only what is too far
 * off to be fitted at all. */
enum cg_status cg_evidence_check(const struct cg_evidence_work *work,
                                 const struct cg_posterior_model *model,
                                 const struct cg_posterior *posterior,
                                 bool fitted, struct cg_error *error);

/* The same of the straight model about the prior. */
enum cg_status cg_evidence_line_values(void *context, const double *u,
                                       double *y, struct cg_error *error);
enum cg_status cg_evidence_line_slopes(void *context, const double *u,
                                       double *slope, struct cg_error *error);

/* Refuses ends that touched at a gap and stayed apart at a narrower one in no
 * easier run; `y`: closures of before. */
enum cg_status cg_evidence_check_ends(const struct cg_evidence_work *work,
                                      const double *y, struct cg_error *error);

/* Makes a posterior that is still at the prior one of wider spreads, and takes
 * ends that touched down to what those can reach at `off` standard deviations
 * (NaN: lets them say nothing).
 * *lowest: the entry the model was farthest too low for; as many as there are
 * entries where it is not.  CG_NO_MEMORY, CG_NUMERICAL. */
enum cg_status cg_evidence_widen(struct cg_evidence_work *work,
                                 const struct cg_posterior_model *model,
                                 struct cg_posterior *found, double off,
                                 size_t *lowest, struct cg_error *error);

/* Scores of all inputs: the shared ones as found, the rest as before, but for
 * what they have in common.  `lowest` as cg_evidence_widen gives it. */
void cg_evidence_lesson(const struct cg_evidence_work *work,
                        const struct cg_posterior *found, size_t lowest,
                        struct cg_learned *learned);

#endif
