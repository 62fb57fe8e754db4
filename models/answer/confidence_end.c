/* From samples to the answer's confidence. */
#include <math.h>
#include <string.h>

#include "confidence_work.h"

/* Inputs that only add have their share in closed form: they are normal, and
 * stand in the closure by themselves. */
static void set_total_effects(const struct cg_confidence_work *work,
                              const struct cg_sample_sum *sum,
                              struct cg_answer *answer)
{
    for (size_t k = 0; k < answer->contributions; k++) {
        struct cg_contribution *to = &answer->contribution[k];
        if (strcmp(to->name, CG_LAW_NAME) == 0)
            continue; /* which law: not swapped */
        to->total_effect = to->total_effect_error = 0.0;
        for (size_t i = 0; i < work->inputs; i++) {
            const struct cg_uncertain *input = work->input[i];
            if (strcmp(input->name, to->name) != 0)
                continue;
            if (i < work->moving)
                to->total_effect = cg_sample_total_effect(
                    work->sample, sum, i, &to->total_effect_error);
            else if (sum->sd > 0.0)
                to->total_effect = pow(cg_uncertain_added(input, work->c,
                                                          work->spread->closure) /
                                           sum->sd,
                                       2.0) /
                                   work->of_law[0].law.inverse[i][i];
        }
    }
}

/* Share of the closures found that are above a limit [1]. */
static double share_above(const struct cg_confidence_work *work,
                          const struct cg_sample_sum *sum, double limit)
{
    size_t above = 0;
    for (size_t j = 0; j < sum->good; j++)
        above += work->sample->sorted[j] > limit;
    return (double)above / (double)sum->good;
}

static void use_samples(const struct cg_confidence_work *work,
                        const struct cg_sample_sum *sum,
                        struct cg_answer *answer)
{
    const struct cg_case *c = work->c;
    struct cg_confidence *to = &answer->confidence;
    double first_order = answer->top.spread;
    double sampled = sum->quantile - answer->extremes.closure;

    to->samples = work->sample->samples;
    to->replicates = work->sample->replicates;
    to->failures = sum->failures;
    to->seed = work->seed;
    to->mean = sum->mean;
    to->sd = sum->sd;
    to->quantile = sum->quantile;
    to->quantile_error = sum->quantile_error;
    to->first_order = answer->top;
    to->few = (double)sum->good * c->margin.risk <
              CG_CONFIDENCE_BEYOND * (1.0 - 1e-9);
    cg_answer_add_up(c, sampled, answer);
    to->sampled = answer->top;
    if (to->few) {
        if (first_order > sampled)
            cg_answer_add_up(c, first_order, answer);
        return;
    }
    struct cg_verdict *verdict = &answer->verdict;
    verdict->chance_less =
        share_above(work, sum, verdict->gap - c->margin.residual);
    verdict->chance_touch = share_above(work, sum, verdict->gap);
}

/* Says why the first of the failed samples failed. */
static enum cg_status tell_failure(const struct cg_confidence_work *work,
                                   const char *count, struct cg_error *error)
{
    struct cg_error first = {CG_OK, "out of memory"};
    struct cg_confidence_workspace *workspace;
    double closure;
    size_t item = 0;
    enum cg_status status =
        cg_confidence_workspace_create(work, &workspace, error);
    if (status != CG_OK)
        return status;
    while (!isnan(work->sample->value[item]))
        item++;
    (void)cg_confidence_sample(work, workspace, item, &closure, &first);
    cg_confidence_workspace_free(workspace);
    return cg_error_set(error, CG_NUMERICAL, "%.100s; the first: %.380s",
                        count, first.text);
}

enum cg_status cg_confidence_end(struct cg_confidence_work *work,
                                 struct cg_answer *answer,
                                 struct cg_error *error)
{
    struct cg_sample_sum sum;
    struct cg_error trouble = {CG_OK, ""};
    enum cg_status status = cg_sample_add_up(
        work->sample, 1.0 - work->c->margin.risk, &sum, &trouble);
    if (status != CG_OK)
        return tell_failure(work, trouble.text, error);
    set_total_effects(work, &sum, answer);
    use_samples(work, &sum, answer);
    return CG_OK;
}

const double *cg_confidence_closures(const struct cg_confidence_work *work,
                                     size_t *count)
{
    size_t good = 0;
    for (size_t j = 0; j < work->sample->samples; j++)
        good += isnan(work->sample->value[j]) ? 0 : 1;
    *count = good;
    return work->sample->sorted;
}
