#include "sweep_share.h"

#include <math.h>

/* Crank angles sampled over one stroke (middle of equal steps), and places
 * sampled over the part's height. */
enum { ANGLES = 180, PLACES = 3 };

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

static void spread(const struct cg_crank *crank,
                   const struct cg_bore_grid *grid, double offset,
                   double height, int by_path, double *share)
{
    double total = 0.0;
    for (size_t s = 0; s < grid->stations; s++)
        share[s] = 0.0;
    for (int a = 0; a < ANGLES; a++) {
        double angle = 180.0 * (a + 0.5) / ANGLES;
        double weight =
            by_path ? fabs(cg_crank_depth_rate(crank, angle)) : 1.0;
        double depth = cg_crank_depth(crank, angle) + offset;
        total += weight;
        for (int p = 0; p < PLACES; p++)
            deposit(grid, depth + height * (p + 0.5) / PLACES,
                    weight / PLACES, share);
    }
    for (size_t s = 0; s < grid->stations; s++)
        share[s] /= total;
}

void cg_share_time(const struct cg_crank *crank,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(crank, grid, offset, height, 0, share);
}

void cg_share_path(const struct cg_crank *crank,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share)
{
    spread(crank, grid, offset, height, 1, share);
}
