#include "evidence.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evidence_work.h"
#include "uncertain.h"

/* Of what is learned, in standard deviations of after. */
#define TOLERANCE 2e-3

/* Spreads: common practice, no source. */
static const struct cg_evidence_way ways[] = {
    {"thermocouple", 5.0, true, "reads as it runs"},
    {"thermal_plug", 10.0, false, "a plug that softens, read afterwards"},
    {"hardness", 15.0, false, "hardness lost by the part itself"},
};

const struct cg_evidence_way *cg_evidence_ways(size_t *count)
{
    *count = sizeof ways / sizeof ways[0];
    return ways;
}

const char *cg_evidence_name(enum cg_evidence_what what)
{
    static const char *const names[] = {"crown",       "groove_top",
                                        "ring_top",    "ring_second",
                                        "liner",       "exhaust_probe",
                                        "coolant_share", "ends"};
    return names[what];
}

bool cg_evidence_is_steady(enum cg_evidence_what what)
{
    return what == CG_EVIDENCE_PROBE || what == CG_EVIDENCE_COOLANT;
}

void cg_evidence_free(struct cg_evidence *evidence)
{
    free(evidence->run);
    memset(evidence, 0, sizeof *evidence);
}

/* Inputs in their three kinds. */
static void choose_inputs(const struct cg_case *c,
                          struct cg_evidence_work *work)
{
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    for (int kind = 0; kind < 3; kind++) {
        for (size_t i = 0; i < count; i++) {
            int own = all[i].direct ? 2 : cg_uncertain_is_condition(&all[i]);
            if (own == kind && cg_uncertain_spread(&all[i], c) > 0.0)
                work->row[work->inputs++] = i;
        }
        if (kind == 0)
            work->shared = work->inputs;
        if (kind == 1)
            work->moving = work->inputs;
    }
}

static struct cg_sight sight_of(const struct cg_evidence_entry *entry)
{
    if (entry->what == CG_EVIDENCE_COOLANT)
        return (struct cg_sight){CG_SIGHT_VALUE, entry->share, entry->spread};
    if (entry->what != CG_EVIDENCE_ENDS)
        return (struct cg_sight){CG_SIGHT_VALUE, entry->temperature,
                                 entry->spread};
    return (struct cg_sight){entry->touched ? CG_SIGHT_ABOVE : CG_SIGHT_BELOW,
                             entry->cold_gap, entry->spread};
}

/* A temperature, or the hot gap left. */
static double shown(const struct cg_evidence_entry *entry, double y)
{
    return entry->what == CG_EVIDENCE_ENDS ? entry->cold_gap - y : y;
}

/* Scores of all inputs: the shared ones as found, the rest as before, but for
 * what they have in common. */
static void fill_lesson(const struct cg_evidence_work *work,
                        const struct cg_posterior *found,
                        struct cg_learned *learned)
{
    double u[CG_INPUTS] = {0.0}, mean[CG_INPUTS];
    size_t n = work->inputs;
    memcpy(u, found->mean, work->shared * sizeof *u);
    cg_input_law_scores(&work->law, u, mean);
    for (size_t i = 0; i < CG_INPUTS; i++)
        learned->covariance[i][i] = 1.0;
    for (size_t i = 0; i < n; i++) {
        learned->mean[work->row[i]] = mean[i];
        for (size_t j = 0; j < n; j++) {
            double sum = 0.0;
            for (size_t k = 0; k <= i; k++)
                for (size_t l = 0; l <= j; l++) {
                    double middle = k == l ? 1.0 : 0.0;
                    if (k < work->shared && l < work->shared)
                        middle = found->covariance[k * found->unknowns + l];
                    sum += work->law.factor[i][k] * middle *
                           work->law.factor[j][l];
                }
            learned->covariance[work->row[i]][work->row[j]] = sum;
        }
    }
}

static enum cg_status learn(struct cg_evidence_work *work,
                            struct cg_learned *learned, struct cg_error *error)
{
    const struct cg_evidence *evidence = work->evidence;
    struct cg_posterior *found = NULL;
    struct cg_posterior_model model = {
        .unknowns =
            work->shared + evidence->runs * (work->moving - work->shared),
        .sights = evidence->entries,
        .sight = work->sight,
        .tolerance = TOLERANCE,
        .context = work,
        .values = cg_evidence_values,
        .slopes = cg_evidence_slopes};
    enum cg_status status = cg_posterior_create(&model, &found, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < evidence->entries; i++)
        learned->before[i] = shown(&evidence->entry[i], found->y[i]);
    status = cg_evidence_check(work, &model, found, false, error);
    if (status == CG_OK)
        status = cg_posterior_find(&model, found, error);
    if (status == CG_OK)
        status = cg_evidence_check(work, &model, found, true, error);
    if (status == CG_OK) {
        for (size_t i = 0; i < evidence->entries; i++)
            learned->after[i] = shown(&evidence->entry[i], found->y[i]);
        fill_lesson(work, found, learned);
    }
    cg_posterior_free(found);
    return status;
}

enum cg_status cg_evidence_learn(const struct cg_evidence *evidence,
                                 struct cg_learned *learned,
                                 struct cg_error *error)
{
    struct cg_learned fresh = {.entries = evidence->entries};
    struct cg_evidence_work *work = NULL;
    enum cg_status status = CG_OK;
    if (evidence->entries == 0)
        goto out;
    work = calloc(1, sizeof *work);
    if (work == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    work->evidence = evidence;
    for (size_t i = 0; i < evidence->entries; i++)
        work->sight[i] = sight_of(&evidence->entry[i]);
    choose_inputs(&evidence->run[0], work);
    if (work->shared == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "evidence: no input has a spread in group "
                              "uncertainty, so that none can be learned");
    if (status == CG_OK)
        status = cg_input_law_fill(&evidence->run[0], work->row, work->inputs,
                                   &work->law, error);
    if (status == CG_OK)
        status = learn(work, &fresh, error);
    for (size_t r = 0; r < CG_EVIDENCE_RUNS; r++)
        cg_duty_run_free(work->run[r]);
    free(work);
out:
    if (status == CG_OK)
        *learned = fresh;
    return status;
}

void cg_learned_apply(const struct cg_learned *learned, struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    double width[CG_INPUTS];
    if (learned->entries == 0)
        return;
    for (size_t i = 0; i < count; i++) {
        double *spread = (double *)((char *)c + inputs[i].spread);
        width[i] = sqrt(learned->covariance[i][i]);
        cg_uncertain_move(&inputs[i], learned->mean[i], c);
        *spread *= width[i];
    }
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++)
            cg_input_correlate(c, i, j,
                               learned->covariance[i][j] /
                                   (width[i] * width[j]));
}
