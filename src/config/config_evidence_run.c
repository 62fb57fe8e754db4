/* The run in which an entry of the evidence was found. */
#include "config_evidence.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_check.h"
#include "outside.h"

/* Settled at one speed and load. */
void cg_reading_hold(double speed, double load, struct cg_duty_case *duty)
{
    memset(duty, 0, sizeof *duty);
    strcpy(duty->name, "steady");
    duty->start = CG_START_SETTLED;
    duty->cruise_speed = speed;
    duty->cruise_load = load;
    duty->segments = 1;
    duty->segment[0] =
        (struct cg_segment){1.0, speed, speed, load, load, 1.0, NAN, 0.0, 0.0,
                            0.0};
}

enum cg_status cg_reading_duty_path(const struct cg_reading *reading,
                                    bool *found, char path[CG_PATH_LENGTH],
                                    struct cg_error *error)
{
    struct cg_data_names names;
    enum cg_status status = cg_data_list("duties", &names, error);
    if (status != CG_OK)
        return status;
    *found = cg_duty_path(reading->item->reader, reading->duty, &names, path);
    if (!*found) /* tells which there are */
        (void)cg_reading_word(reading, "duty", reading->duty, names.list,
                              names.count);
    return CG_OK;
}

static bool is_logged(const struct cg_duty_case *duty)
{
    return duty->course != NULL && duty->course->log.file[0] != '\0';
}

static void check_steady(const struct cg_reading *reading)
{
    const struct cg_reading_numbers *number = &reading->number;
    bool speed = !isnan(number->speed), load = !isnan(number->load);
    cg_reading_refuse(reading, "load", speed && !load,
                      "missing; speed and load together are a steady run");
    cg_reading_refuse(reading, "speed_rpm", load && !speed,
                      "missing; speed and load together are a steady run");
    cg_reading_refuse(
        reading, "duty", reading->duty != NULL && (speed || load),
        "does not go with speed and load, one of the two is allowed");
}

static enum cg_status read_duty(const struct cg_reading *reading,
                                struct cg_case *c, struct cg_error *error)
{
    const struct cg_reading_numbers *number = &reading->number;
    bool speed = !isnan(number->speed), load = !isnan(number->load), found;
    char path[CG_PATH_LENGTH];
    if (reading->column.unit != NULL) {
        if (reading->log != NULL)
            c->duty = *reading->logged;
        return CG_OK;
    }
    check_steady(reading);
    if (speed && load)
        cg_reading_hold(number->speed, number->load, &c->duty);
    cg_reading_refuse(reading, "boost_kPa",
                      !isnan(number->boost) && is_logged(&c->duty) &&
                          reading->duty == NULL,
                      "does not go with the config's own log, which says what "
                      "the manifold had");
    if (reading->duty == NULL || speed || load)
        return CG_OK;
    /* a log's load is of the boost in this run */
    struct cg_reader reader = *reading->item->reader;
    reader.c = c;
    enum cg_status status = cg_reading_duty_path(reading, &found, path, error);
    if (status == CG_OK && found)
        status = cg_duty_named(&reader, reading->duty, path, &c->duty, error);
    if (status == CG_OK)
        status = cg_duty_lag(reading->item->reader, c, &c->duty, error);
    return status;
}

/* Evidence is known to some kelvins, and its runs are run many times. */
static enum cg_status take_rough(const struct cg_reading *reading,
                                 struct cg_case *c, struct cg_error *error)
{
    struct cg_course *rough = NULL;
    if (c->duty.course == NULL)
        return CG_OK;
    enum cg_status status =
        cg_course_rough(c->duty.course, c->engine.speed,
                        reading->item->reader->courses, &rough, error);
    if (status == CG_OK)
        c->duty.course = rough;
    return status;
}

/* The run's own trouble: boost without a charger, and the like. */
static void check_run(const struct cg_reading *reading, const struct cg_case *c)
{
    struct cg_case_problem found[CG_CASE_PROBLEMS];
    double duration = cg_duty_seconds(&c->duty);
    if (cg_case_check(reading->item->reader->c, found) == 0 &&
        cg_case_check(c, found) > 0)
        cg_item_problem(reading->item, NULL, "", "in this run %s: %s",
                        found[0].path, found[0].text);
    if (reading->number.time > duration)
        cg_item_problem(reading->item, NULL, "at_s",
                        "must be within the duty's %.4g s (got %.6g)", duration,
                        reading->number.time);
}

static bool same_run(const struct cg_case *a, const struct cg_case *b)
{
    return a->charge.boost == b->charge.boost &&
           a->charge.ambient_temperature == b->charge.ambient_temperature &&
           a->cooling.coolant_temperature == b->cooling.coolant_temperature &&
           a->duty.start == b->duty.start &&
           a->duty.cruise_speed == b->duty.cruise_speed &&
           a->duty.cruise_load == b->duty.cruise_load &&
           cg_course_same(a->duty.course, b->duty.course) &&
           a->duty.segments == b->duty.segments &&
           memcmp(a->duty.segment, b->duty.segment,
                  (size_t)a->duty.segments * sizeof a->duty.segment[0]) == 0;
}

/* Number of the run like this one, which is added if new. */
static enum cg_status add_run(const struct cg_reading *reading,
                              const struct cg_case *c, size_t *number,
                              struct cg_error *error)
{
    struct cg_evidence *evidence = reading->evidence;
    for (*number = 0; *number < evidence->runs; ++*number)
        if (evidence->engine[*number] == reading->engine &&
            same_run(&evidence->run[*number], c))
            return CG_OK;
    if (evidence->runs == CG_EVIDENCE_RUNS) {
        cg_item_problem(reading->item, NULL, "",
                        "at most %d different runs are allowed",
                        CG_EVIDENCE_RUNS);
        return CG_OK;
    }
    struct cg_case *grown =
        realloc(evidence->run, (evidence->runs + 1) * sizeof *evidence->run);
    if (grown == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    evidence->run = grown;
    evidence->engine[evidence->runs] = reading->engine;
    evidence->run[evidence->runs++] = *c;
    return CG_OK;
}

static double or_else(double value, double fallback)
{
    return isnan(value) ? fallback : value;
}

void cg_reading_conditions(const struct cg_reading *reading, struct cg_case *c)
{
    const struct cg_reading_numbers *given = &reading->number;
    cg_reading_refuse(reading, "coolant",
                      !isnan(given->coolant) && cg_air_cooled(c),
                      cg_cooling_other(c));
    c->charge.boost = or_else(given->boost, c->charge.boost);
    c->charge.ambient_temperature =
        or_else(given->ambient, c->charge.ambient_temperature);
    c->cooling.coolant_temperature =
        or_else(given->coolant, c->cooling.coolant_temperature);
}

enum cg_status cg_reading_run(const struct cg_reading *reading, size_t *number,
                              struct cg_error *error)
{
    struct cg_case c = *reading->item->reader->c;
    cg_reading_conditions(reading, &c);
    enum cg_status status = read_duty(reading, &c, error);
    if (status == CG_OK)
        status = take_rough(reading, &c, error);
    if (status != CG_OK)
        return status;
    check_run(reading, &c);
    return add_run(reading, &c, number, error);
}
