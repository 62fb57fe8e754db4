/* Ends that touched where the model leaves plenty: how wide the spreads must
 * be for it, and how much of the gap they then reach. */
#include <math.h>
#include <string.h>

#include "evidence_work.h"

/* Step of the spreads' widening. */
#define WIDENING 1.1

/* Spread of a sign that says nothing [m]. */
#define NOTHING 1.0

/* Of a gap, to see how fast its deviation falls [m]. */
#define STEP 1e-6

static bool has_touched(const struct cg_evidence_work *work, size_t i)
{
    const struct cg_evidence_entry *entry = &work->evidence->entry[i];
    return entry->what == CG_EVIDENCE_ENDS && entry->touched;
}

/* Of ends that touched, from all that was measured and the prior. */
static enum cg_status deviation(const struct cg_posterior_model *model,
                                const struct cg_posterior *found, size_t i,
                                double *off, struct cg_error *error)
{
    bool given[CG_EVIDENCE];
    for (size_t j = 0; j < CG_EVIDENCE; j++)
        given[j] = true; /* signs have no weight yet */
    return cg_posterior_deviation(model, found, i, given, off, error);
}

/* The entry farthest off, and how far. */
static enum cg_status farthest(const struct cg_evidence_work *work,
                               const struct cg_posterior_model *model,
                               const struct cg_posterior *found, size_t *worst,
                               double *most, struct cg_error *error)
{
    *most = 0.0;
    for (size_t i = 0; i < work->evidence->entries; i++) {
        double off = 0.0;
        enum cg_status status = has_touched(work, i)
                                    ? deviation(model, found, i, &off, error)
                                    : CG_OK;
        if (status != CG_OK)
            return status;
        if (off > *most * (1.0 + 1e-6)) {
            *most = off;
            *worst = i;
        }
    }
    return CG_OK;
}

static void widen(struct cg_evidence_work *work, struct cg_posterior *found,
                  double wide)
{
    size_t n = found->unknowns;
    double by = wide / work->wide;
    for (size_t i = 0; i < found->sights; i++)
        for (size_t k = 0; k < work->shared; k++)
            found->slope[i * n + k] *= by;
    work->wide = wide;
}

/* Takes a gap that touched down to `off` standard deviations, where it is
 * farther. */
static enum cg_status lower(struct cg_evidence_work *work,
                            const struct cg_posterior_model *model,
                            const struct cg_posterior *found, size_t i,
                            double off, struct cg_error *error)
{
    double now, less;
    if (isnan(off)) {
        work->sight[i].spread = NOTHING;
        return CG_OK;
    }
    enum cg_status status = deviation(model, found, i, &now, error);
    if (status != CG_OK || !(now > off))
        return status;
    work->sight[i].value -= STEP;
    status = deviation(model, found, i, &less, error);
    work->sight[i].value -= (less - off) * STEP / (now - less);
    return status;
}

enum cg_status cg_evidence_widen(struct cg_evidence_work *work,
                                 const struct cg_posterior_model *model,
                                 struct cg_posterior *found, double off,
                                 size_t *lowest, struct cg_error *error)
{
    double most;
    *lowest = work->evidence->entries;
    enum cg_status status = farthest(work, model, found, lowest, &most, error);
    if (status != CG_OK || !(most > CG_EVIDENCE_LOW)) {
        *lowest = work->evidence->entries;
        return status;
    }
    work->too_low = true;
    while (status == CG_OK && most > CG_EVIDENCE_LOW &&
           work->wide < CG_EVIDENCE_WIDEST) {
        size_t at;
        widen(work, found, fmin(WIDENING * work->wide, CG_EVIDENCE_WIDEST));
        status = farthest(work, model, found, &at, &most, error);
    }
    for (size_t i = 0; i < work->evidence->entries && status == CG_OK; i++)
        if (has_touched(work, i))
            status = lower(work, model, found, i, off, error);
    return status;
}

static size_t unknowns_of(const struct cg_evidence_work *work)
{
    return work->shared + work->evidence->runs * (work->moving - work->shared);
}

enum cg_status cg_evidence_line_values(void *context, const double *u,
                                       double *y, struct cg_error *error)
{
    const struct cg_evidence_work *work = context;
    size_t n = unknowns_of(work);
    (void)error;
    for (size_t i = 0; i < work->evidence->entries; i++) {
        y[i] = work->line[i];
        for (size_t k = 0; k < n; k++)
            y[i] += work->line_slope[i * n + k] * u[k];
    }
    return CG_OK;
}

enum cg_status cg_evidence_line_slopes(void *context, const double *u,
                                       double *slope, struct cg_error *error)
{
    const struct cg_evidence_work *work = context;
    (void)u;
    (void)error;
    memcpy(slope, work->line_slope,
           work->evidence->entries * unknowns_of(work) * sizeof *slope);
    return CG_OK;
}
