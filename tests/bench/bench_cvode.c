/* CVODE of SUNDIALS: BDF of variable order, Newton with the exact constant
 * Jacobian, KLU sparse direct solver.
 *
 * It gets the best we found for it: objects made once and reused, the matrix
 * I - gamma J filled in one pass over its entries, KLU's ordering for symmetric
 * patterns (AMD; a quarter faster here than its default), KLU's analysis of the
 * pattern kept from one run to the next, and a Newton test no sharper than a
 * linear problem needs. */
#include "bench_solver.h"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_sparse.h>

struct cvode {
    struct cg_network *network;
    SUNContext context;
    void *memory;
    N_Vector t;
    SUNMatrix matrix, jacobian; /* CVODE's, and the constant one */
    SUNLinearSolver linear;
    sunindextype entries;   /* of the Jacobian */
    sunindextype *diagonal; /* where its diagonal stands */
    double *per_capacity;
};

static int rate(realtype time, N_Vector t, N_Vector out, void *data)
{
    (void)time;
    const struct cvode *solver = data;
    double *value = N_VGetArrayPointer(out);
    cg_network_net_heat(solver->network, N_VGetArrayPointer(t), value);
    for (size_t i = 0; i < solver->network->nodes; i++)
        value[i] *= solver->per_capacity[i];
    return 0;
}

/* I - gamma J; the pattern, the same as J's, is there already. */
static int set_system(realtype time, N_Vector t, N_Vector r, SUNMatrix out,
                      booleantype old_good, booleantype *fresh, realtype gamma,
                      void *data, N_Vector a, N_Vector b, N_Vector c)
{
    (void)time, (void)t, (void)r, (void)a, (void)b, (void)c;
    const struct cvode *solver = data;
    const realtype *from = SUNSparseMatrix_Data(solver->jacobian);
    realtype *to = SUNSparseMatrix_Data(out);
    for (sunindextype k = 0; k < solver->entries; k++)
        to[k] = -gamma * from[k];
    for (size_t i = 0; i < solver->network->nodes; i++)
        to[solver->diagonal[i]] += 1;
    *fresh = !old_good;
    return 0;
}

/* The Jacobian, by way of a dense one; not timed. */
static void make_jacobian(struct cvode *solver)
{
    const struct cg_network *network = solver->network;
    size_t n = network->nodes;
    double *dense = calloc(n * n, sizeof *dense); /* by columns */
    if (dense == NULL)
        bench_fail("no memory");
    for (size_t l = 0; l < network->links; l++) {
        size_t a = network->link_a[l], b = network->link_b[l];
        double g = network->link_conductance[l];
        dense[a * n + a] -= g / network->capacity[a];
        dense[b * n + a] += g / network->capacity[a];
        dense[b * n + b] -= g / network->capacity[b];
        dense[a * n + b] += g / network->capacity[b];
    }
    for (size_t k = 0; k < network->baths; k++) {
        size_t i = network->bath_node[k];
        dense[i * n + i] -= network->bath_conductance[k] / network->capacity[i];
    }
    sunindextype size = (sunindextype)n, filled = 0;
    sunindextype most = (sunindextype)(n + 2 * network->links);
    SUNMatrix matrix =
        SUNSparseMatrix(size, size, most, CSC_MAT, solver->context);
    if (matrix == NULL)
        bench_fail("no sparse matrix");
    for (size_t column = 0; column < n; column++) {
        SUNSparseMatrix_IndexPointers(matrix)[column] = filled;
        for (size_t row = 0; row < n; row++) {
            if (dense[column * n + row] == 0)
                continue;
            if (row == column)
                solver->diagonal[row] = filled;
            SUNSparseMatrix_IndexValues(matrix)[filled] = (sunindextype)row;
            SUNSparseMatrix_Data(matrix)[filled++] = dense[column * n + row];
        }
    }
    SUNSparseMatrix_IndexPointers(matrix)[n] = filled;
    free(dense);
    solver->entries = filled;
    solver->jacobian = matrix;
}

static void *create(struct cg_network *network)
{
    struct cvode *solver = calloc(1, sizeof *solver);
    if (solver == NULL || SUNContext_Create(NULL, &solver->context) != 0)
        bench_fail("no CVODE context");
    solver->network = network;
    solver->per_capacity = calloc(network->nodes, sizeof(double));
    solver->diagonal = calloc(network->nodes, sizeof *solver->diagonal);
    if (solver->per_capacity == NULL || solver->diagonal == NULL)
        bench_fail("no memory");
    for (size_t i = 0; i < network->nodes; i++)
        solver->per_capacity[i] = 1 / network->capacity[i];
    make_jacobian(solver);
    solver->matrix = SUNMatClone(solver->jacobian);
    SUNMatCopy(solver->jacobian, solver->matrix);
    solver->t = N_VNew_Serial((sunindextype)network->nodes, solver->context);
    solver->linear = SUNLinSol_KLU(solver->t, solver->matrix, solver->context);
    SUNLinSol_KLUSetOrdering(solver->linear, 0); /* AMD */
    solver->memory = CVodeCreate(CV_BDF, solver->context);
    if (CVodeInit(solver->memory, rate, 0, solver->t) != CV_SUCCESS ||
        CVodeSStolerances(solver->memory, 0, 1e-3) != CV_SUCCESS ||
        CVodeSetUserData(solver->memory, solver) != CV_SUCCESS ||
        CVodeSetLinearSolver(solver->memory, solver->linear, solver->matrix) !=
            CV_SUCCESS ||
        CVodeSetLinSysFn(solver->memory, set_system) != CV_SUCCESS ||
        CVodeSetNonlinConvCoef(solver->memory, 1) != CV_SUCCESS ||
        CVodeSetMaxNumSteps(solver->memory, 1000000) != CV_SUCCESS)
        bench_fail("CVODE cannot be set up");
    return solver;
}

static void solve(void *data, double accuracy, const double *start,
                  double *const *result, struct bench_run *run)
{
    struct cvode *solver = data;
    size_t bytes = solver->network->nodes * sizeof *start;
    double *t = N_VGetArrayPointer(solver->t), time = 0;
    memcpy(t, start, bytes);
    if (CVodeReInit(solver->memory, 0, solver->t) != CV_SUCCESS ||
        CVodeSStolerances(solver->memory, 0, accuracy) != CV_SUCCESS ||
        CVodeSetStopTime(solver->memory, bench_instant[BENCH_INSTANTS - 1]) !=
            CV_SUCCESS)
        bench_fail("CVODE cannot be started");
    double before = bench_now();
    for (size_t k = 0; k < BENCH_INSTANTS; k++) {
        /* steps at its own pace and interpolates */
        if (CVode(solver->memory, bench_instant[k], solver->t, &time,
                  CV_NORMAL) < 0)
            bench_fail("CVODE failed");
        memcpy(result[k], t, bytes);
    }
    run->seconds = bench_now() - before;
    CVodeGetNumSteps(solver->memory, &run->steps);
    CVodeGetNumNonlinSolvIters(solver->memory, &run->solutions);
    CVodeGetNumLinSolvSetups(solver->memory, &run->factorings);
    /* Its only work is to call for a new analysis of the same pattern. */
    solver->linear->ops->initialize = NULL;
}

static void release(void *data)
{
    struct cvode *solver = data;
    CVodeFree(&solver->memory);
    SUNLinSolFree(solver->linear);
    SUNMatDestroy(solver->matrix);
    SUNMatDestroy(solver->jacobian);
    N_VDestroy(solver->t);
    SUNContext_Free(&solver->context);
    free(solver->per_capacity);
    free(solver->diagonal);
    free(solver);
}

const struct bench_solver bench_cvode = {"CVODE BDF, KLU sparse", create, solve,
                                         release, 1.25};
