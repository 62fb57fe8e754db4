/* One call of cg_stepper_run, shared by its two ways of going: over a stretch
 * whose conditions are held, and over a driven one. */
#ifndef CG_STRETCH_H
#define CG_STRETCH_H

#include "held.h"
#include "rosenbrock.h"
#include "stepper.h"

struct cg_stretch {
    struct cg_rosenbrock *step;
    struct cg_held *held;
    struct cg_network *network;
    const struct cg_drive *drive;
    bool series; /* goes by strides of a series */
    const struct cg_step_control *control;
    double from, to, time;           /* [s] */
    double start, length;            /* of the step or stride last tried [s] */
    double h;                        /* step to try next [s] */
    double *temperature;             /* [K] */
    size_t worst;                    /* node of the largest error estimate */
    double heat[CG_SIDES], turnover; /* over the stretch so far [J] */
    long steps, rejected;
    cg_step_watch watch;
    void *watch_context;
    double *scratch[2]; /* [nodes] each */
};

/* To the end of the stretch, from conditions, matrix and rate at its start.
 * Fail as cg_stepper_run does. */
enum cg_status cg_stretch_held(struct cg_stretch *stretch,
                               struct cg_error *error);
enum cg_status cg_stretch_driven(struct cg_stretch *stretch,
                                 struct cg_error *error);

/* Shows the watch, if there is one, temperature [K] at `time` [s]. */
enum cg_status cg_stretch_show(const struct cg_stretch *stretch, double time,
                               const double *temperature,
                               struct cg_error *error);

/* CG_NUMERICAL when the steps have run out or h has become too small. */
enum cg_status cg_stretch_check(const struct cg_stretch *stretch,
                                struct cg_error *error);

/* Adds the heat by side [J] of a step. */
void cg_stretch_add_heat(struct cg_stretch *stretch, const double *heat);

#endif
