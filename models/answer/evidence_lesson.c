/* From what was fitted to what is learned, and into a case. */
#include <math.h>

#include "evidence_work.h"
#include "uncertain.h"

/* Covariance of the shared unknowns [shared][shared], in standard deviations of
 * before.  Along what the model was too low for (C a, a: slopes of that
 * closure) it is taken back to what it was, by one more term of rank one. */
static void set_middle(const struct cg_evidence_work *work,
                       const struct cg_posterior *found, size_t lowest,
                       double middle[CG_INPUTS][CG_INPUTS])
{
    size_t n = work->shared;
    double along[CG_INPUTS] = {0.0}, before = 0.0, after = 0.0, more = 0.0;
    const double *slope = found->slope + lowest * found->unknowns;
    for (size_t k = 0; k < n; k++)
        for (size_t l = 0; l < n; l++)
            middle[k][l] = work->wide * work->wide *
                           found->covariance[k * found->unknowns + l];
    if (lowest >= work->evidence->entries)
        return;
    for (size_t k = 0; k < n; k++) {
        double a = slope[k] / work->wide;
        for (size_t l = 0; l < n; l++)
            along[k] += middle[k][l] * slope[l] / work->wide;
        before += a * a;
        after += a * along[k];
    }
    if (after > 0.0 && before > after)
        more = (before / after - 1.0) / after;
    for (size_t k = 0; k < n; k++)
        for (size_t l = 0; l < n; l++)
            middle[k][l] += more * along[k] * along[l];
}

void cg_evidence_lesson(const struct cg_evidence_work *work,
                        const struct cg_posterior *found, size_t lowest,
                        struct cg_learned *learned)
{
    double u[CG_INPUTS] = {0.0}, mean[CG_INPUTS];
    double middle[CG_INPUTS][CG_INPUTS];
    size_t n = work->inputs;
    set_middle(work, found, lowest, middle);
    for (size_t k = 0; k < work->shared; k++)
        u[k] = work->wide * found->mean[k];
    cg_input_law_scores(&work->law, u, mean);
    for (size_t i = 0; i < CG_INPUTS; i++)
        learned->covariance[i][i] = 1.0;
    for (size_t i = 0; i < n; i++) {
        learned->mean[work->row[i]] = mean[i];
        for (size_t j = 0; j < n; j++) {
            double sum = 0.0;
            for (size_t k = 0; k <= i; k++)
                for (size_t l = 0; l <= j; l++) {
                    double own = k == l ? 1.0 : 0.0;
                    if (k < work->shared && l < work->shared)
                        own = middle[k][l];
                    sum +=
                        work->law.factor[i][k] * own * work->law.factor[j][l];
                }
            learned->covariance[work->row[i]][work->row[j]] = sum;
        }
    }
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
            cg_input_correlate(
                c, i, j, learned->covariance[i][j] / (width[i] * width[j]));
    c->ends = learned->ends;
}
