#include "rosenbrock.h"

#include <stdlib.h>
#include <string.h>

enum { STAGES = CG_ROSENBROCK_STAGES };

#define GAMMA 0.25
static const double alpha[STAGES] = {0, 0.75, 0.21, 0.63, 1, 1};
static const double drift_part[STAGES] = {0.25, -0.5, -0.023504, -0.0362, 0, 0};
static const double a[STAGES][STAGES] = {
    {0},
    {3},
    {1.831036793486759, 0.4955183967433795},
    {2.304376582692669, -0.05249275245743001, -1.176798761832782},
    {-7.170454962423024, -4.741636671481785, -16.31002631330971,
     -1.062004044111401},
    {-7.170454962423024, -4.741636671481785, -16.31002631330971,
     -1.062004044111401, 1},
};
static const double c[STAGES][STAGES] = {
    {0},
    {-12},
    {-8.791795173947035, -2.207865586973518},
    {10.81793056857153, 6.780270611428266, 19.53485944642410},
    {34.19095006749676, 15.49671153725963, 54.74760875964130,
     14.16005392148534},
    {34.62605830930532, 15.30084976114473, 56.99955578662667, 18.40807009793095,
     -5.714285714285717},
};
/* m: the last row of a, and 1. */

/* Inside the step, at its share s:
 * T = (1-s) T0 + s T1 + s (1-s) sum (inside_0 + s inside_1)_j U_j */
static const double inside[2][STAGES] = {
    {25.09876703708589, 11.62013104361867, 28.49148307714626,
     -5.664021568594133},
    {1.638054557396973, -0.7373619806678748, 8.477918219238990,
     15.99253148779520, -1.882352941176471},
};

/* Share of the step over which dr/dt is taken: its own error is then far below
 * the scheme's, yet clear of rounding. */
static const double DRIFT_SHARE = 1e-5;

void cg_rosenbrock_free(struct cg_rosenbrock *step)
{
    if (step == NULL)
        return;
    free(step->block);
    free(step);
}

enum cg_status cg_rosenbrock_create(const struct cg_network *network,
                                    struct cg_heat_matrix *matrix,
                                    struct cg_rosenbrock **step,
                                    struct cg_error *error)
{
    size_t nodes = network->nodes;
    struct cg_rosenbrock *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto no_memory;
    made->block = calloc((5 + STAGES) * nodes + 1, sizeof *made->block);
    if (made->block == NULL)
        goto no_memory;
    made->nodes = nodes;
    made->matrix = matrix;
    made->rate = made->block;
    made->drift = made->block + nodes;
    made->result = made->block + 2 * nodes;
    made->scratch = made->block + 3 * nodes;
    made->start = made->block + 4 * nodes;
    for (size_t i = 0; i < STAGES; i++)
        made->stage[i] = made->block + (5 + i) * nodes;
    *step = made;
    return CG_OK;

no_memory:
    cg_rosenbrock_free(made);
    return cg_error_set(error, CG_NO_MEMORY, "no memory for the stepper");
}

static void set_conditions(const struct cg_rosenbrock *step,
                           struct cg_network *network,
                           const struct cg_drive *drive, double time)
{
    if (!step->steady)
        drive->at(drive->context, time, network);
}

static void set_rate(struct cg_rosenbrock *step,
                     const struct cg_network *network,
                     const double *temperature)
{
    cg_network_net_heat(network, temperature, step->rate);
    cg_network_heat_by_side(network, temperature, step->heat_at_start);
}

void cg_rosenbrock_begin(struct cg_rosenbrock *step, struct cg_network *network,
                         const struct cg_drive *drive, double time,
                         const double *temperature)
{
    step->steady = drive == NULL || drive->at == NULL;
    set_conditions(step, network, drive, time);
    cg_heat_matrix_read(step->matrix, network);
    set_rate(step, network, temperature);
}

/* out += the sum of the first `count` stages with these factors */
static void add_stages(const struct cg_rosenbrock *step, const double *factor,
                       size_t count, double *restrict out)
{
    for (size_t j = 0; j < count; j++) {
        const double *restrict u = step->stage[j];
        double f = factor[j];
        for (size_t i = 0; i < step->nodes; i++)
            out[i] += f * u[i];
    }
}

/* out = base, or 0, + the stages' sum */
static void combine(const struct cg_rosenbrock *step, const double *factor,
                    size_t count, const double *base, double *out)
{
    if (base != NULL)
        memcpy(out, base, step->nodes * sizeof *out);
    else
        memset(out, 0, step->nodes * sizeof *out);
    add_stages(step, factor, count, out);
}

/* The weights of the stages' heats, b: (1/gamma - c)^T b = m. */
static void heat_weights(double *b)
{
    for (int i = STAGES - 1; i >= 0; i--) {
        double sum = i == STAGES - 1 ? 1 : a[STAGES - 1][i];
        for (int j = i + 1; j < STAGES; j++)
            sum += b[j] * c[j][i];
        b[i] = GAMMA * sum;
    }
}

/* h dr/dt, and its part in the heat by side. */
static void find_drift(struct cg_rosenbrock *step, struct cg_network *network,
                       const struct cg_drive *drive, double time, double h,
                       const double *temperature, double *side_drift)
{
    memset(side_drift, 0, CG_SIDES * sizeof *side_drift);
    if (step->steady) {
        memset(step->drift, 0, step->nodes * sizeof *step->drift);
        return;
    }
    set_conditions(step, network, drive, time + DRIFT_SHARE * h);
    cg_network_net_heat(network, temperature, step->drift);
    cg_network_heat_by_side(network, temperature, side_drift);
    for (size_t i = 0; i < step->nodes; i++)
        step->drift[i] = (step->drift[i] - step->rate[i]) / DRIFT_SHARE;
    for (size_t s = 0; s < CG_SIDES; s++)
        side_drift[s] = (side_drift[s] - step->heat_at_start[s]) / DRIFT_SHARE;
}

/* Heat by side that the linear part adds, h K_side sum b U, in the conditions
 * of the step's start. */
static void add_linear_heat(struct cg_rosenbrock *step,
                            const struct cg_network *network, const double *b,
                            double h, const double *temperature)
{
    double side[CG_SIDES];
    combine(step, b, STAGES, temperature, step->scratch);
    cg_network_heat_by_side(network, step->scratch, side);
    for (size_t s = 0; s < CG_SIDES; s++)
        step->heat[s] += h * (side[s] - step->heat_at_start[s]);
}

/* Stage i, the matrix factored: U_i, and its part in the heat by side. */
static void run_stage(struct cg_rosenbrock *step, struct cg_network *network,
                      const struct cg_drive *drive, double time, double h,
                      size_t i, const double *temperature, double *side)
{
    double *u = step->stage[i];
    const double *sum = step->scratch, *open = step->rate;
    if (i == 0) {
        memcpy(side, step->heat_at_start, sizeof step->heat_at_start);
    } else {
        set_conditions(step, network, drive, time + alpha[i] * h);
        combine(step, a[i], i, temperature, step->scratch);
        cg_network_net_heat(network, step->scratch, u);
        cg_network_heat_by_side(network, step->scratch, side);
        open = u;
    }
    combine(step, c[i], i, NULL, step->scratch);
    for (size_t n = 0; n < step->nodes; n++)
        u[n] = GAMMA * (h * (open[n] + drift_part[i] * step->drift[n]) +
                        network->capacity[n] * sum[n]);
    cg_heat_matrix_solve(step->matrix, u);
}

enum cg_status cg_rosenbrock_try(struct cg_rosenbrock *step,
                                 struct cg_network *network,
                                 const struct cg_drive *drive, double time,
                                 double h, const double *temperature,
                                 struct cg_error *error)
{
    enum cg_status status =
        cg_heat_matrix_factor(step->matrix, network, 1, GAMMA * h, error);
    if (status != CG_OK)
        return status;
    double b[STAGES], side[CG_SIDES], side_drift[CG_SIDES];
    heat_weights(b);
    find_drift(step, network, drive, time, h, temperature, side_drift);
    memcpy(step->start, temperature, step->nodes * sizeof *step->start);
    memset(step->heat, 0, sizeof step->heat);
    for (size_t i = 0; i < STAGES; i++) {
        run_stage(step, network, drive, time, h, i, temperature, side);
        for (size_t s = 0; s < CG_SIDES; s++)
            step->heat[s] +=
                h * b[i] * (side[s] + drift_part[i] * side_drift[s]);
    }
    combine(step, a[STAGES - 1], STAGES - 1, temperature, step->result);
    for (size_t n = 0; n < step->nodes; n++)
        step->result[n] += step->stage[STAGES - 1][n];
    set_conditions(step, network, drive, time);
    add_linear_heat(step, network, b, h, temperature);
    return CG_OK;
}

void cg_rosenbrock_inside(const struct cg_rosenbrock *step, double part,
                          double *temperature)
{
    double factor[STAGES];
    for (int j = 0; j < STAGES; j++)
        factor[j] = part * (1 - part) * (inside[0][j] + part * inside[1][j]);
    for (size_t i = 0; i < step->nodes; i++)
        temperature[i] = (1 - part) * step->start[i] + part * step->result[i];
    add_stages(step, factor, STAGES, temperature);
}

const double *cg_rosenbrock_estimate(const struct cg_rosenbrock *step)
{
    return step->stage[STAGES - 1];
}

void cg_rosenbrock_take(struct cg_rosenbrock *step, struct cg_network *network,
                        const struct cg_drive *drive, double time,
                        double *temperature)
{
    memcpy(temperature, step->result, step->nodes * sizeof *temperature);
    set_conditions(step, network, drive, time);
    if (!step->steady && !drive->conductance_fixed)
        cg_heat_matrix_read(step->matrix, network);
    set_rate(step, network, temperature);
}
