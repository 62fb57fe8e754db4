#include "confidence.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_cdf.h>

#include "confidence_work.h"

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
            work->row[work->inputs] = i;
            work->input[work->inputs++] = &all[i];
            work->gas_side_same &= !all[i].gas_side;
        }
        if (direct == 0)
            work->moving = work->inputs;
    }
}

enum cg_status cg_confidence_begin(const struct cg_case *c,
                                   const struct cg_duty_run *nominal,
                                   double closure, size_t samples,
                                   unsigned long seed,
                                   struct cg_confidence_work **work,
                                   struct cg_error *error)
{
    struct cg_confidence_work *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->c = c;
    made->seed = seed;
    choose_inputs(made);
    /* Nothing uncertain: one input that moves nothing keeps all else plain. */
    enum cg_status status =
        cg_spread_create(c, nominal, closure, &made->spread, error);
    if (status == CG_OK)
        status = cg_confidence_laws(made, error);
    size_t inputs = made->inputs + (made->laws > 1 || made->inputs == 0);
    if (status == CG_OK)
        status = cg_sample_create(samples, inputs, made->moving, seed,
                                  &made->sample, error);
    if (status != CG_OK) {
        cg_confidence_free(made);
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
    cg_spread_free(work->spread);
    free(work->of_law);
    free(work);
}

enum cg_status
cg_confidence_workspace_create(const struct cg_confidence_work *work,
                               struct cg_confidence_workspace **workspace,
                               struct cg_error *error)
{
    struct cg_confidence_workspace *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status =
        cg_spread_workspace(work->spread, &made->sample, error);
    if (status == CG_OK)
        status = cg_spread_workspace(work->spread, &made->swap, error);
    if (status != CG_OK) {
        cg_confidence_workspace_free(made);
        return status;
    }
    *workspace = made;
    return CG_OK;
}

void cg_confidence_workspace_free(struct cg_confidence_workspace *workspace)
{
    if (workspace == NULL)
        return;
    cg_duty_run_free(workspace->sample);
    cg_duty_run_free(workspace->swap);
    free(workspace);
}

size_t cg_confidence_items(const struct cg_confidence_work *work)
{
    return work->sample->samples;
}

static struct cg_case case_at(const struct cg_confidence_work *work,
                              size_t law, const double *score)
{
    struct cg_case at = work->of_law[law].c;
    for (size_t i = 0; i < work->moving; i++)
        cg_uncertain_move(work->input[i], score[i], &at);
    return at;
}

/* What the law of the film and the inputs that move no field add to the closure
 * [m]. */
static double added(const struct cg_confidence_work *work, size_t law,
                    const double *score)
{
    double sum = work->of_law[law].shift;
    for (size_t i = work->moving; i < work->inputs; i++)
        sum += score[i] * cg_uncertain_added(work->input[i], work->c,
                                             work->spread->closure);
    return sum;
}

/* Scores of a sample; returns its law. */
static size_t scores_of(const struct cg_confidence_work *work, size_t item,
                        double *score)
{
    double independent[CG_SAMPLE_INPUTS];
    cg_sample_point(work->sample, item, independent);
    size_t law = work->laws > 1
                     ? cg_confidence_law_drawn(
                           work, gsl_cdf_ugaussian_P(independent[work->inputs]))
                     : 0;
    cg_input_law_scores(&work->of_law[law].law, independent, score);
    return law;
}

enum cg_status cg_confidence_sample(const struct cg_confidence_work *work,
                                    struct cg_confidence_workspace *workspace,
                                    size_t item, double *closure,
                                    struct cg_error *error)
{
    double score[CG_SAMPLE_INPUTS];
    size_t law = scores_of(work, item, score);
    struct cg_case at = case_at(work, law, score);
    bool same = work->gas_side_same && law == 0;
    enum cg_status status = cg_spread_closure(
        &at, work->spread, same ? work->spread->base : NULL,
        workspace->sample, closure, error);
    if (status == CG_OK)
        *closure += added(work, law, score);
    return status;
}

/* The same sample with each moving input swapped in turn.  Where that leaves
 * the cycle alone, it is taken from the sample's own run. */
static void run_swaps(const struct cg_confidence_work *work,
                      struct cg_confidence_workspace *workspace, size_t item)
{
    double score[CG_SAMPLE_INPUTS];
    size_t law = scores_of(work, item, score);
    double more = added(work, law, score);
    for (size_t i = 0; i < work->moving; i++) {
        double kept = score[i], closure = NAN;
        score[i] = cg_input_law_redraw(&work->of_law[law].law, score, i,
                                       cg_sample_swap(work->sample, item, i));
        struct cg_case at = case_at(work, law, score);
        bool gas_side = work->input[i]->gas_side;
        enum cg_status status = cg_spread_closure(
            &at, work->spread, gas_side ? NULL : workspace->sample,
            workspace->swap, &closure, NULL);
        work->sample->swapped_value[item * work->moving + i] =
            status == CG_OK ? closure + more : NAN;
        score[i] = kept;
    }
}

static void no_swaps(const struct cg_confidence_work *work, size_t item)
{
    for (size_t i = 0; i < work->moving; i++)
        work->sample->swapped_value[item * work->moving + i] = NAN;
}

void cg_confidence_run(struct cg_confidence_work *work,
                       struct cg_confidence_workspace *workspace, size_t item)
{
    struct cg_sample *sample = work->sample;
    double closure = NAN;
    enum cg_status status =
        cg_confidence_sample(work, workspace, item, &closure, NULL);
    sample->value[item] = status == CG_OK ? closure : NAN;
    if (item >= sample->swaps)
        return;
    if (status == CG_OK)
        run_swaps(work, workspace, item);
    else
        no_swaps(work, item);
}
