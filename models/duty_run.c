#include "duty_run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static bool same_point(const struct cg_operating *a,
                       const struct cg_operating *b)
{
    return a->speed == b->speed && a->load == b->load &&
           a->heat_factor == b->heat_factor &&
           a->coolant_temperature == b->coolant_temperature;
}

/* Index of the regime at this point, added (unsolved) if new. */
static enum cg_status regime_at(struct cg_duty_run *run,
                                const struct cg_operating *operating,
                                size_t *index, struct cg_error *error)
{
    for (size_t i = 0; i < run->regimes; i++)
        if (same_point(&run->regime[i].operating, operating)) {
            *index = i;
            return CG_OK;
        }
    struct cg_regime *grown =
        realloc(run->regime, (run->regimes + 1) * sizeof *grown);
    if (grown == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    run->regime = grown;
    struct cg_regime *added = &run->regime[run->regimes];
    enum cg_status status = cg_regime_create(run->thermal, added, error);
    if (status != CG_OK)
        return status;
    added->operating = *operating;
    *index = run->regimes++;
    return CG_OK;
}

static struct cg_operating point_in(const struct cg_case *c,
                                    const struct cg_segment *segment,
                                    double part)
{
    return (struct cg_operating){
        .speed = segment->speed + part * (segment->speed_end - segment->speed),
        .load = segment->load + part * (segment->load_end - segment->load),
        .heat_factor = segment->heat_factor,
        .coolant_temperature = isnan(segment->coolant_temperature)
                                   ? c->cooling.coolant_temperature
                                   : segment->coolant_temperature};
}

static enum cg_status add_piece(struct cg_duty_run *run, double from,
                                double to, size_t start, size_t end,
                                struct cg_error *error)
{
    struct cg_piece *grown =
        realloc(run->piece, (run->pieces + 1) * sizeof *grown);
    if (grown == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    run->piece = grown;
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
    size_t before, after = 0;
    enum cg_status status = regime_at(run, &point, &before, error);
    for (int i = 1; i <= cuts && status == CG_OK; i++) {
        point = point_in(c, segment, (double)i / cuts);
        double from = run->duration + segment->seconds * (i - 1) / cuts;
        double to = run->duration + segment->seconds * i / cuts;
        status = regime_at(run, &point, &after, error);
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
    enum cg_status status = regime_at(run, &full, &run->full_load, error);
    run->start = run->piece[0].start;
    if (status == CG_OK && c->duty.start == CG_START_CRUISE)
        status = regime_at(run, &cruise, &run->start, error);
    return status;
}

/* Network, pieces and unsolved regimes. */
static enum cg_status lay_out(const struct cg_case *c,
                              struct cg_duty_run **run, struct cg_error *error)
{
    struct cg_duty_run *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->film_scale = c->scale.film;
    made->friction_share = c->piston.friction_share;
    enum cg_status status = cg_thermal_create(c, &made->thermal, error);
    if (status == CG_OK)
        status = cg_regime_room_create(made->thermal, &made->room, error);
    for (int i = 0; i < c->duty.segments && status == CG_OK; i++)
        status = add_segment(c, made, &c->duty.segment[i], error);
    if (status == CG_OK && made->pieces == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "duty.segments: none given, at least one");
    if (status == CG_OK)
        status = add_start(c, made, error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

enum cg_status cg_duty_run_create(const struct cg_case *c,
                                  struct cg_duty_run **run,
                                  struct cg_error *error)
{
    struct cg_duty_run *made;
    enum cg_status status = lay_out(c, &made, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < made->regimes && status == CG_OK; i++)
        status = cg_regime_solve(c, made->thermal, &made->room,
                                 i > 0 ? &made->regime[i - 1] : NULL,
                                 &made->regime[i], error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

/* Gas side, performance and charge of a solved regime into another one. */
static void copy_gas_side(const struct cg_regime *from, size_t stations,
                          double film_ratio, struct cg_regime *to)
{
    to->charge = from->charge;
    to->input = from->input;
    to->crown = from->crown;
    to->friction = from->friction;
    to->performance = from->performance;
    for (int r = 0; r < CG_RINGS; r++)
        to->film[r] = from->film[r] * film_ratio;
    memcpy(to->cylinder, from->cylinder,
           CG_RING_FILM_POINTS * sizeof *to->cylinder);
    memcpy(to->station, from->station, stations * sizeof *to->station);
    memcpy(to->joint, from->joint, stations * sizeof *to->joint);
}

enum cg_status cg_duty_run_vary(const struct cg_case *c,
                                const struct cg_duty_run *nominal,
                                bool gas_side_same, struct cg_duty_run **run,
                                struct cg_error *error)
{
    struct cg_duty_run *made;
    enum cg_status status = lay_out(c, &made, error);
    if (status != CG_OK)
        return status;
    size_t stations = made->thermal->bore.grid.stations;
    double film_ratio = c->scale.film / nominal->film_scale;
    double friction_ratio =
        nominal->friction_share > 0.0
            ? c->piston.friction_share / nominal->friction_share
            : 1.0;
    for (size_t i = 0; i < made->regimes && status == CG_OK; i++) {
        struct cg_regime *regime = &made->regime[i];
        copy_gas_side(&nominal->regime[i], stations, film_ratio, regime);
        regime->friction *= friction_ratio;
        if (!gas_side_same)
            status = cg_regime_cycle(c, made->thermal, &made->room, regime,
                                     error);
        if (status == CG_OK)
            status = cg_regime_films(c, made->thermal, &made->room, regime,
                                     error);
    }
    if (status == CG_OK)
        status = cg_regime_settle(made->thermal, &made->room,
                                  &made->regime[made->start], error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

void cg_duty_run_free(struct cg_duty_run *run)
{
    if (run == NULL)
        return;
    for (size_t i = 0; i < run->regimes; i++)
        cg_regime_free(&run->regime[i]);
    free(run->regime);
    free(run->piece);
    cg_regime_room_free(&run->room);
    cg_thermal_free(run->thermal);
    free(run);
}

/* What the stepper's watch needs to turn steps into instants. */
struct march {
    struct cg_duty_run *run;
    const struct cg_piece *piece;
    double interval;
    double next;          /* next multiple of interval [s] */
    cg_instant_watch watch;
    void *context;
    bool started;
    double time;          /* of the step before */
    double *between;      /* [nodes] scratch [K] */
};

static double part_of(const struct cg_piece *piece, double time)
{
    double length = piece->to - piece->from;
    return length > 0.0 ? fmin((time - piece->from) / length, 1.0) : 1.0;
}

static void drive_at(void *context, double time, struct cg_network *network)
{
    struct march *march = context;
    struct cg_duty_run *run = march->run;
    (void)network;
    cg_regime_apply(&run->regime[march->piece->start],
                    &run->regime[march->piece->end],
                    part_of(march->piece, time), run->thermal);
}

static enum cg_status report(struct march *march, double time,
                             const double *temperature,
                             struct cg_error *error)
{
    const struct cg_regime *a = &march->run->regime[march->piece->start];
    const struct cg_regime *b = &march->run->regime[march->piece->end];
    double part = part_of(march->piece, time);
    struct cg_instant instant = {
        .time = time,
        .speed = a->operating.speed +
                 part * (b->operating.speed - a->operating.speed),
        .load =
            a->operating.load + part * (b->operating.load - a->operating.load),
        .manifold_pressure =
            a->charge.manifold_pressure +
            part * (b->charge.manifold_pressure - a->charge.manifold_pressure),
        .temperature = temperature};
    return march->watch(march->context, &instant, error);
}

static enum cg_status report_inside(struct march *march, double time,
                                    struct cg_error *error)
{
    cg_stepper_between(march->run->room.stepper, time, march->between);
    return report(march, time, march->between, error);
}

/* Instants of one step in order: table times and the middle, then its end. */
static enum cg_status on_step(void *context, double time,
                              const double *temperature,
                              struct cg_error *error)
{
    struct march *march = context;
    enum cg_status status = CG_OK;
    if (march->started && time > march->time) {
        double middle = 0.5 * (march->time + time);
        bool middle_done = false;
        double close = 1e-9 * (1.0 + time);
        while (status == CG_OK && march->interval > 0.0 &&
               march->next < time - close) {
            if (!middle_done && middle < march->next - close) {
                status = report_inside(march, middle, error);
                middle_done = true;
            }
            if (status == CG_OK)
                status = report_inside(march, march->next, error);
            march->next += march->interval;
        }
        if (status == CG_OK && !middle_done)
            status = report_inside(march, middle, error);
    }
    if (status == CG_OK && (!march->started || time > march->time))
        status = report(march, time, temperature, error);
    march->started = true;
    march->time = time;
    return status;
}

void cg_duty_run_start(const struct cg_case *c, const struct cg_duty_run *run,
                       double *temperature)
{
    size_t nodes = run->thermal->network->nodes;
    if (c->duty.start == CG_START_COLD)
        for (size_t i = 0; i < nodes; i++)
            temperature[i] = c->charge.ambient_temperature;
    else
        memcpy(temperature, run->regime[run->start].settled,
               nodes * sizeof *temperature);
}

static enum cg_status march_pieces(const struct cg_case *c,
                                   struct march *march, double *temperature,
                                   struct cg_heat_ledger *ledger,
                                   struct cg_error *error)
{
    struct cg_duty_run *run = march->run;
    struct cg_step_control control = {.tolerance = c->solver.tolerance};
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < run->pieces && status == CG_OK; i++) {
        march->piece = &run->piece[i];
        bool held = march->piece->start == march->piece->end;
        struct cg_drive drive = {held ? NULL : drive_at, march, held};
        if (held)
            drive_at(march, march->piece->from, run->thermal->network);
        /* A ramp goes on at its pace; a jump begins anew. */
        bool joined = i > 0 && run->piece[i - 1].end == march->piece->start;
        control.first_step =
            joined ? cg_stepper_pace(run->room.stepper) : 0.0;
        status = cg_stepper_run(run->room.stepper, run->thermal->network,
                                &drive, march->piece->from, march->piece->to,
                                &control, temperature, ledger, on_step, march,
                                error);
    }
    return status;
}

enum cg_status cg_duty_run_go(const struct cg_case *c,
                              struct cg_duty_run *run, double interval,
                              cg_instant_watch watch, void *context,
                              struct cg_heat_ledger *ledger,
                              struct cg_error *error)
{
    size_t nodes = run->thermal->network->nodes;
    double *block = malloc(2 * nodes * sizeof *block);
    if (block == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    struct march march = {.run = run,
                          .interval = interval,
                          .next = interval,
                          .watch = watch,
                          .context = context,
                          .between = block + nodes};
    if (ledger != NULL)
        memset(ledger, 0, sizeof *ledger);
    cg_duty_run_start(c, run, block);
    enum cg_status status = march_pieces(c, &march, block, ledger, error);
    free(block);
    return status;
}
