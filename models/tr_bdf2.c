/* While nothing changes with time, the filtered rate p = h M^-1 r serves
 * twice.  With u = 2 d p0 and p1 = (v - (w + d) p0) / w from the two stage
 * equations the estimate is e = A p0 + B p1 + D p2, and p2 is the p0 of the
 * next step: two solves a step instead of three.
 */
#include "tr_bdf2.h"

#include <stdlib.h>
#include <string.h>

#define ROOT_2 1.41421356237309504880
#define GAMMA (2 - ROOT_2)
#define D (1 - ROOT_2 / 2)
#define W (ROOT_2 / 4)
/* A, B, D of the estimate */
#define ERROR_0 ((ROOT_2 - 1) / 3)
#define ERROR_1 (-1.0 / 3)
#define ERROR_2 (2 * D / 3)

const double cg_tr_bdf2_weight[3] = {W, W, D};

void cg_tr_bdf2_free(struct cg_tr_bdf2 *step)
{
    if (step == NULL)
        return;
    cg_heat_matrix_free(step->matrix);
    free(step->block);
    free(step);
}

enum cg_status cg_tr_bdf2_create(const struct cg_network *network,
                                 struct cg_tr_bdf2 **step,
                                 struct cg_error *error)
{
    size_t nodes = network->nodes;
    struct cg_tr_bdf2 *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "no memory for the stepper");
    double **const vectors[] = {
        &made->rate[0],     &made->rate[1],     &made->rate[2],  &made->result,
        &made->first,       &made->second,      &made->estimate, &made->open,
        &made->filtered[0], &made->filtered[1],
    };
    size_t count = sizeof vectors / sizeof *vectors;
    made->block = calloc(count * nodes + 1, sizeof *made->block);
    if (made->block == NULL) {
        free(made);
        return cg_error_set(error, CG_NO_MEMORY, "no memory for the stepper");
    }
    for (size_t v = 0; v < count; v++)
        *vectors[v] = made->block + v * nodes;
    made->nodes = nodes;
    enum cg_status status =
        cg_heat_matrix_create(network, &made->matrix, error);
    if (status != CG_OK) {
        cg_tr_bdf2_free(made);
        return status;
    }
    *step = made;
    return CG_OK;
}

static void set_conditions(struct cg_tr_bdf2 *step, struct cg_network *network,
                           const struct cg_drive *drive, double time)
{
    if (step->steady)
        return;
    drive->at(drive->context, time, network);
    if (!drive->conductance_fixed)
        cg_heat_matrix_read(step->matrix, network);
}

void cg_tr_bdf2_begin(struct cg_tr_bdf2 *step, struct cg_network *network,
                      const struct cg_drive *drive, double time,
                      const double *temperature)
{
    step->steady = drive == NULL || drive->at == NULL;
    step->filtered_step = 0;
    set_conditions(step, network, drive, time);
    cg_heat_matrix_read(step->matrix, network);
    cg_network_net_heat(network, temperature, step->rate[0]);
    cg_network_heat_by_side(network, temperature, step->heat[0]);
}

/* o: the net heat at T0 under the network's present conditions */
static const double *open_heat(struct cg_tr_bdf2 *step,
                               const struct cg_network *network,
                               const double *temperature)
{
    if (step->steady)
        return step->rate[0];
    cg_network_net_heat(network, temperature, step->open);
    return step->open;
}

/* u, r1 and the heat by side at t + gamma h; the matrix is factored. */
static void trapezium(struct cg_tr_bdf2 *step, const struct cg_network *network,
                      double h, const double *temperature)
{
    const double *capacity = network->capacity;
    const double *open = open_heat(step, network, temperature);
    const double *r0 = step->rate[0];
    double *restrict u = step->first, *restrict r1 = step->rate[1];
    double *restrict stage = step->result, *restrict p = step->filtered[0];
    double a = D * h, per_a = 1 / a;

    if (step->filtered_step == h) {
        for (size_t i = 0; i < step->nodes; i++)
            u[i] = 2 * D * p[i];
    } else {
        for (size_t i = 0; i < step->nodes; i++)
            u[i] = a * (r0[i] + open[i]);
        cg_heat_matrix_solve(step->matrix, u);
        for (size_t i = 0; i < step->nodes; i++)
            p[i] = u[i] / (2 * D);
        step->filtered_step = step->steady ? h : 0;
    }
    for (size_t i = 0; i < step->nodes; i++) {
        r1[i] = capacity[i] * u[i] * per_a - r0[i];
        stage[i] = temperature[i] + u[i];
    }
    cg_network_heat_by_side(network, stage, step->heat[1]);
}

/* v, r2, T2 and the heat by side at t + h; the matrix is factored. */
static void bdf2(struct cg_tr_bdf2 *step, const struct cg_network *network,
                 double h, const double *temperature)
{
    const double *capacity = network->capacity;
    const double *open = open_heat(step, network, temperature);
    const double *r0 = step->rate[0], *r1 = step->rate[1];
    double *restrict v = step->second, *restrict r2 = step->rate[2];
    double *restrict result = step->result;
    double per_h = 1 / h;

    for (size_t i = 0; i < step->nodes; i++)
        v[i] = h * (W * (r0[i] + r1[i]) + D * open[i]);
    cg_heat_matrix_solve(step->matrix, v);
    for (size_t i = 0; i < step->nodes; i++) {
        r2[i] = (capacity[i] * v[i] * per_h - W * (r0[i] + r1[i])) * (1 / D);
        result[i] = temperature[i] + v[i];
    }
    cg_network_heat_by_side(network, result, step->heat[2]);
}

static void estimate_error(struct cg_tr_bdf2 *step, double h)
{
    const double *r0 = step->rate[0], *r1 = step->rate[1];
    const double *r2 = step->rate[2], *v = step->second;
    const double *p0 = step->filtered[0];
    double *restrict p2 = step->filtered[1], *restrict e = step->estimate;

    if (!step->steady) {
        for (size_t i = 0; i < step->nodes; i++)
            e[i] = h * (ERROR_0 * r0[i] + ERROR_1 * r1[i] + ERROR_2 * r2[i]);
        cg_heat_matrix_solve(step->matrix, e);
        return;
    }
    for (size_t i = 0; i < step->nodes; i++)
        p2[i] = h * r2[i];
    cg_heat_matrix_solve(step->matrix, p2);
    for (size_t i = 0; i < step->nodes; i++) {
        double p1 = (v[i] - (W + D) * p0[i]) * (1 / W);
        e[i] = ERROR_0 * p0[i] + ERROR_1 * p1 + ERROR_2 * p2[i];
    }
}

enum cg_status cg_tr_bdf2_try(struct cg_tr_bdf2 *step,
                              struct cg_network *network,
                              const struct cg_drive *drive, double time,
                              double h, const double *temperature,
                              struct cg_error *error)
{
    set_conditions(step, network, drive, time + GAMMA * h);
    enum cg_status status =
        cg_heat_matrix_factor(step->matrix, network, 1, D * h, error);
    if (status != CG_OK)
        return status;
    trapezium(step, network, h, temperature);

    set_conditions(step, network, drive, time + h);
    status = cg_heat_matrix_factor(step->matrix, network, 1, D * h, error);
    if (status != CG_OK)
        return status;
    bdf2(step, network, h, temperature);
    estimate_error(step, h);
    return CG_OK;
}

static void swap(double **a, double **b)
{
    double *kept = *a;
    *a = *b;
    *b = kept;
}

void cg_tr_bdf2_take(struct cg_tr_bdf2 *step, double h, double *temperature)
{
    memcpy(temperature, step->result, step->nodes * sizeof *temperature);
    memcpy(step->heat[0], step->heat[2], sizeof step->heat[0]);
    swap(&step->rate[0], &step->rate[2]);
    swap(&step->filtered[0], &step->filtered[1]);
    step->filtered_step = step->steady ? h : 0;
}
