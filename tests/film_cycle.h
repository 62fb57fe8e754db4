/* A ring and the cycle that drives it, without an engine: for the film's
 * suites. */
#ifndef CG_FILM_CYCLE_H
#define CG_FILM_CYCLE_H

#include <check.h>
#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "crank.h"
#include "film.h"

struct film_cycle {
    struct cg_film_drive drive;
    double *block;
    struct cg_film_point *point;
};

struct film_engine {
    double speed;     /* [rev/s] */
    double viscosity; /* [Pa s] */
    double burn;      /* burnt over motored pressure; 0: no gas at all [1] */
    double tension;   /* [Pa] */
};

static const struct film_engine film_engine = {50.0, 5e-3, 5.0, 190e3};

static inline struct cg_film_ring film_ring(void)
{
    return (struct cg_film_ring){
        cg_face_curve_of(CG_FACE_BARREL, 1.2e-3, 8e-6, 0.5),
        cg_asperity_of(0.4e-6, 200e9, 110e9), 0.1, 0.0};
}

/* Gas above the ring [Pa]: compressed and expanded from 1 bar by the exponent
 * 1.3, burn around 8 degrees, blow-down around 145. */
static inline double film_gas(const struct film_engine *engine,
                              const struct cg_crank *crank, double angle)
{
    if (!(engine->burn > 0.0) || !(fabs(angle) < 180.0))
        return 1e5;
    double motored = pow(cg_crank_volume(crank, 180.0) /
                             cg_crank_volume(crank, angle),
                         1.3);
    double burnt = 1.0 / (1.0 + exp((8.0 - angle) / 7.0));
    double left = 1.0 / (1.0 + exp((angle - 145.0) / 5.0));
    double gas = motored * (1.0 + (engine->burn - 1.0) * burnt);
    return 1e5 * (1.0 + (gas - 1.0) * left);
}

static inline struct film_cycle film_cycle(const struct film_engine *engine,
                                           size_t points)
{
    static const struct cg_crank crank = {0.086, 0.086, 0.143, 9.0};
    double *block = malloc(5 * points * sizeof *block);
    struct film_cycle cycle = {.block = block,
                               .point = malloc(points * sizeof *cycle.point)};
    if (block == NULL || cycle.point == NULL)
        abort();
    double *viscosity = block + points, *load = block + 2 * points;
    double *above = block + 3 * points, *below = block + 4 * points;
    for (size_t i = 0; i < points; i++) {
        double angle = -360.0 + 720.0 * (double)i / (double)points;
        double depth, rate;
        cg_crank_motion(&crank, angle, &depth, &rate);
        block[i] = rate * 2.0 * CG_PI * engine->speed;
        viscosity[i] = engine->viscosity;
        above[i] = film_gas(engine, &crank, angle);
        below[i] = 1e5 + 0.2 * (above[i] - 1e5);
        load[i] = (engine->tension + above[i]) * 1.2e-3;
    }
    cycle.drive = (struct cg_film_drive){
        points, 2.0 / (engine->speed * (double)points), block, viscosity,
        load,   above, below, 0.0};
    return cycle;
}

static inline void film_cycle_free(struct film_cycle *cycle)
{
    free(cycle->block);
    free(cycle->point);
}

static inline struct cg_film_mean film_mean(const struct cg_film_ring *ring,
                                            const struct film_engine *engine,
                                            size_t points)
{
    struct film_cycle cycle = film_cycle(engine, points);
    struct cg_film_mean mean;
    struct cg_error error = {0};
    enum cg_status status =
        cg_film_solve(ring, &cycle.drive, cycle.point, &mean, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    film_cycle_free(&cycle);
    return mean;
}

#endif
