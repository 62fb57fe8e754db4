/* How a part of the piston shares its time over the bore.
 *
 * A ring, land or skirt cell sits `offset` below the crown's top edge and so
 * passes the depths stroke by stroke.  Heat and friction it gives the bore are
 * spread over the liner stations by the share of crank time, or of rubbing
 * path, that it spends there.  Depth 0 is the deck, met by the crown's edge at
 * top dead centre.  Equal for up and down strokes, and for every cycle.
 */
#ifndef CG_SWEEP_SHARE_H
#define CG_SWEEP_SHARE_H

#include <stddef.h>

#include "crank.h"

struct cg_bore_grid {
    size_t stations;
    double length;  /* deck to the bottom of the modelled bore [m] */
};

/* Depth of the middle of a station, and station height [m]. */
double cg_station_depth(const struct cg_bore_grid *grid, size_t station);
double cg_station_height(const struct cg_bore_grid *grid);

/* Piston depth and its rate at the middles of equal crank steps of one stroke:
 * the same for every part of the piston, so computed once. */
enum { CG_STROKE_ANGLES = 180 };
struct cg_stroke {
    double depth[CG_STROKE_ANGLES]; /* below top dead centre [m] */
    double rate[CG_STROKE_ANGLES];  /* [m/rad], >= 0 */
};
void cg_stroke_set(struct cg_stroke *stroke, const struct cg_crank *crank);

/* Share of crank time at each station for a part reaching from `offset` to
 * offset + height [m]: share has grid->stations entries and sums to at most 1
 * (less where the part leaves the bore at the bottom).  Cannot fail. */
void cg_share_time(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share);

/* The same weighted by sliding speed: where friction work is done.  Sums to at
 * most 1. */
void cg_share_path(const struct cg_stroke *stroke,
                   const struct cg_bore_grid *grid, double offset,
                   double height, double *share);

#endif
