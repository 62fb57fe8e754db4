#include "stepper.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "heat_matrix.h"
#include "interval.h"

enum { SCRATCH = 2 };

struct cg_stepper {
    struct cg_heat_matrix *matrix;
    struct cg_rosenbrock *step;
    struct cg_chebyshev *series;
    double *block;  /* SCRATCH vectors of [nodes] */
    char *grounded; /* [nodes] has a way to a bath */
    double pace;    /* step size wished for when the last run ended [s] */
    const struct cg_interval *interval; /* under way, else NULL */
};

void cg_stepper_free(struct cg_stepper *stepper)
{
    if (stepper == NULL)
        return;
    cg_chebyshev_free(stepper->series);
    cg_rosenbrock_free(stepper->step);
    cg_heat_matrix_free(stepper->matrix);
    free(stepper->block);
    free(stepper->grounded);
    free(stepper);
}

enum cg_status cg_stepper_create(const struct cg_network *network,
                                 struct cg_stepper **stepper,
                                 struct cg_error *error)
{
    enum cg_status status = CG_NO_MEMORY;
    struct cg_stepper *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto out;
    made->block = calloc(SCRATCH * network->nodes + 1, sizeof *made->block);
    made->grounded = calloc(network->nodes + 1, sizeof *made->grounded);
    if (made->block == NULL || made->grounded == NULL)
        goto out;
    status = cg_heat_matrix_create(network, &made->matrix, error);
    if (status == CG_OK)
        status =
            cg_rosenbrock_create(network, made->matrix, &made->step, error);
    if (status == CG_OK)
        status =
            cg_chebyshev_create(network, made->matrix, &made->series, error);
    if (status != CG_OK)
        goto out;
    *stepper = made;
    return CG_OK;

out:
    cg_stepper_free(made);
    return cg_error_set(error, status, "no memory for the stepper");
}

enum cg_status cg_stepper_settle(struct cg_stepper *stepper,
                                 const struct cg_network *network,
                                 double *temperature, struct cg_error *error)
{
    struct cg_heat_matrix *matrix = stepper->matrix;
    size_t floating = cg_network_find_floating(network, stepper->grounded);
    if (floating < network->nodes)
        return cg_error_set(error, CG_NUMERICAL,
                            "no settled state: node %s has no way to a bath",
                            network->name[floating]);
    cg_heat_matrix_read(matrix, network);
    enum cg_status status = cg_heat_matrix_factor(matrix, network, 0, 1, error);
    if (status != CG_OK)
        return status;
    /* K T = b from zero, then once more on what is left over. */
    double *settled = stepper->block, *rest = stepper->block + network->nodes;
    memset(settled, 0, network->nodes * sizeof *settled);
    for (int pass = 0; pass < 2; pass++) {
        cg_network_net_heat(network, settled, rest);
        cg_heat_matrix_solve(matrix, rest);
        for (size_t i = 0; i < network->nodes; i++)
            settled[i] += rest[i];
    }
    for (size_t i = 0; i < network->nodes; i++)
        if (!isfinite(settled[i]))
            return cg_error_set(error, CG_NUMERICAL,
                                "settled temperature of node %s is not finite",
                                network->name[i]);
    memcpy(temperature, settled, network->nodes * sizeof *temperature);
    return CG_OK;
}

double cg_stepper_correct(struct cg_stepper *stepper,
                          const struct cg_network *network,
                          double *temperature)
{
    double *correction = stepper->block, most = 0;
    if (!cg_heat_matrix_has(stepper->matrix, 0, 1))
        return INFINITY;
    cg_network_net_heat(network, temperature, correction);
    cg_heat_matrix_solve(stepper->matrix, correction);
    for (size_t i = 0; i < network->nodes; i++) {
        temperature[i] += correction[i];
        if (!(fabs(correction[i]) <= most))
            most = fabs(correction[i]);
    }
    return most;
}

void cg_stepper_take_factors(struct cg_stepper *stepper,
                             const struct cg_stepper *from)
{
    cg_heat_matrix_take(stepper->matrix, from->matrix);
}

void cg_interval_add_heat(struct cg_interval *interval, const double *heat)
{
    for (size_t s = 0; s < CG_SIDES; s++) {
        interval->heat[s] += heat[s];
        interval->turnover += fabs(heat[s]);
    }
}

enum cg_status cg_interval_show(const struct cg_interval *interval, double time,
                               const double *temperature,
                               struct cg_error *error)
{
    if (interval->observer == NULL)
        return CG_OK;
    return interval->observer(interval->observer_context, time, temperature,
                              error);
}

enum cg_status cg_interval_check(const struct cg_interval *interval,
                                struct cg_error *error)
{
    const struct cg_step_control *control = interval->control;
    long most = control->max_steps > 0 ? control->max_steps : 1000000;
    double least =
        16 * DBL_EPSILON * fmax(fabs(interval->from), fabs(interval->to));
    const char *name = interval->network->name[interval->worst];
    if (interval->steps + interval->rejected >= most)
        return cg_error_set(error, CG_NUMERICAL,
                            "at %.6g s: more than %ld steps (node %s)",
                            interval->time, most, name);
    if (!(interval->h > least))
        return cg_error_set(error, CG_NUMERICAL,
                            "at %.6g s: step size down to %.3g s by the error "
                            "at node %s",
                            interval->time, interval->h, name);
    return CG_OK;
}

static void close_ledger(const struct cg_interval *interval, double stored,
                         struct cg_heat_ledger *ledger)
{
    double in = 0;
    for (size_t s = 0; s < CG_SIDES; s++) {
        ledger->in[s] += interval->heat[s];
        in += ledger->in[s];
    }
    ledger->stored += stored;
    ledger->turnover =
        fmax(ledger->turnover + interval->turnover, fabs(ledger->stored));
    ledger->residual =
        ledger->turnover > 0 ? (in - ledger->stored) / ledger->turnover : 0;
    ledger->steps += interval->steps;
    ledger->rejected += interval->rejected;
}

void cg_stepper_between(const struct cg_stepper *stepper, double time,
                        double *temperature)
{
    const struct cg_interval *interval = stepper->interval;
    assert(interval != NULL);
    double since = fmin(fmax(time - interval->start, 0), interval->length);
    if (interval->control->settled)
        memcpy(temperature, interval->temperature,
               interval->network->nodes * sizeof *temperature);
    else if (interval->constant)
        cg_chebyshev_at(interval->series, since, temperature);
    else
        cg_rosenbrock_inside(interval->step, since / interval->length,
                             temperature);
}

double cg_stepper_pace(const struct cg_stepper *stepper)
{
    return stepper->pace;
}

/* Nothing moves: heat goes through. */
static enum cg_status stand_still(struct cg_interval *interval,
                                  struct cg_error *error)
{
    double heat[CG_SIDES], span = interval->to - interval->from;
    cg_network_heat_by_side(interval->network, interval->temperature, heat);
    for (size_t s = 0; s < CG_SIDES; s++)
        heat[s] *= span;
    cg_interval_add_heat(interval, heat);
    interval->time = interval->to;
    return cg_interval_show(interval, interval->to, interval->temperature,
                            error);
}

enum cg_status
cg_stepper_run(struct cg_stepper *stepper, struct cg_network *network,
               const struct cg_drive *drive, double from, double to,
               const struct cg_step_control *control, double *temperature,
               struct cg_heat_ledger *ledger, cg_step_observer observer,
               void *observer_context, struct cg_error *error)
{
    assert(to >= from);
    assert(control->fixed_step > 0 || control->tolerance > 0);
    size_t nodes = network->nodes;
    double *block = stepper->block;
    struct cg_interval interval = {
        .step = stepper->step,
        .series = stepper->series,
        .network = network,
        .drive = drive,
        .control = control,
        .from = from,
        .to = to,
        .time = from,
        .temperature = temperature,
        .observer = observer,
        .observer_context = observer_context,
        .scratch = {block, block + nodes},
    };
    stepper->interval = &interval;
    double before = cg_network_stored_heat(network, temperature);
    long factorings = cg_heat_matrix_factorings(stepper->matrix);
    long solutions = cg_heat_matrix_solutions(stepper->matrix);
    if (!control->settled)
        cg_rosenbrock_begin(stepper->step, network, drive, from, temperature);
    interval.constant = stepper->step->steady && !(control->fixed_step > 0);
    enum cg_status status =
        cg_interval_show(&interval, from, temperature, error);
    if (status == CG_OK && control->settled)
        status = stand_still(&interval, error);
    else if (status == CG_OK)
        status = interval.constant ? cg_interval_constant(&interval, error)
                                : cg_interval_driven(&interval, error);
    stepper->interval = NULL;
    stepper->pace = interval.h;
    if (ledger != NULL) {
        close_ledger(&interval,
                     cg_network_stored_heat(network, temperature) - before,
                     ledger);
        ledger->factorings +=
            cg_heat_matrix_factorings(stepper->matrix) - factorings;
        ledger->solutions +=
            cg_heat_matrix_solutions(stepper->matrix) - solutions;
    }
    return status;
}
