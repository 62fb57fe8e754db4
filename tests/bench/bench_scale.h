/* How the cost of the heat solver grows. */
#ifndef CG_BENCH_SCALE_H
#define CG_BENCH_SCALE_H

#include <stddef.h>

/* Prints time against the number of cells along the bodies, and against the
 * number of steps of fixed size.  Exit on failure. */
void bench_scale_cells(void);
void bench_scale_steps(void);

/* Sorts, and returns the median. */
double bench_median(double *values, size_t count);

#endif
