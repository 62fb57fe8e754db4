#include "material_probability.h"

#include <math.h>

#include <gsl/gsl_cdf.h>

enum { SCORES = 301 };

#define FARTHEST 3.0      /* score */
#define LEAST_BEND 1.5    /* valley slope over plateau slope */
#define CLEAR 2.0         /* widths of the bend left out on either side */
#define WIDEST 0.5        /* bend, in scores: a wider one is no bend */
#define LEAST_STRETCH 0.5 /* score; a line needs as much */

/* The curve at even scores. */
struct paper {
    double score[SCORES], height[SCORES];
};

/* The hyperbola's bend, and what is left by least squares over the rest. */
struct bend {
    double center, width, misfit;
};

double cg_ratio_score(double ratio)
{
    return gsl_cdf_ugaussian_Pinv(ratio);
}

double cg_score_ratio(double score)
{
    return gsl_cdf_ugaussian_P(score);
}

/* From -3 to 3, or to where the trace has points left. */
static void put_on_paper(const struct cg_ratio_curve *curve,
                         struct paper *paper)
{
    double outermost = -cg_ratio_score(0.5 / (double)curve->points);
    double far = fmin(FARTHEST, outermost);
    for (int i = 0; i < SCORES; i++) {
        paper->score[i] = far * (2.0 * i / (SCORES - 1.0) - 1.0);
        paper->height[i] =
            cg_ratio_curve_height(curve, gsl_cdf_ugaussian_P(paper->score[i]));
    }
}

static void fit_line(const struct paper *paper, double from, double to,
                     struct cg_score_line *line)
{
    double count = 0.0, s = 0.0, z = 0.0, ss = 0.0, sz = 0.0;
    for (int i = 0; i < SCORES; i++) {
        if (!(paper->score[i] >= from && paper->score[i] <= to))
            continue;
        count += 1.0;
        s += paper->score[i];
        z += paper->height[i];
        ss += paper->score[i] * paper->score[i];
        sz += paper->score[i] * paper->height[i];
    }
    line->from = from;
    line->to = to;
    line->slope = -(count * sz - s * z) / (count * ss - s * s);
    line->level = (z + line->slope * s) / count;
}

/* Squares left when 1, t and sqrt(t^2 + w^2) are fitted, t = s - c: each is
 * made orthogonal to those before it (Gram and Schmidt). */
static double misfit_of(const struct paper *paper, double center, double width)
{
    double basis[3][SCORES], rest[SCORES], left = 0.0;
    for (int i = 0; i < SCORES; i++) {
        double t = paper->score[i] - center;
        basis[0][i] = 1.0;
        basis[1][i] = t;
        basis[2][i] = hypot(t, width);
        rest[i] = paper->height[i];
    }
    for (int k = 0; k < 3; k++) {
        double square = 0.0;
        for (int i = 0; i < SCORES; i++)
            square += basis[k][i] * basis[k][i];
        for (int later = k + 1; later <= 3; later++) {
            double *vector = later < 3 ? basis[later] : rest, along = 0.0;
            for (int i = 0; i < SCORES; i++)
                along += basis[k][i] * vector[i] / square;
            for (int i = 0; i < SCORES; i++)
                vector[i] -= along * basis[k][i];
        }
    }
    for (int i = 0; i < SCORES; i++)
        left += rest[i] * rest[i];
    return left;
}

/* A grid over center and width, drawn closer about its best three times. */
static struct bend find_bend(const struct paper *paper)
{
    enum { CENTERS = 25, WIDTHS = 13, ZOOMS = 4 };
    double far = paper->score[SCORES - 1] - LEAST_STRETCH;
    double middle = 0.0, half = far, log_middle = log(0.3), log_half = 2.0;
    struct bend best = {0.0, 0.3, INFINITY};
    for (int zoom = 0; zoom < ZOOMS; zoom++) {
        for (int i = 0; i < CENTERS * WIDTHS; i++) {
            double x = 2.0 * (i % CENTERS) / (CENTERS - 1.0) - 1.0;
            int row = i / CENTERS;
            double y = 2.0 * row / (WIDTHS - 1.0) - 1.0;
            double center = fmin(fmax(middle + half * x, -far), far);
            double width = fmin(exp(log_middle + log_half * y), WIDEST);
            double misfit = misfit_of(paper, center, width);
            if (misfit < best.misfit)
                best = (struct bend){center, width, misfit};
        }
        middle = best.center;
        log_middle = log(best.width);
        half /= 6.0;
        log_half /= 4.0;
    }
    return best;
}

static void one_line(const struct paper *paper,
                     struct cg_probability *probability)
{
    double far = paper->score[SCORES - 1];
    fit_line(paper, -far, far, &probability->plateau);
    probability->valley = probability->plateau;
    probability->bends = false;
    probability->rpq = probability->rvq = probability->plateau.slope;
    probability->rmq = NAN;
}

void cg_ratio_curve_probability(const struct cg_ratio_curve *curve,
                                struct cg_probability *probability)
{
    struct paper paper;
    put_on_paper(curve, &paper);
    struct bend bend = find_bend(&paper);
    double far = paper.score[SCORES - 1], away = CLEAR * bend.width;
    struct cg_score_line *plateau = &probability->plateau;
    struct cg_score_line *valley = &probability->valley;
    fit_line(&paper, -far, fmax(bend.center - away, -far + LEAST_STRETCH),
             plateau);
    fit_line(&paper, fmin(bend.center + away, far - LEAST_STRETCH), far,
             valley);
    double meet =
        (valley->level - plateau->level) / (valley->slope - plateau->slope);
    double ratio = gsl_cdf_ugaussian_P(meet);
    if (!(plateau->slope > 0.0 &&
          valley->slope >= LEAST_BEND * plateau->slope && ratio >= 0.40 &&
          ratio <= 0.995)) {
        one_line(&paper, probability);
        return;
    }
    probability->bends = true;
    probability->rpq = plateau->slope;
    probability->rvq = valley->slope;
    probability->rmq = ratio;
}
