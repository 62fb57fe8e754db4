/* The engine network the benches run on. */
#ifndef CG_BENCH_ENGINE_H
#define CG_BENCH_ENGINE_H

#include "duty_run.h"

struct bench_engine {
    struct cg_duty_run *run;
    struct cg_network *network; /* of `run` */
    double *start;              /* settled at cruise [K] */
};

/* The example engine's network in the conditions of full load at rated speed;
 * `refine` multiplies the stations of the bore and the cells of the crown; `all`:
 * those of the skirt and the rings too (a ring has no more than 48).  Each skirt
 * cell touches most stations, so that their links grow with the product of the
 * two.  Exits on failure. */
void bench_engine_make(int refine, bool all, struct bench_engine *engine);
void bench_engine_free(struct bench_engine *engine);

#endif
