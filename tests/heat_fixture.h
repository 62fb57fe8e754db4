/* One network, its stepper and their runs, for the suites that conduct heat. */
#ifndef CG_HEAT_FIXTURE_H
#define CG_HEAT_FIXTURE_H

#include "check_close.h"

#include "stepper.h"

static struct cg_network *network;
static struct cg_stepper *stepper;
static struct cg_error error;

static inline void setup(void)
{
    ck_assert_int_eq(cg_network_create(&network, NULL), CG_OK);
    stepper = NULL;
}

static inline void teardown(void)
{
    cg_stepper_free(stepper);
    cg_network_free(network);
}

/* A stepper for the network as it stands now. */
static inline void make_stepper(void)
{
    cg_stepper_free(stepper);
    ck_assert_int_eq(cg_stepper_create(network, &stepper, NULL), CG_OK);
}

static inline void run(const struct cg_drive *drive, double from, double to,
                       const struct cg_step_control *control,
                       double *temperature, struct cg_heat_ledger *ledger)
{
    enum cg_status status =
        cg_stepper_run(stepper, network, drive, from, to, control, temperature,
                       ledger, NULL, NULL, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
}

static inline void run_fixed(const struct cg_drive *drive, double to,
                             double step, double *temperature)
{
    struct cg_step_control control = {.fixed_step = step};
    run(drive, 0, to, &control, temperature, NULL);
}

#endif
