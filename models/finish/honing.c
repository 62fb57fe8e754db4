#include "honing.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "constants.h"
#include "grit.h"
#include "material_ratio.h"

/* All invented, so that the usual grits land within the usual figures. */
#define DEPTH_PER_GRAIN 0.030  /* mean depth of a groove */
#define DEPTH_SHAPE 2.0        /* of the gamma law of the depths */
#define TEXTURE_PER_DEPTH 0.35 /* what is rough between grooves, Rq */
#define WIDTH_PER_DEPTH 7.0    /* half width of a groove */
#define GROOVES_PER_WIDTH 1.0  /* that overlap, in one direction */

/* The grooves of one direction and stage, cut across: what they leave over the
 * distance t from a line through the corner, along their common normal. */
struct cut {
    double first, step; /* of t [m] */
    size_t points;
    double *height; /* [points] [m] */
};

/* A patch as the cuts see it. */
struct patch {
    size_t rows, columns;
    double rise, run; /* change of t for one row, one column [m] */
};

static void cut_groove(struct cut *cut, double center, double depth)
{
    double half = WIDTH_PER_DEPTH * depth;
    double from = ceil((center - half - cut->first) / cut->step);
    double to = floor((center + half - cut->first) / cut->step);
    for (double i = fmax(from, 0.0); i <= fmin(to, (double)cut->points - 1.0);
         i += 1.0) {
        double t = cut->first + i * cut->step;
        double height = -depth * (1.0 - fabs(t - center) / half);
        double *at = &cut->height[(size_t)i];
        *at = fmin(*at, height);
    }
}

/* Normal heights half a groove's half width apart, joined by straight
 * lines. */
static void cut_texture(gsl_rng *random, double depth, struct cut *cut)
{
    double rough = TEXTURE_PER_DEPTH * depth;
    double apart = 0.5 * WIDTH_PER_DEPTH * depth / cut->step;
    double last = 0.0, next = gsl_ran_gaussian(random, rough), passed = -1.0;
    for (size_t i = 0; i < cut->points; i++) {
        double at = (double)i / apart;
        if (floor(at) > passed) {
            passed = floor(at);
            last = next;
            next = gsl_ran_gaussian(random, rough);
        }
        cut->height[i] = last + (at - passed) * (next - last);
    }
}

/* Texture, and grooves from before the first point to after the last one. */
static void cut_stage(gsl_rng *random, double grit, struct cut *cut)
{
    double depth = DEPTH_PER_GRAIN * cg_grit_grain(grit);
    double half = WIDTH_PER_DEPTH * depth;
    double apart = 2.0 * half / GROOVES_PER_WIDTH;
    double end = cut->first + cut->step * (double)cut->points + 4.0 * half;
    cut_texture(random, depth, cut);
    for (double t = cut->first - 4.0 * half; t < end;
         t += gsl_ran_exponential(random, apart))
        cut_groove(cut, t,
                   gsl_ran_gamma(random, DEPTH_SHAPE, depth / DEPTH_SHAPE));
}

static double height_at(const struct cut *cut, double t)
{
    double at = (t - cut->first) / cut->step;
    size_t below =
        (size_t)fmin(fmax(floor(at), 0.0), (double)cut->points - 2.0);
    double part = at - (double)below;
    return cut->height[below] +
           part * (cut->height[below + 1] - cut->height[below]);
}

/* Lays the lower of the two directions' cuts, raised by `level`, on the
 * patch, where it is lower than what is there. */
static void lay(const struct patch *patch, const struct cut cut[2],
                double level, double *height)
{
    for (size_t row = 0; row < patch->rows; row++) {
        for (size_t column = 0; column < patch->columns; column++) {
            double y = patch->rise * (double)row;
            double x = patch->run * (double)column;
            double left =
                fmin(height_at(&cut[0], y - x), height_at(&cut[1], y + x));
            double *at = &height[row * patch->columns + column];
            *at = fmin(*at, left + level);
        }
    }
}

/* The height above which `share` of a surface of two such cuts lies: a point
 * is above it when it is in either direction, and the two are independent. */
static enum cg_status level_of(const struct cut *cut, double share,
                               double *level, struct cg_error *error)
{
    struct cg_ratio_curve curve;
    double *copy = malloc(cut->points * sizeof *copy);
    if (copy == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "honing: out of memory");
    memcpy(copy, cut->height, cut->points * sizeof *copy);
    cg_ratio_curve_sort(copy, cut->points, &curve);
    *level = cg_ratio_curve_height(&curve, sqrt(share));
    free(copy);
    return CG_OK;
}

static enum cg_status cut_stages(const struct cg_honing *honing,
                                 const struct patch *patch, gsl_rng *random,
                                 struct cut cut[2], double *height,
                                 struct cg_error *error)
{
    double level = 0.0;
    for (size_t i = 0; i < patch->rows * patch->columns; i++)
        height[i] = INFINITY;
    for (int way = 0; way < 2; way++)
        cut_stage(random, honing->base_grit, &cut[way]);
    lay(patch, cut, 0.0, height);
    if (honing->plateau_grit == 0)
        return CG_OK;
    enum cg_status status =
        level_of(&cut[0], honing->plateau_share, &level, error);
    if (status != CG_OK)
        return status;
    for (int way = 0; way < 2; way++)
        cut_stage(random, honing->plateau_grit, &cut[way]);
    lay(patch, cut, level, height);
    return CG_OK;
}

enum cg_status cg_honing_cut(const struct cg_honing *honing, size_t rows,
                             size_t columns, double step, unsigned long seed,
                             double *height, struct cg_error *error)
{
    double angle = 0.5 * honing->crosshatch_deg * CG_PI / 180.0;
    struct patch patch = {rows, columns, step * cos(angle), step * sin(angle)};
    double across = patch.run * (double)columns;
    double along = patch.rise * (double)rows;
    /* Four points a step keep the sides of the grooves straight. */
    struct cut cut[2] = {{-across, 0.25 * step, 0, NULL},
                         {0.0, 0.25 * step, 0, NULL}};
    size_t points = (size_t)ceil((across + along) / (0.25 * step)) + 2;
    enum cg_status status = CG_OK;
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    for (int way = 0; way < 2; way++) {
        cut[way].points = points;
        cut[way].height = malloc(points * sizeof(double));
    }
    if (random == NULL || cut[0].height == NULL || cut[1].height == NULL) {
        status = cg_error_set(error, CG_NO_MEMORY, "honing: out of memory");
        goto out;
    }
    gsl_rng_set(random, seed);
    status = cut_stages(honing, &patch, random, cut, height, error);
out:
    free(cut[0].height);
    free(cut[1].height);
    if (random != NULL)
        gsl_rng_free(random);
    return status;
}
