/* The thermal networks the benches run on.  `refine` multiplies the cells along
 * the bodies (liner stations and piston path). */
#ifndef CG_BENCH_NETWORK_H
#define CG_BENCH_NETWORK_H

#include "network.h"

/* A network like one cylinder's: liner stations with radial cells, a piston
 * path and three rings that reach all stations; at light load.  Exits on
 * failure.  Caller frees. */
struct cg_network *bench_network_create(size_t refine);

/* Turns the gas baths to full load in place. */
void bench_network_pull(struct cg_network *network);

#endif
