#include "duty_run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "duty_layout.h"

/* Least correction of settled temperatures of a varied case [K]. */
#define VARIED_TOLERANCE 1e-2

enum cg_status cg_duty_run_lay_out(const struct cg_case *c,
                                   struct cg_duty_run **run,
                                   struct cg_error *error)
{
    struct cg_duty_run *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = cg_thermal_create(c, &made->thermal, error);
    if (status == CG_OK)
        status =
            cg_point_workspace_create(made->thermal, &made->workspace, error);
    if (status == CG_OK)
        status = cg_duty_lay_out(c, made, error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

static bool take_over(const struct cg_duty_run *known, size_t index,
                      struct cg_duty_run *run)
{
    struct cg_operating_point *point = &run->point[index];
    size_t there =
        known != NULL ? cg_duty_run_index(known, &point->operating) : 0;
    if (known == NULL || there == known->points)
        return false;
    cg_point_copy(run->thermal, &known->point[there], point);
    return true;
}

enum cg_status cg_duty_run_create(const struct cg_case *c,
                                  struct cg_duty_run **run,
                                  struct cg_error *error)
{
    return cg_duty_run_create_like(c, NULL, run, error);
}

enum cg_status cg_duty_run_create_like(const struct cg_case *c,
                                       const struct cg_duty_run *known,
                                       struct cg_duty_run **run,
                                       struct cg_error *error)
{
    struct cg_duty_run *made;
    enum cg_status status = cg_duty_run_lay_out(c, &made, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < made->points && status == CG_OK; i++)
        if (!take_over(known, i, made))
            status = cg_point_solve(c, made->thermal, &made->workspace,
                                    i > 0 ? &made->point[i - 1] : NULL,
                                    &made->point[i], error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

/* The joint of the nearest station. */
static void carry_joints(const struct cg_duty_run *nominal, size_t index,
                         struct cg_duty_run *run)
{
    size_t stations = run->thermal->bore.grid.stations;
    size_t those = nominal->thermal->bore.grid.stations;
    for (size_t s = 0; s < stations; s++)
        run->point[index].joint_search[s] =
            nominal->point[index]
                .joint_search[(2 * s + 1) * those / (2 * stations)];
    for (size_t s = 0; s < stations; s++)
        run->point[index].joint[s] =
            run->point[index].joint_search[s].coefficient;
}

static void carry_gas_side(const struct cg_duty_run *from, size_t index,
                           struct cg_duty_run *run)
{
    const struct cg_operating_point *gas = &from->point[index];
    struct cg_operating_point *to = &run->point[index];
    to->input = gas->input;
    to->response = gas->response; /* for the place of that burn */
    to->charge = gas->charge;
    to->crown = gas->crown;
    to->crevice = gas->crevice;
    to->performance = gas->performance;
    to->friction = from->friction_share > 0.0
                       ? gas->friction *
                             (run->friction_share / from->friction_share)
                       : gas->friction;
    memcpy(to->cylinder, gas->cylinder,
           CG_RING_FILM_POINTS * sizeof *to->cylinder);
    memcpy(to->station, gas->station,
           run->thermal->bore.grid.stations * sizeof *to->station);
}

/* Whether settled state and factors can be carried over. */
static bool same_cells(const struct cg_duty_run *a,
                       const struct cg_duty_run *b)
{
    return a->thermal->network->nodes == b->thermal->network->nodes &&
           a->thermal->network->links == b->thermal->network->links;
}

static enum cg_status vary_point(const struct cg_case *c,
                                  const struct cg_duty_run *nominal,
                                  const struct cg_duty_run *gas_side,
                                  size_t index, struct cg_duty_run *run,
                                  struct cg_error *error)
{
    const struct cg_operating_point *from = &nominal->point[index];
    struct cg_operating_point *to = &run->point[index];
    enum cg_status status = CG_OK;
    to->input = from->input;
    to->residual = from->residual;
    to->response = from->response;
    to->wall_rise = from->wall_rise;
    to->crevice_rise = from->crevice_rise;
    for (int r = 0; r < CG_RINGS; r++)
        to->film[r] = from->film[r] * (run->film_scale / nominal->film_scale);
    memset(to->film_solved, 0, sizeof to->film_solved);
    carry_joints(nominal, index, run);
    if (gas_side != NULL)
        carry_gas_side(gas_side, index, run);
    else
        status = cg_point_cycle(c, run->thermal, &run->workspace, to, error);
    if (status == CG_OK && cg_burn_place(to) != to->response.place)
        status = cg_point_respond(&run->workspace, to, error);
    if (status == CG_OK && same_cells(nominal, run))
        memcpy(to->settled, from->settled,
               run->thermal->network->nodes * sizeof *to->settled);
    else if (status == CG_OK)
        status = cg_point_settle(run->thermal, &run->workspace, to, error);
    return status == CG_OK
               ? cg_point_resettle(c, run->thermal, &run->workspace,
                                    VARIED_TOLERANCE, to, error)
               : status;
}

enum cg_status cg_duty_run_vary(const struct cg_case *c,
                                const struct cg_duty_run *nominal,
                                const struct cg_duty_run *gas_side,
                                struct cg_duty_run *run,
                                struct cg_error *error)
{
    enum cg_status status = cg_thermal_refill(c, run->thermal, error);
    if (status == CG_OK)
        status = cg_duty_lay_out_like(c, nominal, run, error);
    if (status != CG_OK)
        return status;
    if (same_cells(nominal, run))
        cg_stepper_take_factors(run->workspace.stepper,
                                nominal->workspace.stepper);
    for (size_t i = 0; i < run->points && status == CG_OK; i++)
        status = vary_point(c, nominal, gas_side, i, run, error);
    return status;
}

enum cg_status cg_duty_run_keep_factors(struct cg_duty_run *run,
                                        struct cg_error *error)
{
    return cg_point_settle(run->thermal, &run->workspace,
                            &run->point[run->start], error);
}

void cg_duty_run_free(struct cg_duty_run *run)
{
    if (run == NULL)
        return;
    for (size_t i = 0; i < run->points_made; i++)
        cg_point_free(&run->point[i]);
    free(run->point);
    free(run->piece);
    free(run->place);
    for (int i = 0; i < 2; i++)
        cg_point_free(&run->mixed[i]);
    cg_regime_map_free(&run->map);
    cg_point_workspace_free(&run->workspace);
    cg_thermal_free(run->thermal);
    free(run);
}
