/* The network of each shipped engine, full load reached at once from cruise:
 * our stepper against CVODE of SUNDIALS, BDF of variable order with a dense
 * Jacobian taken from the network's plain lists. */
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <string.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "../program/case_of.h"
#include "check_close.h"

static const char source[] =
    "S. D. Cohen and A. C. Hindmarsh (1996), CVODE of SUNDIALS 6, BDF";

static const char *const engines[] = {"boosted_four", "iron_six", "big_eight",
                                      "plain_four"};
static const double instants[] = {0.05, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0};

/* Net heat of a node over its capacity, by the network's plain lists. */
static int rate(realtype time, N_Vector t, N_Vector out, void *data)
{
    (void)time;
    const struct cg_network *n = data;
    const double *now = N_VGetArrayPointer(t);
    double *value = N_VGetArrayPointer(out);
    memset(value, 0, n->nodes * sizeof *value);
    for (size_t i = 0; i < n->links; i++) {
        size_t a = n->link_a[i], b = n->link_b[i];
        double heat = n->link_conductance[i] * (now[a] - now[b]);
        value[a] -= heat;
        value[b] += heat;
    }
    for (size_t i = 0; i < n->baths; i++)
        value[n->bath_node[i]] +=
            n->bath_conductance[i] *
            (n->bath_temperature[i] - now[n->bath_node[i]]);
    for (size_t i = 0; i < n->sources; i++)
        value[n->source_node[i]] += n->source_power[i];
    for (size_t i = 0; i < n->nodes; i++)
        value[i] /= n->capacity[i];
    return 0;
}

static int jacobian(realtype time, N_Vector t, N_Vector r, SUNMatrix matrix,
                    void *data, N_Vector a, N_Vector b, N_Vector c)
{
    (void)time, (void)t, (void)r, (void)a, (void)b, (void)c;
    const struct cg_network *n = data;
    realtype *const *column = SUNDenseMatrix_Cols(matrix);
    SUNMatZero(matrix);
    for (size_t i = 0; i < n->links; i++) {
        size_t from = n->link_a[i], to = n->link_b[i];
        double g = n->link_conductance[i];
        column[from][from] -= g / n->capacity[from];
        column[to][from] += g / n->capacity[from];
        column[to][to] -= g / n->capacity[to];
        column[from][to] += g / n->capacity[to];
    }
    for (size_t i = 0; i < n->baths; i++) {
        size_t node = n->bath_node[i];
        column[node][node] -= n->bath_conductance[i] / n->capacity[node];
    }
    return 0;
}

struct peer {
    SUNContext context;
    void *memory;
    N_Vector t;
    SUNMatrix matrix;
    SUNLinearSolver linear;
};

static void open_peer(struct peer *peer, struct cg_network *n,
                      const double *start)
{
    sunindextype nodes = (sunindextype)n->nodes;
    ck_assert_int_eq(SUNContext_Create(NULL, &peer->context), 0);
    peer->t = N_VNew_Serial(nodes, peer->context);
    memcpy(N_VGetArrayPointer(peer->t), start, n->nodes * sizeof *start);
    peer->matrix = SUNDenseMatrix(nodes, nodes, peer->context);
    peer->linear = SUNLinSol_Dense(peer->t, peer->matrix, peer->context);
    peer->memory = CVodeCreate(CV_BDF, peer->context);
    ck_assert_int_eq(CVodeInit(peer->memory, rate, 0, peer->t), CV_SUCCESS);
    ck_assert_int_eq(CVodeSStolerances(peer->memory, 0, 1e-5), CV_SUCCESS);
    ck_assert_int_eq(CVodeSetUserData(peer->memory, n), CV_SUCCESS);
    ck_assert_int_eq(
        CVodeSetLinearSolver(peer->memory, peer->linear, peer->matrix),
        CV_SUCCESS);
    ck_assert_int_eq(CVodeSetJacFn(peer->memory, jacobian), CV_SUCCESS);
    ck_assert_int_eq(CVodeSetMaxNumSteps(peer->memory, 1000000), CV_SUCCESS);
}

static void close_peer(struct peer *peer)
{
    CVodeFree(&peer->memory);
    SUNLinSolFree(peer->linear);
    SUNMatDestroy(peer->matrix);
    N_VDestroy(peer->t);
    SUNContext_Free(&peer->context);
}

START_TEST(stepper_against_cvode)
{
    char file[256];
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg", engines[_i]);
    struct cg_case c = case_of(file, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    struct cg_network *network = run->thermal->network;
    const struct cg_operating_point *full = &run->point[run->full_load];
    double *ours = malloc(network->nodes * sizeof *ours);
    struct peer peer;
    ck_assert_ptr_nonnull(ours);
    cg_duty_run_start(&c, run, ours);
    cg_point_apply(full, full, 0.0, run->thermal);
    open_peer(&peer, network, ours);
    const double *theirs = N_VGetArrayPointer(peer.t);

    double from = 0.0, time, most = 0.0;
    struct cg_step_control control = {.tolerance = c.solver.tolerance};
    struct cg_drive drive = {NULL, NULL, true};
    for (size_t k = 0; k < COUNT_OF(instants); k++) {
        ck_assert_int_eq(CVode(peer.memory, instants[k], peer.t, &time,
                               CV_NORMAL), CV_SUCCESS);
        ck_assert_int_eq(cg_stepper_run(run->workspace.stepper, network, &drive,
                                        from, instants[k], &control, ours,
                                        NULL, NULL, NULL, NULL), CG_OK);
        from = instants[k];
        for (size_t i = 0; i < network->nodes; i++) {
            check_within(ours[i], theirs[i], 0.1, source);
            most = fmax(most, fabs(ours[i] - theirs[i]));
        }
    }
    printf("%s: %zu nodes, largest difference %.4f K\n", engines[_i],
           network->nodes, most);
    close_peer(&peer);
    free(ours);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("network, CVODE");
    TCase *tcase = tcase_create("network");
    tcase_set_timeout(tcase, 300);
    tcase_add_loop_test(tcase, stepper_against_cvode, 0,
                        (int)COUNT_OF(engines));
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
