/* How the uncertain inputs (uncertain.h) go together.
 *
 * Each input has a score: how many of its standard deviations it is off, a
 * standard normal number.  Scores are jointly normal with the correlation
 * matrix R of the case; where nothing is stated they are independent (R = 1).
 * Inputs with a relative spread are lognormal, the others normal, so that the
 * joint law is a normal copula over these two kinds (R. B. Nelsen, "An
 * Introduction to Copulas", 2nd ed. 2006, sec. 2.3).
 *
 *   R = L L'   (Cholesky)      scores = L u,  u independent
 *
 * given all other scores, one is normal with (Q = R^-1)
 *   mean  z_i - (Q z)_i / Q_ii     variance  1 / Q_ii
 * (C. M. Bishop, "Pattern Recognition and Machine Learning", 2006, sec. 2.3.1)
 */
#ifndef CG_INPUT_LAW_H
#define CG_INPUT_LAW_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"
#include "status.h"

/* Of the inputs chosen, in the order chosen. */
struct cg_input_law {
    size_t inputs;
    double factor[CG_INPUTS][CG_INPUTS];  /* L, lower */
    double inverse[CG_INPUTS][CG_INPUTS]; /* Q */
};

/* Correlation coefficient of two inputs, rows of cg_uncertains; 1 of an input
 * with itself. */
double cg_input_correlation(const struct cg_case *c, size_t a, size_t b);

/* Sets it, both ways; a != b. */
void cg_input_correlate(struct cg_case *c, size_t a, size_t b, double r);

/* True if any two inputs that have a spread are correlated. */
bool cg_inputs_correlated(const struct cg_case *c);

/* Law of the inputs row[0 .. inputs - 1].  CG_BAD_INPUT when R is not positive
 * definite: no quantities can go together like that. */
enum cg_status cg_input_law_fill(const struct cg_case *c, const size_t *row,
                                 size_t inputs, struct cg_input_law *law,
                                 struct cg_error *error);

/* Scores [inputs] from independent standard normal numbers [inputs]; the two
 * must not overlap.  Cannot fail. */
void cg_input_law_scores(const struct cg_input_law *law,
                         const double *independent, double *score);

/* Score of one input drawn anew, all others kept: `drawn` is a standard normal
 * number.  Cannot fail. */
double cg_input_law_redraw(const struct cg_input_law *law,
                           const double *score, size_t input, double drawn);

#endif
