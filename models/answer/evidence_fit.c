/* The fit of the inputs to the evidence; again with wider spreads where the
 * model is too low for ends that touched. */
#include <math.h>
#include <string.h>

#include "evidence_gap.h"
#include "evidence_work.h"
#include "outside.h"

/* Of what is learned, in standard deviations of after. */
#define TOLERANCE 2e-3

static struct cg_sight value_of(const struct cg_evidence_entry *entry)
{
    if (entry->what == CG_EVIDENCE_COOLANT)
        return (struct cg_sight){CG_SIGHT_VALUE, entry->share, entry->spread};
    if (entry->what != CG_EVIDENCE_ENDS)
        return (struct cg_sight){CG_SIGHT_VALUE, entry->temperature,
                                 entry->spread};
    return (struct cg_sight){entry->touched ? CG_SIGHT_ABOVE : CG_SIGHT_BELOW,
                             entry->cold_gap, entry->spread};
}

/* What scatters from engine to engine in proportion: the closure (as large as
 * the gap, as far as is known), how much warmer than the coolant a body is, the
 * share. */
static double scattered(const struct cg_evidence *evidence,
                        const struct cg_evidence_entry *entry, double value)
{
    bool warm =
        entry->what != CG_EVIDENCE_ENDS && entry->what != CG_EVIDENCE_COOLANT;
    return warm ? value - cg_outside_temperature(&evidence->run[entry->run])
                : value;
}

/* What a finding says of the engine itself: of another's by its scatter less.
 */
static struct cg_sight sight_of(const struct cg_evidence *evidence,
                                const struct cg_evidence_entry *entry)
{
    struct cg_sight sight = value_of(entry);
    double others = 0.0; /* findings of that engine, this one too */
    if (entry->engine == 0)
        return sight;
    for (size_t i = 0; i < evidence->entries; i++)
        others += evidence->entry[i].engine == entry->engine;
    sight.spread =
        hypot(sight.spread, sqrt(others) *
                                evidence->run[entry->run].uncertainty.engine *
                                scattered(evidence, entry, sight.value));
    return sight;
}

/* A temperature, or the hot gap left. */
static double shown(const struct cg_evidence_entry *entry, double y)
{
    return entry->what == CG_EVIDENCE_ENDS ? entry->cold_gap - y : y;
}

/* What was fitted, and how. */
struct fit {
    struct cg_evidence_work *work;
    struct cg_posterior_model model;
    struct cg_posterior *found;
    size_t lowest; /* the entry that the model is too low for; entries: none */
    bool refused;  /* by a check, and not for want of figures */
};

/* At the prior, with all as it was found. */
static enum cg_status begin(struct fit *fit, struct cg_error *error)
{
    struct cg_evidence_work *work = fit->work;
    const struct cg_evidence *evidence = work->evidence;
    work->wide = 1.0;
    work->too_low = false;
    for (size_t i = 0; i < evidence->entries; i++)
        work->sight[i] = sight_of(evidence, &evidence->entry[i]);
    cg_posterior_free(fit->found);
    fit->found = NULL;
    fit->refused = false;
    fit->lowest = evidence->entries;
    return cg_posterior_create(&fit->model, &fit->found, error);
}

static enum cg_status find(struct fit *fit,
                           const struct cg_posterior_model *model,
                           struct cg_error *error)
{
    struct cg_evidence_work *work = fit->work;
    enum cg_status status =
        cg_evidence_check(work, model, fit->found, false, error);
    fit->refused = status == CG_BAD_INPUT;
    if (status == CG_OK)
        status = cg_posterior_find(model, fit->found, error);
    if (status != CG_OK)
        return status;
    status = cg_evidence_check(work, model, fit->found, true, error);
    fit->refused = status == CG_BAD_INPUT;
    return status;
}

/* By the straight model about the prior: the full one is wrong for this engine
 * in ways that no fit mends, and what it is far from its own bends away. */
static enum cg_status find_straight(struct fit *fit, struct cg_error *error)
{
    struct cg_posterior_model model = fit->model;
    struct cg_posterior *found = fit->found;
    model.values = cg_evidence_line_values;
    model.slopes = cg_evidence_line_slopes;
    memcpy(fit->work->line, found->y, found->sights * sizeof *found->y);
    memcpy(fit->work->line_slope, found->slope,
           found->sights * found->unknowns * sizeof *found->slope);
    enum cg_status status = find(fit, &model, error);
    return status == CG_OK
               ? cg_evidence_values(fit->work, found->mean, found->y, error)
               : status;
}

/* With the spreads wider, where the model is too low.  What cannot be computed
 * is not reached for, and at last nothing is: the gap itself holds the rest. */
static enum cg_status find_low(struct fit *fit, struct cg_error *error)
{
    static const double off[] = {CG_EVIDENCE_LOW, 0.5 * CG_EVIDENCE_LOW, NAN};
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < sizeof off / sizeof off[0]; i++) {
        status = begin(fit, error);
        if (status == CG_OK)
            status = cg_evidence_widen(fit->work, &fit->model, fit->found,
                                       off[i], &fit->lowest, error);
        if (status != CG_OK || !fit->work->too_low)
            return status;
        status = find_straight(fit, error);
        if (status == CG_OK || status == CG_NO_MEMORY || fit->refused)
            return status;
    }
    return status;
}

/* Closures of the signs by what was learned, conditions as stated. */
static enum cg_status set_closures(const struct fit *fit,
                                   struct cg_learned *learned,
                                   struct cg_error *error)
{
    double u[CG_EVIDENCE_UNKNOWNS] = {0.0}, y[CG_EVIDENCE];
    const struct cg_evidence *evidence = fit->work->evidence;
    memcpy(u, fit->found->mean, fit->work->shared * sizeof *u);
    enum cg_status status = cg_evidence_values(fit->work, u, y, error);
    for (size_t i = 0; i < evidence->entries; i++)
        learned->closure[i] =
            evidence->entry[i].what == CG_EVIDENCE_ENDS ? y[i] : NAN;
    return status;
}

static enum cg_status fit_all(struct fit *fit, struct cg_learned *learned,
                              struct cg_error *error)
{
    const struct cg_evidence *evidence = fit->work->evidence;
    struct cg_error plain = {CG_OK, ""};
    enum cg_status status = begin(fit, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < evidence->entries; i++)
        learned->before[i] = shown(&evidence->entry[i], fit->found->y[i]);
    status = cg_evidence_check_ends(fit->work, fit->found->y, error);
    if (status != CG_OK)
        return status;
    status = find(fit, &fit->model, &plain);
    if (status != CG_OK && status != CG_NO_MEMORY) {
        enum cg_status low = find_low(fit, error);
        if (low != CG_OK || fit->work->too_low)
            return low;
    }
    return status == CG_OK ? status
                           : cg_error_set(error, status, "%s", plain.text);
}

enum cg_status cg_evidence_fit(struct cg_evidence_work *work,
                               struct cg_learned *learned,
                               struct cg_error *error)
{
    const struct cg_evidence *evidence = work->evidence;
    struct fit fit = {
        .work = work,
        .model = {.unknowns = work->shared +
                              evidence->runs * (work->moving - work->shared),
                  .sights = evidence->entries,
                  .sight = work->sight,
                  .tolerance = TOLERANCE,
                  .context = work,
                  .values = cg_evidence_values,
                  .slopes = cg_evidence_slopes}};
    enum cg_status status = fit_all(&fit, learned, error);
    if (status == CG_OK) {
        for (size_t i = 0; i < evidence->entries; i++)
            learned->after[i] = shown(&evidence->entry[i], fit.found->y[i]);
        cg_evidence_lesson(work, fit.found, fit.lowest, learned);
        status = set_closures(&fit, learned, error);
    }
    learned->too_low = work->too_low;
    learned->lowest = fit.lowest;
    learned->ends = cg_evidence_ends(evidence, learned);
    cg_posterior_free(fit.found);
    return status;
}
