#include "seal_friction.h"

#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "ring_film.h"

/* Node of the pack at a point of the film's cycle: a node a degree from -360
 * on. */
static size_t node_of(size_t point)
{
    return (size_t)lround(cg_ring_film_angle(point) + 360.0);
}

static void set_gas(const struct cg_seal *seal, size_t k,
                    struct cg_ring_gas *gas)
{
    for (size_t i = 0; i < CG_RING_FILM_POINTS; i++) {
        const double *pressure = seal->record[node_of(i)].pressure;
        gas->above[i] = pressure[2 * k];
        gas->behind[i] = pressure[2 * k + 1];
        gas->below[i] = pressure[2 * k + 2];
    }
}

enum cg_status cg_seal_friction_find(const struct cg_seal *seal,
                                     const struct cg_duty_run *run,
                                     size_t point,
                                     struct cg_seal_friction *friction,
                                     struct cg_error *error)
{
    const struct cg_case *c = seal->c;
    struct cg_ring_film_workspace *workspace = malloc(sizeof *workspace);
    struct cg_ring_gas *gas = malloc(sizeof *gas);
    struct cg_film_mean mean;
    enum cg_status status = CG_OK;
    if (workspace == NULL || gas == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t k = 0; k < CG_PACK_RINGS && status == CG_OK; k++) {
        set_gas(seal, k, gas);
        status = cg_ring_film_solve(c, run->thermal,
                                    run->point[point].settled,
                                    (enum cg_ring_place)k, seal->pack.speed,
                                    gas, workspace, &mean, error);
        if (status != CG_OK)
            break;
        double power = mean.viscous_power + mean.boundary_power;
        friction->power[k] =
            power * CG_PI * c->engine.bore * c->engine.cylinders;
        friction->boundary[k] = power > 0.0 ? mean.boundary_power / power : 0.0;
        friction->minimum[k] = mean.minimum;
        friction->mixed[k] = mean.mixed_share;
    }
    free(gas);
    free(workspace);
    return status;
}
