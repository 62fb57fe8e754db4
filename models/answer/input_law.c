#include "input_law.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

#include "uncertain.h"

double cg_input_correlation(const struct cg_case *c, size_t a, size_t b)
{
    return a == b ? 1.0 : c->correlation[a][b];
}

void cg_input_correlate(struct cg_case *c, size_t a, size_t b, double r)
{
    assert(a != b);
    c->correlation[a][b] = c->correlation[b][a] = r;
}

bool cg_inputs_correlated(const struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++)
            if (cg_input_correlation(c, i, j) != 0.0 &&
                cg_uncertain_spread(&inputs[i], c) > 0.0 &&
                cg_uncertain_spread(&inputs[j], c) > 0.0)
                return true;
    return false;
}

enum cg_status cg_input_law_fill(const struct cg_case *c, const size_t *row,
                                 size_t inputs, struct cg_input_law *law,
                                 struct cg_error *error)
{
    assert(inputs <= CG_INPUTS);
    memset(law, 0, sizeof *law);
    law->inputs = inputs;
    if (inputs == 0)
        return CG_OK;
    gsl_matrix_view factor = gsl_matrix_view_array_with_tda(
        law->factor[0], inputs, inputs, CG_INPUTS);
    gsl_matrix_view inverse = gsl_matrix_view_array_with_tda(
        law->inverse[0], inputs, inputs, CG_INPUTS);
    for (size_t i = 0; i < inputs; i++)
        for (size_t j = 0; j < inputs; j++)
            law->factor[i][j] = cg_input_correlation(c, row[i], row[j]);
    int gsl = gsl_linalg_cholesky_decomp1(&factor.matrix);
    if (gsl == GSL_SUCCESS)
        gsl = gsl_matrix_memcpy(&inverse.matrix, &factor.matrix);
    if (gsl == GSL_SUCCESS)
        gsl = gsl_linalg_cholesky_invert(&inverse.matrix);
    if (gsl != GSL_SUCCESS)
        return cg_error_set(error, CG_BAD_INPUT,
                            "correlations that no quantities can have at "
                            "once (their matrix is not positive definite)");
    for (size_t i = 0; i < inputs; i++)
        for (size_t j = i + 1; j < inputs; j++)
            law->factor[i][j] = 0.0;
    return CG_OK;
}

void cg_input_law_scores(const struct cg_input_law *law,
                         const double *independent, double *score)
{
    for (size_t i = 0; i < law->inputs; i++) {
        double sum = 0.0;
        for (size_t j = 0; j <= i; j++)
            sum += law->factor[i][j] * independent[j];
        score[i] = sum;
    }
}

double cg_input_law_redraw(const struct cg_input_law *law, const double *score,
                           size_t input, double drawn)
{
    const double *row = law->inverse[input];
    double others = 0.0;
    for (size_t j = 0; j < law->inputs; j++)
        if (j != input)
            others += row[j] * score[j];
    return drawn / sqrt(row[input]) - others / row[input];
}
