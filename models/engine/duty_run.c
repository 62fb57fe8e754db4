#include "duty_run.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Least correction of settled temperatures of a varied case [K]. */
#define VARIED_TOLERANCE 1e-2

static bool same_point(const struct cg_operating *a,
                       const struct cg_operating *b)
{
    return a->speed == b->speed && a->load == b->load &&
           a->heat_factor == b->heat_factor &&
           a->coolant_temperature == b->coolant_temperature;
}

/* One point more, unsolved; those left by an earlier layout are used again. */
static enum cg_status add_point(struct cg_duty_run *run,
                                 const struct cg_operating *operating,
                                 struct cg_error *error)
{
    if (run->points == run->points_allocated) {
        struct cg_operating_point *grown =
            realloc(run->point, (run->points + 1) * sizeof *grown);
        if (grown == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "out of memory");
        run->point = grown;
        enum cg_status status = cg_point_create(
            run->thermal, &run->point[run->points], error);
        if (status != CG_OK)
            return status;
        run->points_allocated++;
    }
    run->point[run->points++].operating = *operating;
    return CG_OK;
}

/* Index of the point that runs so; `points` where there is none. */
static size_t index_of(const struct cg_duty_run *run,
                       const struct cg_operating *operating)
{
    size_t index = 0;
    while (index < run->points &&
           !same_point(&run->point[index].operating, operating))
        index++;
    return index;
}

/* The same, added if new. */
static enum cg_status point_at(struct cg_duty_run *run,
                                const struct cg_operating *operating,
                                size_t *index, struct cg_error *error)
{
    *index = index_of(run, operating);
    return *index < run->points ? CG_OK : add_point(run, operating, error);
}

/* Exact at both ends, so that a ramp's end and what goes on from there are one
 * point. */
static double between(double from, double to, double part)
{
    return (1.0 - part) * from + part * to;
}

static struct cg_operating point_in(const struct cg_case *c,
                                    const struct cg_segment *segment,
                                    double part)
{
    return (struct cg_operating){
        .speed = between(segment->speed, segment->speed_end, part),
        .load = between(segment->load, segment->load_end, part),
        .heat_factor = segment->heat_factor *
                       (segment->knock_heat > 0.0 ? segment->knock_heat : 1.0),
        .coolant_temperature = isnan(segment->coolant_temperature)
                                   ? c->cooling.coolant_temperature
                                   : segment->coolant_temperature};
}

static enum cg_status add_piece(struct cg_duty_run *run, double from,
                                double to, size_t start, size_t end,
                                struct cg_error *error)
{
    if (run->pieces == run->pieces_allocated) {
        struct cg_piece *grown =
            realloc(run->piece, (run->pieces + 1) * sizeof *grown);
        if (grown == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "out of memory");
        run->piece = grown;
        run->pieces_allocated++;
    }
    run->piece[run->pieces++] = (struct cg_piece){from, to, start, end};
    return CG_OK;
}

static enum cg_status add_segment(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  const struct cg_segment *segment,
                                  struct cg_error *error)
{
    double speed_rise =
        fabs(segment->speed_end - segment->speed) / c->engine.speed;
    double load_rise = fabs(segment->load_end - segment->load);
    int cuts = (int)ceil(fmax(speed_rise / CG_RAMP_SPEED,
                              load_rise / CG_RAMP_LOAD) - 1e-9);
    if (cuts < 1)
        cuts = 1;
    struct cg_operating point = point_in(c, segment, 0.0);
    size_t before = 0, after = 0;
    enum cg_status status = point_at(run, &point, &before, error);
    for (int i = 1; i <= cuts && status == CG_OK; i++) {
        point = point_in(c, segment, (double)i / cuts);
        double from = run->duration + segment->seconds * (i - 1) / cuts;
        double to = run->duration + segment->seconds * i / cuts;
        status = point_at(run, &point, &after, error);
        if (status == CG_OK)
            status = add_piece(run, from, to, before, after, error);
        before = after;
    }
    run->duration += segment->seconds;
    return status;
}

static enum cg_status add_start(const struct cg_case *c,
                                struct cg_duty_run *run,
                                struct cg_error *error)
{
    struct cg_operating full = {c->engine.speed, 1.0, 1.0,
                                c->cooling.coolant_temperature};
    struct cg_operating cruise = {c->duty.cruise_speed, c->duty.cruise_load,
                                  1.0, c->cooling.coolant_temperature};
    enum cg_status status = point_at(run, &full, &run->full_load, error);
    run->start = run->piece[0].start;
    if (status == CG_OK && c->duty.start == CG_START_CRUISE)
        status = point_at(run, &cruise, &run->start, error);
    return status;
}

/* Pieces and unsolved points of the case's duty. */
static enum cg_status lay_out_duty(const struct cg_case *c,
                                   struct cg_duty_run *run,
                                   struct cg_error *error)
{
    enum cg_status status = CG_OK;
    run->pieces = run->points = 0;
    run->duration = 0.0;
    run->film_scale = c->scale.film;
    run->friction_share = c->piston.friction_share;
    for (int i = 0; i < c->duty.segments && status == CG_OK; i++)
        status = add_segment(c, run, &c->duty.segment[i], error);
    if (status == CG_OK && run->pieces == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "duty.segments: none given, at least one");
    return status == CG_OK ? add_start(c, run, error) : status;
}

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
        status = lay_out_duty(c, made, error);
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
        known != NULL ? index_of(known, &point->operating) : 0;
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
        status = lay_out_duty(c, run, error);
    if (status != CG_OK)
        return status;
    assert(run->points == nominal->points);
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
    for (size_t i = 0; i < run->points_allocated; i++)
        cg_point_free(&run->point[i]);
    free(run->point);
    free(run->piece);
    cg_point_workspace_free(&run->workspace);
    cg_thermal_free(run->thermal);
    free(run);
}
