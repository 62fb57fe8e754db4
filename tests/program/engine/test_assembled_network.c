/* The assembled network of a shipped engine, full load reached at once from
 * cruise: coldgap's stepper against a stiff solver that shares no line with
 * it, GSL's variable-order BDF with the exact Jacobian. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include "case_of.h"
#include "check_close.h"

struct system {
    const struct cg_network *network;
    double *matrix; /* [nodes x nodes] dT/dt = matrix T + offset [1/s] */
    double *offset; /* [K/s] */
};

/* From the network's plain lists, not by its own functions. */
static void assemble(struct system *system)
{
    const struct cg_network *n = system->network;
    size_t nodes = n->nodes;
    system->matrix = calloc(nodes * nodes, sizeof *system->matrix);
    system->offset = calloc(nodes, sizeof *system->offset);
    ck_assert(system->matrix != NULL && system->offset != NULL);
    for (size_t i = 0; i < n->links; i++) {
        size_t a = n->link_a[i], b = n->link_b[i];
        double g = n->link_conductance[i];
        system->matrix[a * nodes + a] -= g / n->capacity[a];
        system->matrix[a * nodes + b] += g / n->capacity[a];
        system->matrix[b * nodes + b] -= g / n->capacity[b];
        system->matrix[b * nodes + a] += g / n->capacity[b];
    }
    for (size_t i = 0; i < n->baths; i++) {
        size_t a = n->bath_node[i];
        double g = n->bath_conductance[i] / n->capacity[a];
        system->matrix[a * nodes + a] -= g;
        system->offset[a] += g * n->bath_temperature[i];
    }
    for (size_t i = 0; i < n->sources; i++)
        system->offset[n->source_node[i]] +=
            n->source_power[i] / n->capacity[n->source_node[i]];
}

static int right_side(double t, const double y[], double rate[], void *params)
{
    const struct system *system = params;
    size_t nodes = system->network->nodes;
    (void)t;
    for (size_t i = 0; i < nodes; i++) {
        const double *row = &system->matrix[i * nodes];
        rate[i] = system->offset[i];
        for (size_t j = 0; j < nodes; j++)
            rate[i] += row[j] * y[j];
    }
    return GSL_SUCCESS;
}

static int jacobian(double t, const double y[], double *dfdy, double dfdt[],
                    void *params)
{
    const struct system *system = params;
    size_t nodes = system->network->nodes;
    (void)t;
    (void)y;
    memcpy(dfdy, system->matrix, nodes * nodes * sizeof *dfdy);
    memset(dfdt, 0, nodes * sizeof *dfdt);
    return GSL_SUCCESS;
}

static const double instants[] = {0.05, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0};

START_TEST(stepper_against_bdf)
{
    gsl_set_error_handler_off();
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    struct cg_network *network = run->thermal->network;
    const struct cg_operating_point *full = &run->point[run->full_load];
    size_t nodes = network->nodes;
    double *ours = malloc(2 * nodes * sizeof *ours), *theirs = ours + nodes;
    ck_assert_ptr_nonnull(ours);
    cg_duty_run_start(&c, run, ours);
    memcpy(theirs, ours, nodes * sizeof *theirs);
    cg_point_apply(full, full, 0.0, run->thermal);

    struct system system = {network, NULL, NULL};
    assemble(&system);
    gsl_odeiv2_system ode = {right_side, jacobian, nodes, &system};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &ode, gsl_odeiv2_step_msbdf, 1e-5, 1e-6, 0.0);
    ck_assert_ptr_nonnull(driver);

    double time = 0.0, from = 0.0, most = 0.0, moved = 0.0;
    struct cg_step_control control = {.tolerance = c.solver.tolerance};
    for (size_t k = 0; k < COUNT_OF(instants); k++) {
        struct cg_drive drive = {NULL, NULL, true};
        ck_assert_int_eq(gsl_odeiv2_driver_apply(driver, &time, instants[k],
                                                 theirs), GSL_SUCCESS);
        ck_assert_int_eq(cg_stepper_run(run->workspace.stepper, network, &drive,
                                        from, instants[k], &control, ours,
                                        NULL, NULL, NULL, NULL), CG_OK);
        from = instants[k];
        for (size_t i = 0; i < nodes; i++) {
            check_within(ours[i], theirs[i], 0.1,
                         "M. Galassi et al., GNU Scientific Library, msbdf");
            most = fmax(most, fabs(ours[i] - theirs[i]));
        }
    }
    moved = theirs[run->thermal->piston.node[0]] -
            run->point[run->start].settled[run->thermal->piston.node[0]];
    printf("%zu nodes, %zu instants: largest difference %.4f K while the "
           "crown rises by %.1f K\n", nodes, COUNT_OF(instants), most, moved);
    ck_assert_double_gt(moved, 50.0);
    gsl_odeiv2_driver_free(driver);
    free(system.matrix);
    free(system.offset);
    free(ours);
    cg_duty_run_free(run);
}
END_TEST

/* The settled state: what comes in goes out, by the network's plain lists. */
START_TEST(settled_state_has_no_rate)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_operating_point *full = &run->point[run->full_load];
    cg_point_apply(full, full, 0.0, run->thermal);
    struct system system = {run->thermal->network, NULL, NULL};
    assemble(&system);
    size_t nodes = system.network->nodes;
    double *rate = malloc(nodes * sizeof *rate);
    ck_assert_ptr_nonnull(rate);
    right_side(0.0, full->settled, rate, &system);
    for (size_t i = 0; i < nodes; i++)
        check_within(rate[i] * system.network->capacity[i], 0.0, 1e-6,
                     "first law at every node");
    free(rate);
    free(system.matrix);
    free(system.offset);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("assembled network");
    TCase *all = tcase_create("assembled network");
    tcase_set_timeout(all, 300);
    tcase_add_test(all, stepper_against_bdf);
    tcase_add_test(all, settled_state_has_no_rate);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
