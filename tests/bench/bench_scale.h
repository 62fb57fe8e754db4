/* How the cost of the heat solver grows. */
#ifndef CG_BENCH_SCALE_H
#define CG_BENCH_SCALE_H

#include <stdbool.h>
#include <stddef.h>

/* Prints time against the number of cells along bore and crown, or along all
 * bodies, and against the number of steps of fixed size.  Exit on failure. */
void bench_scale_cells(bool all);
void bench_scale_steps(void);

/* Sorts, and returns the median. */
double bench_median(double *values, size_t count);

#endif
