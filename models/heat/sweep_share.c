#include "sweep_share.h"

#include <math.h>
#include <stdbool.h>

enum { PLACES = 3 }; /* sampled over the part's height */

double cg_station_height(const struct cg_bore_grid *grid)
{
    return grid->length / (double)grid->stations;
}

double cg_station_depth(const struct cg_bore_grid *grid, size_t station)
{
    return ((double)station + 0.5) * cg_station_height(grid);
}

/* Deposits `weight` at a place, counted in stations from the middle of the
 * first one, on the two nearest stations in proportion to nearness; beyond the last
 * middles on one. */
static void deposit(size_t stations, double place, double weight,
                    double *share)
{
    size_t lower = place > 0.0 ? (size_t)place : 0;
    if (!(place > 0.0)) {
        share[0] += weight;
    } else if (lower + 1 < stations) {
        double part = place - (double)lower;
        share[lower] += (1.0 - part) * weight;
        share[lower + 1] += part * weight;
    } else {
        share[stations - 1] += weight;
    }
}

void cg_stroke_set(struct cg_stroke *stroke, const struct cg_crank *crank)
{
    for (int a = 0; a < CG_STROKE_ANGLES; a++) {
        double angle = 180.0 * (a + 0.5) / CG_STROKE_ANGLES;
        cg_crank_motion(crank, angle, &stroke->depth[a], &stroke->rate[a]);
        stroke->rate[a] = fabs(stroke->rate[a]);
    }
}

/* Every crank angle counts the same, or by the rate of the stroke. */
static void spread(const struct cg_stroke *stroke, bool by_rate,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    double total = 0.0, per_station = 1.0 / cg_station_height(grid);
    for (size_t s = 0; s < grid->stations; s++)
        share[s] = 0.0;
    for (int a = 0; a < CG_STROKE_ANGLES; a++) {
        double w = by_rate ? stroke->rate[a] : 1.0;
        total += w;
        for (int p = 0; p < PLACES; p++) {
            double depth =
                stroke->depth[a] + offset + height * (p + 0.5) / PLACES;
            if (depth < grid->length) /* below the bore on none */
                deposit(grid->stations, depth * per_station - 0.5, w / PLACES,
                        share);
        }
    }
    for (size_t s = 0; s < grid->stations; s++)
        share[s] /= total;
}

void cg_share_time(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(stroke, false, grid, offset, height, share);
}

void cg_share_path(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(stroke, true, grid, offset, height, share);
}
