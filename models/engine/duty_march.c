/* Carries a duty's transient from piece to piece, and shows its instants. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "duty_run.h"

/* What the stepper's observer needs to turn steps into instants. */
struct cg_march {
    struct cg_duty_run *run;
    const struct cg_piece *piece;
    const struct cg_operating_point *start, *end; /* of the piece */
    double interval;
    long rows; /* multiples of interval shown so far */
    cg_instant_observer observer;
    void *context;
    bool started;
    bool still;      /* no temperature moves in this piece */
    double time;     /* of the step before */
    double *between; /* [nodes] scratch [K] */
};

static double part_of(const struct cg_piece *piece, double time)
{
    double length = piece->to - piece->from;
    return length > 0.0 ? fmin((time - piece->from) / length, 1.0) : 1.0;
}

static void drive_at(void *context, double time, struct cg_network *network)
{
    struct cg_march *march = context;
    struct cg_duty_run *run = march->run;
    (void)network;
    cg_point_apply(march->start, march->end, part_of(march->piece, time),
                   run->thermal);
}

static struct cg_instant instant_at(const struct cg_march *march, double time,
                                    const double *temperature)
{
    const struct cg_operating_point *a = march->start, *b = march->end;
    double part = part_of(march->piece, time);
    return (struct cg_instant){
        .time = time,
        .speed = a->operating.speed +
                 part * (b->operating.speed - a->operating.speed),
        .load =
            a->operating.load + part * (b->operating.load - a->operating.load),
        .manifold_pressure =
            a->charge.manifold_pressure +
            part * (b->charge.manifold_pressure - a->charge.manifold_pressure),
        .temperature = temperature};
}

void cg_duty_run_inside(const struct cg_duty_run *run, double time,
                        double *temperature, struct cg_instant *instant)
{
    cg_stepper_between(run->workspace.stepper, time, temperature);
    *instant = instant_at(run->march, time, temperature);
}

static enum cg_status show_inside(struct cg_march *march, double time,
                                  enum cg_step_place step, bool table,
                                  struct cg_error *error)
{
    struct cg_instant instant;
    cg_duty_run_inside(march->run, time, march->between, &instant);
    instant.step = step;
    instant.table = table;
    return march->observer(march->context, &instant, error);
}

static double next_row(const struct cg_march *march)
{
    return march->interval > 0.0 ? march->interval * (double)march->rows
                                 : INFINITY;
}

/* Table times inside one step and its middle, in order. */
static enum cg_status show_step(struct cg_march *march, double time,
                                double close, struct cg_error *error)
{
    enum cg_status status = CG_OK;
    double middle = 0.5 * (march->time + time);
    bool middle_done = march->still;
    while (status == CG_OK && next_row(march) < time - close) {
        if (!middle_done && middle < next_row(march)) {
            status = show_inside(march, middle, CG_STEP_MIDDLE, false, error);
            middle_done = true;
        }
        if (status == CG_OK)
            status =
                show_inside(march, next_row(march), CG_STEP_NONE, true, error);
        march->rows++;
    }
    if (status == CG_OK && !middle_done)
        status = show_inside(march, middle, CG_STEP_MIDDLE, false, error);
    return status;
}

/* Instants of one step in order, its end last.  A stretch begins where the one
 * before ended: shown already. */
static enum cg_status on_step(void *context, double time,
                              const double *temperature, struct cg_error *error)
{
    struct cg_march *march = context;
    enum cg_status status = CG_OK;
    double close = 1e-9 * (1.0 + time);
    if (march->started && !(time > march->time))
        return CG_OK;
    if (march->started)
        status = show_step(march, time, close, error);
    struct cg_instant instant = instant_at(march, time, temperature);
    instant.step = CG_STEP_END;
    bool row = next_row(march) <= time + close;
    if (row)
        march->rows++;
    instant.table = row || time >= march->run->duration - close;
    if (status == CG_OK)
        status = march->observer(march->context, &instant, error);
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
        memcpy(temperature, run->point[run->start].settled,
               nodes * sizeof *temperature);
}

/* Of a mapped run one of the two points mixed is the end, the other the start:
 * a piece that goes on from where the one before ended takes that over. */
static void set_ends(struct cg_march *march, bool joined)
{
    struct cg_duty_run *run = march->run;
    const struct cg_piece *piece = march->piece;
    bool second = march->end == &run->mixed[1];
    march->start = joined
                       ? march->end
                       : cg_duty_run_place(run, piece->start,
                                           &run->mixed[second]);
    march->end = piece->start == piece->end
                     ? march->start
                     : cg_duty_run_place(
                           run, piece->end,
                           &run->mixed[march->start == &run->mixed[0]]);
}

static enum cg_status march_pieces(const struct cg_case *c,
                                   struct cg_march *march, double *temperature,
                                   struct cg_heat_ledger *ledger,
                                   struct cg_error *error)
{
    struct cg_duty_run *run = march->run;
    struct cg_step_control control = {.tolerance = c->solver.tolerance};
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < run->pieces && status == CG_OK; i++) {
        march->piece = &run->piece[i];
        bool joined = i > 0 && run->piece[i - 1].end == march->piece->start;
        set_ends(march, joined);
        bool held = march->piece->start == march->piece->end;
        /* Nothing moves where the duty goes on as it was settled: at a solved
         * point, and not quite at one mixed of others. */
        march->still = i == 0 && held && !run->mapped &&
                       c->duty.start != CG_START_COLD &&
                       march->piece->start == run->start_place;
        control.settled = march->still;
        struct cg_drive drive = {held ? NULL : drive_at, march, held};
        if (held)
            drive_at(march, march->piece->from, run->thermal->network);
        /* A ramp goes on at its pace; a jump begins anew. */
        control.first_step =
            joined ? cg_stepper_pace(run->workspace.stepper) : 0.0;
        status = cg_stepper_run(run->workspace.stepper, run->thermal->network,
                                &drive, march->piece->from, march->piece->to,
                                &control, temperature, ledger, on_step, march,
                                error);
    }
    return status;
}

/* Instants asked for are kept or written, each by whoever watches. */
static enum cg_status check_rows(double duration, double interval,
                                 struct cg_error *error)
{
    double steps = duration / interval, most = CG_DUTY_ROWS - 1;
    if (!(interval > 0.0) || steps <= most)
        return CG_OK;
    double least = duration / most;
    double digit = pow(10.0, floor(log10(least)) - 1.0);
    return cg_error_set(error, CG_BAD_INPUT,
                        "solver.table_step_s: %.6g s over a duty of %.6g s "
                        "are %.0f rows, at most %d are allowed; %.6g s would "
                        "do",
                        interval, duration, steps + 1.0, CG_DUTY_ROWS,
                        digit * ceil(least / digit));
}

enum cg_status cg_duty_run_go(const struct cg_case *c, struct cg_duty_run *run,
                              double interval, cg_instant_observer observer,
                              void *context, struct cg_heat_ledger *ledger,
                              struct cg_error *error)
{
    size_t nodes = run->thermal->network->nodes;
    enum cg_status status = check_rows(run->duration, interval, error);
    if (status != CG_OK)
        return status;
    double *block = malloc(2 * nodes * sizeof *block);
    if (block == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    struct cg_march march = {.run = run,
                             .interval = interval,
                             .observer = observer,
                             .context = context,
                             .between = block + nodes};
    if (ledger != NULL)
        memset(ledger, 0, sizeof *ledger);
    run->march = &march;
    cg_duty_run_start(c, run, block);
    status = march_pieces(c, &march, block, ledger, error);
    run->march = NULL;
    free(block);
    return status;
}
