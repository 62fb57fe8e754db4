/* An axis of a chart: what it spans, where its round ticks stand, and where a
 * value comes to lie.  Nothing here can fail. */
#ifndef CG_CHART_SCALE_H
#define CG_CHART_SCALE_H

#include <stddef.h>

/* From low to high; low > high: nothing yet. */
struct cg_range {
    double low, high;
};

struct cg_range cg_range_none(void);

/* Widens it to hold a value; what is not finite is passed over. */
void cg_range_add(struct cg_range *range, double value);
void cg_range_add_all(struct cg_range *range, const double *value,
                      size_t count);

/* What an axis spans: 0 to 1 for nothing; around a value that is alone, by a
 * tenth of it either way, or by 1 at 0; else as it is. */
struct cg_range cg_range_open(struct cg_range range);

/* The same with `share` of itself added at its ends, but for an end at 0. */
struct cg_range cg_range_wider(struct cg_range range, double share);

/* Round ticks: first, first + step ... within the range, at most `most` of them
 * (2 to CG_TICKS), where one can stand; steps are 1, 2 or 5 times a power of
 * ten.  `digits` behind the point show them apart. */
enum { CG_TICKS = 9 };
struct cg_ticks {
    double value[CG_TICKS];
    int count, digits;
};
struct cg_ticks cg_ticks_in(struct cg_range range, int most);

/* Where values lie: the range's low at `from`, its high at `to`. */
struct cg_scale {
    struct cg_range range;
    double from, to;
};
double cg_scale_at(const struct cg_scale *scale, double value);

#endif
