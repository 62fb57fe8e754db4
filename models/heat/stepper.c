#include "stepper.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "heat_matrix.h"
#include "stretch.h"

enum { SCRATCH = 2 };

struct cg_stepper {
    struct cg_heat_matrix *matrix;
    struct cg_rosenbrock *step;
    struct cg_held *held;
    double *block;  /* SCRATCH vectors of [nodes] */
    char *grounded; /* [nodes] has a way to a bath */
    double pace;    /* step size wished for when the last run ended [s] */
    const struct cg_stretch *stretch; /* under way, else NULL */
};

void cg_stepper_free(struct cg_stepper *stepper)
{
    if (stepper == NULL)
        return;
    cg_held_free(stepper->held);
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
        status = cg_held_create(network, made->matrix, &made->held, error);
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

void cg_stretch_add_heat(struct cg_stretch *stretch, const double *heat)
{
    for (size_t s = 0; s < CG_SIDES; s++) {
        stretch->heat[s] += heat[s];
        stretch->turnover += fabs(heat[s]);
    }
}

enum cg_status cg_stretch_show(const struct cg_stretch *stretch, double time,
                               const double *temperature,
                               struct cg_error *error)
{
    if (stretch->watch == NULL)
        return CG_OK;
    return stretch->watch(stretch->watch_context, time, temperature, error);
}

enum cg_status cg_stretch_check(const struct cg_stretch *stretch,
                                struct cg_error *error)
{
    const struct cg_step_control *control = stretch->control;
    long most = control->max_steps > 0 ? control->max_steps : 1000000;
    double least =
        16 * DBL_EPSILON * fmax(fabs(stretch->from), fabs(stretch->to));
    const char *name = stretch->network->name[stretch->worst];
    if (stretch->steps + stretch->rejected >= most)
        return cg_error_set(error, CG_NUMERICAL,
                            "at %.6g s: more than %ld steps (node %s)",
                            stretch->time, most, name);
    if (!(stretch->h > least))
        return cg_error_set(error, CG_NUMERICAL,
                            "at %.6g s: step size down to %.3g s by the error "
                            "at node %s",
                            stretch->time, stretch->h, name);
    return CG_OK;
}

static void close_ledger(const struct cg_stretch *stretch, double stored,
                         struct cg_heat_ledger *ledger)
{
    double in = 0;
    for (size_t s = 0; s < CG_SIDES; s++) {
        ledger->in[s] += stretch->heat[s];
        in += ledger->in[s];
    }
    ledger->stored += stored;
    ledger->turnover =
        fmax(ledger->turnover + stretch->turnover, fabs(ledger->stored));
    ledger->residual =
        ledger->turnover > 0 ? (in - ledger->stored) / ledger->turnover : 0;
    ledger->steps += stretch->steps;
    ledger->rejected += stretch->rejected;
}

void cg_stepper_between(const struct cg_stepper *stepper, double time,
                        double *temperature)
{
    const struct cg_stretch *stretch = stepper->stretch;
    assert(stretch != NULL);
    double since = fmin(fmax(time - stretch->start, 0), stretch->length);
    if (stretch->control->settled)
        memcpy(temperature, stretch->temperature,
               stretch->network->nodes * sizeof *temperature);
    else if (stretch->series)
        cg_held_at(stretch->held, since, temperature);
    else
        cg_rosenbrock_inside(stretch->step, since / stretch->length,
                             temperature);
}

double cg_stepper_pace(const struct cg_stepper *stepper)
{
    return stepper->pace;
}

/* Nothing moves: heat goes through. */
static enum cg_status stand_still(struct cg_stretch *stretch,
                                  struct cg_error *error)
{
    double heat[CG_SIDES], span = stretch->to - stretch->from;
    cg_network_heat_by_side(stretch->network, stretch->temperature, heat);
    for (size_t s = 0; s < CG_SIDES; s++)
        heat[s] *= span;
    cg_stretch_add_heat(stretch, heat);
    stretch->time = stretch->to;
    return cg_stretch_show(stretch, stretch->to, stretch->temperature, error);
}

enum cg_status
cg_stepper_run(struct cg_stepper *stepper, struct cg_network *network,
               const struct cg_drive *drive, double from, double to,
               const struct cg_step_control *control, double *temperature,
               struct cg_heat_ledger *ledger, cg_step_watch watch,
               void *watch_context, struct cg_error *error)
{
    assert(to >= from);
    assert(control->fixed_step > 0 || control->tolerance > 0);
    size_t nodes = network->nodes;
    double *block = stepper->block;
    struct cg_stretch stretch = {
        .step = stepper->step,
        .held = stepper->held,
        .network = network,
        .drive = drive,
        .control = control,
        .from = from,
        .to = to,
        .time = from,
        .temperature = temperature,
        .watch = watch,
        .watch_context = watch_context,
        .scratch = {block, block + nodes},
    };
    stepper->stretch = &stretch;
    double before = cg_network_stored_heat(network, temperature);
    long factorings = cg_heat_matrix_factorings(stepper->matrix);
    long solutions = cg_heat_matrix_solutions(stepper->matrix);
    if (!control->settled)
        cg_rosenbrock_begin(stepper->step, network, drive, from, temperature);
    stretch.series = stepper->step->steady && !(control->fixed_step > 0);
    enum cg_status status = cg_stretch_show(&stretch, from, temperature, error);
    if (status == CG_OK && control->settled)
        status = stand_still(&stretch, error);
    else if (status == CG_OK)
        status = stretch.series ? cg_stretch_held(&stretch, error)
                                : cg_stretch_driven(&stretch, error);
    stepper->stretch = NULL;
    stepper->pace = stretch.h;
    if (ledger != NULL) {
        close_ledger(&stretch,
                     cg_network_stored_heat(network, temperature) - before,
                     ledger);
        ledger->factorings +=
            cg_heat_matrix_factorings(stepper->matrix) - factorings;
        ledger->solutions +=
            cg_heat_matrix_solutions(stepper->matrix) - solutions;
    }
    return status;
}
