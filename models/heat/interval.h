/* One call of cg_stepper_run, shared by its two ways of going: over an interval
 * whose conditions are held, and over a driven one. */
#ifndef CG_INTERVAL_H
#define CG_INTERVAL_H

#include "chebyshev.h"
#include "rosenbrock.h"
#include "stepper.h"

struct cg_interval {
    struct cg_rosenbrock *step;
    struct cg_chebyshev *series;
    struct cg_network *network;
    const struct cg_drive *drive;
    bool constant; /* its conditions: goes by series */
    const struct cg_step_control *control;
    double from, to, time;           /* [s] */
    double start, length;            /* of the step or series last tried [s] */
    double h;                        /* step to try next [s] */
    double *temperature;             /* [K] */
    size_t worst;                    /* node of the largest error estimate */
    double heat[CG_SIDES], turnover; /* over the interval so far [J] */
    long steps, rejected;
    cg_step_observer observer;
    void *observer_context;
    double *scratch[2]; /* [nodes] each */
};

/* To the end of the interval, from conditions, matrix and rate at its start.
 * Fail as cg_stepper_run does. */
enum cg_status cg_interval_constant(struct cg_interval *interval,
                                    struct cg_error *error);
enum cg_status cg_interval_driven(struct cg_interval *interval,
                                  struct cg_error *error);

/* Shows the observer, if there is one, temperature [K] at `time` [s]. */
enum cg_status cg_interval_show(const struct cg_interval *interval, double time,
                                const double *temperature,
                                struct cg_error *error);

/* CG_NUMERICAL when the steps have run out or h has become too small. */
enum cg_status cg_interval_check(const struct cg_interval *interval,
                                 struct cg_error *error);

/* Adds the heat by side [J] of a step. */
void cg_interval_add_heat(struct cg_interval *interval, const double *heat);

#endif
