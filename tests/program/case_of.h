/* Cases for the engine-level suites: the shipped unboosted or boosted four
 * with overrides, read by the program's own reader. */
#ifndef CG_CASE_OF_H
#define CG_CASE_OF_H

#include <check.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "answer.h"
#include "config.h"
#include "duty_run.h"
#include "uncertain.h"

#define PLAIN_FOUR CG_TEST_CONFIGS "/engines/plain_four.cfg"
#define BOOSTED_FOUR CG_TEST_CONFIGS "/engines/boosted_four.cfg"
#define TRUCK_SIX CG_TEST_CONFIGS "/engines/truck_six.cfg"
#define PICKUP_EIGHT CG_TEST_CONFIGS "/engines/pickup_eight.cfg"
#define IRON_SIX CG_TEST_CONFIGS "/engines/iron_six.cfg"

#define COUNT_OF(list) (sizeof(list) / sizeof(list)[0])

/* For its own duty alone: what most suites look at. */
static inline struct cg_case case_of(const char *file, const char *const *set,
                                     size_t sets)
{
    struct cg_case c;
    struct cg_error error = {0};
    enum cg_status status = cg_config_read(file, set, sets, &c, &error);
    ck_assert_msg(status == CG_OK, "%s: %s", file, error.text);
    c.survive.duties = 0;
    return c;
}

/* The duty replaced by one stretch at constant speed and load. */
static inline void hold(struct cg_case *c, double seconds, double load)
{
    c->duty.segments = 1;
    c->duty.segment[0] = (struct cg_segment){
        seconds, c->engine.speed, c->engine.speed, load, load, 1.0, NAN,
        0.0, 0.0, 0.0};
}

static inline struct cg_duty_run *run_of(const struct cg_case *c)
{
    struct cg_duty_run *run;
    struct cg_error error = {0};
    enum cg_status status = cg_duty_run_create(c, &run, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return run;
}

/* Extremes of the case's duty. */
static inline struct cg_extremes extremes_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_extremes extremes;
    struct cg_error error = {0};
    enum cg_status status = cg_answer_extremes(c, run, 0.0, NULL, NULL,
                                               &extremes, NULL, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_duty_run_free(run);
    return extremes;
}

/* Place of an uncertain input, by its name. */
static inline size_t row_of(const char *name)
{
    size_t count, i = 0;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    while (i < count && strcmp(inputs[i].name, name) != 0)
        i++;
    ck_assert_msg(i < count, "%s", name);
    return i;
}

#endif
