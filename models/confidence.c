#include "confidence.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "spread.h"
#include "uncertain.h"

struct cg_confidence_work {
    const struct cg_case *c;
    const struct cg_duty_run *nominal;
    struct cg_sample *sample;
    unsigned long seed;
    /* Those with a spread; first the `moving` that move the case, then those
     * that add to the closure. */
    const struct cg_uncertain *input[CG_SAMPLE_INPUTS];
    size_t inputs, moving;
    bool gas_side_same; /* none of them moves the cycle */
};

static void choose_inputs(struct cg_confidence_work *work)
{
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    work->gas_side_same = true;
    for (int direct = 0; direct < 2; direct++) {
        for (size_t i = 0; i < count; i++) {
            if (all[i].direct != (direct == 1) ||
                cg_uncertain_spread(&all[i], work->c) == 0.0)
                continue;
            assert(work->inputs < CG_SAMPLE_INPUTS);
            work->input[work->inputs++] = &all[i];
            work->gas_side_same &= !all[i].gas_side;
        }
        if (direct == 0)
            work->moving = work->inputs;
    }
}

enum cg_status cg_confidence_begin(const struct cg_case *c,
                                   const struct cg_duty_run *nominal,
                                   size_t samples, unsigned long seed,
                                   struct cg_confidence_work **work,
                                   struct cg_error *error)
{
    struct cg_confidence_work *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->c = c;
    made->nominal = nominal;
    made->seed = seed;
    choose_inputs(made);
    /* Nothing uncertain: one input that moves nothing keeps all else plain. */
    size_t inputs = made->inputs > 0 ? made->inputs : 1;
    enum cg_status status = cg_sample_create(
        samples, inputs, made->moving, seed, &made->sample, error);
    if (status != CG_OK) {
        free(made);
        return status;
    }
    *work = made;
    return CG_OK;
}

void cg_confidence_free(struct cg_confidence_work *work)
{
    if (work == NULL)
        return;
    cg_sample_free(work->sample);
    free(work);
}

size_t cg_confidence_items(const struct cg_confidence_work *work)
{
    return work->sample->samples;
}

static struct cg_case case_at(const struct cg_confidence_work *work,
                              const double *score)
{
    struct cg_case at = *work->c;
    for (size_t i = 0; i < work->moving; i++)
        cg_uncertain_move(work->input[i], score[i], &at);
    return at;
}

/* What the inputs that move no field add to the closure [m]. */
static double added(const struct cg_confidence_work *work, const double *score)
{
    double sum = 0.0;
    for (size_t i = work->moving; i < work->inputs; i++)
        sum += work->input[i]->direct_gain * score[i] *
               cg_uncertain_spread(work->input[i], work->c);
    return sum;
}

/* Sample `item`; `keep` as for cg_spread_closure. */
static enum cg_status run_sample(const struct cg_confidence_work *work,
                                 size_t item, struct cg_duty_run **keep,
                                 double *closure, struct cg_error *error)
{
    double score[CG_SAMPLE_INPUTS];
    cg_sample_point(work->sample, item, score);
    struct cg_case at = case_at(work, score);
    enum cg_status status = cg_spread_closure(
        &at, work->nominal, work->gas_side_same, keep, closure, error);
    if (status == CG_OK)
        *closure += added(work, score);
    return status;
}

/* The same sample with each moving input swapped in turn.  Where that leaves
 * the cycle alone, it is taken from `run`, the sample's own. */
static void run_swaps(const struct cg_confidence_work *work, size_t item,
                      const struct cg_duty_run *run)
{
    double score[CG_SAMPLE_INPUTS];
    cg_sample_point(work->sample, item, score);
    double more = added(work, score);
    for (size_t i = 0; i < work->moving; i++) {
        double kept = score[i], closure = NAN;
        score[i] = cg_sample_swap(work->sample, item, i);
        struct cg_case at = case_at(work, score);
        bool gas_side = work->input[i]->gas_side;
        enum cg_status status =
            cg_spread_closure(&at, gas_side ? work->nominal : run, !gas_side,
                              NULL, &closure, NULL);
        work->sample->swapped_value[item * work->moving + i] =
            status == CG_OK ? closure + more : NAN;
        score[i] = kept;
    }
}

void cg_confidence_run(struct cg_confidence_work *work, size_t item)
{
    struct cg_sample *sample = work->sample;
    struct cg_duty_run *run = NULL;
    double closure = NAN;
    bool swapping = item < sample->swaps;
    enum cg_status status =
        run_sample(work, item, swapping ? &run : NULL, &closure, NULL);
    sample->value[item] = status == CG_OK ? closure : NAN;
    if (swapping && status == CG_OK)
        run_swaps(work, item, run);
    else if (swapping) /* its value is NaN: left out with it */
        memset(sample->swapped_value + item * work->moving, 0,
               work->moving * sizeof *sample->swapped_value);
    cg_duty_run_free(run);
}

/* Inputs that only add have their share in closed form: they are normal, and
 * work with no other. */
static void set_total_effects(const struct cg_confidence_work *work,
                              const struct cg_sample_sum *sum,
                              struct cg_answer *answer)
{
    for (size_t k = 0; k < answer->contributions; k++) {
        struct cg_contribution *to = &answer->contribution[k];
        to->total_effect = to->total_effect_error = 0.0;
        for (size_t i = 0; i < work->inputs; i++) {
            const struct cg_uncertain *input = work->input[i];
            if (strcmp(input->name, to->name) != 0)
                continue;
            if (i < work->moving)
                to->total_effect = cg_sample_total_effect(
                    work->sample, sum, i, &to->total_effect_error);
            else if (sum->sd > 0.0)
                to->total_effect = pow(input->direct_gain / sum->sd *
                                       cg_uncertain_spread(input, work->c),
                                       2.0);
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
    double closure;
    size_t item = 0;
    while (!isnan(work->sample->value[item]))
        item++;
    (void)run_sample(work, item, NULL, &closure, &first);
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
