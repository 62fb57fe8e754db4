#include "sweep_share.h"

#include <math.h>

enum { PLACES = 3 }; /* sampled over the part's height */

double cg_station_height(const struct cg_bore_grid *grid)
{
    return grid->length / (double)grid->stations;
}

double cg_station_depth(const struct cg_bore_grid *grid, size_t station)
{
    return ((double)station + 0.5) * cg_station_height(grid);
}

/* Deposits `weight` at `depth` on the two nearest stations in proportion to
 * nearness; at the deck on the first one; below the bore on none. */
static void deposit(const struct cg_bore_grid *grid, double depth,
                    double weight, double *share)
{
    if (depth >= grid->length)
        return;
    double place = depth / cg_station_height(grid) - 0.5;
    double last = (double)(grid->stations - 1);
    place = fmin(fmax(place, 0.0), last);
    size_t lower = (size_t)fmin(floor(place), fmax(last - 1.0, 0.0));
    double part = place - (double)lower;
    share[lower] += (1.0 - part) * weight;
    if (lower + 1 < grid->stations)
        share[lower + 1] += part * weight;
}

void cg_stroke_set(struct cg_stroke *stroke, const struct cg_crank *crank)
{
    for (int a = 0; a < CG_STROKE_ANGLES; a++) {
        double angle = 180.0 * (a + 0.5) / CG_STROKE_ANGLES;
        stroke->depth[a] = cg_crank_depth(crank, angle);
        stroke->rate[a] = fabs(cg_crank_depth_rate(crank, angle));
    }
}

/* `weight`: rate of the stroke, or NULL for equal weights. */
static void spread(const struct cg_stroke *stroke, const double *weight,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    double total = 0.0;
    for (size_t s = 0; s < grid->stations; s++)
        share[s] = 0.0;
    for (int a = 0; a < CG_STROKE_ANGLES; a++) {
        double w = weight != NULL ? weight[a] : 1.0;
        total += w;
        for (int p = 0; p < PLACES; p++)
            deposit(grid,
                    stroke->depth[a] + offset + height * (p + 0.5) / PLACES,
                    w / PLACES, share);
    }
    for (size_t s = 0; s < grid->stations; s++)
        share[s] /= total;
}

void cg_share_time(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(stroke, NULL, grid, offset, height, share);
}

void cg_share_path(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(stroke, stroke->rate, grid, offset, height, share);
}
