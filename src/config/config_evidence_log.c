/* A temperature of the evidence that stands in a log:
 *   { what = "exhaust_probe"; column_C = "EGT"; duty = "pull"; }
 * Its value is the column's highest in the run that the log is.  Of a body the
 * model's highest in that run stands beside it; a probe in the exhaust is read
 * on an engine that is held as this one ran just before. */
#include "config_evidence.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"
#include "plain_text.h"

void cg_reading_heading(struct cg_reading *reading,
                        const config_setting_t *setting,
                        const struct cg_unit *unit)
{
    struct cg_log_column *column = &reading->column;
    const char *key = config_setting_name(setting);
    char what[CG_NAME_TROUBLE] = "given twice, one is allowed";
    if (column->unit == NULL && cg_heading_of(setting, column->heading, what))
        what[0] = '\0';
    if (what[0] != '\0')
        cg_item_problem(reading->item, setting, key, "%s", what);
    column->unit = unit;
    snprintf(column->key, sizeof column->key, "%s", key);
}

static bool is_what(const struct cg_reading *reading,
                    enum cg_evidence_what what)
{
    return reading->what != NULL &&
           strcmp(reading->what, cg_evidence_name(what)) == 0;
}

/* Whether the entry has a temperature at all. */
static bool has_temperature(const struct cg_reading *reading)
{
    return !reading->sign && !is_what(reading, CG_EVIDENCE_COOLANT);
}

/* What does not go with a column; true: there is nothing such. */
static bool check_keys(struct cg_reading *reading)
{
    size_t before = reading->item->reader->problems->count;
    struct cg_reading_numbers *number = &reading->number;
    const char *key = reading->column.key;
    cg_reading_refuse(reading, key, !has_temperature(reading),
                      "goes with a temperature alone");
    cg_reading_refuse(reading, key, !isnan(number->temperature),
                      "does not go with a temperature, one of the two is "
                      "allowed");
    cg_reading_refuse(reading, "at_s", !isnan(number->time),
                      "does not go with a column, whose highest is taken");
    cg_reading_refuse(reading, "speed_rpm",
                      !isnan(number->speed) || !isnan(number->load),
                      "does not go with a column; the log says how the engine "
                      "ran");
    number->time = NAN; /* told */
    return reading->item->reader->problems->count == before;
}

/* The duty again, the column read with it: of the file that the entry names, of
 * the config's own, or of that which the config names. */
static enum cg_status read_duty(const struct cg_reading *reading,
                                struct cg_reader *reader,
                                struct cg_error *error)
{
    char path[CG_PATH_LENGTH];
    bool found = true;
    enum cg_status status = CG_OK;
    const char *name =
        reading->duty != NULL ? reading->duty : reader->c->duty.name;
    const config_setting_t *log =
        config_lookup(&reader->file.config, "duty.log");
    reader->c->duty.course = NULL;
    if (reading->duty != NULL)
        status = cg_reading_duty_path(reading, &found, path, error);
    else if (log != NULL)
        return cg_log_duty_read(reader, &reader->file, log, true, error);
    else
        snprintf(path, sizeof path, "%s", reader->duty_path);
    if (status == CG_OK && found && path[0] != '\0')
        return cg_duty_named(reader, name, path, &reader->c->duty, error);
    if (status == CG_OK && found)
        cg_item_problem(reading->item, NULL, "duty",
                        "missing; a column is of the log that duty names");
    return status;
}

/* Takes the value found, and for a probe the engine held. */
static enum cg_status take(struct cg_reading *reading,
                           const struct cg_duty_case *duty,
                           struct cg_error *error)
{
    struct cg_course *held = NULL;
    const struct cg_log_highest *highest = &duty->course->log.highest;
    *reading->logged = *duty;
    reading->number.temperature = highest->value;
    reading->log = &duty->course->log;
    if (!is_what(reading, CG_EVIDENCE_PROBE))
        return CG_OK;
    enum cg_status status = cg_course_hold(
        highest->of, reading->item->reader->courses, &held, error);
    cg_reading_hold(highest->of[CG_CHANNEL_SPEED], highest->of[CG_CHANNEL_LOAD],
                    reading->logged);
    reading->logged->segments = 0;
    reading->logged->course = held;
    return status;
}

static enum cg_status read_log(struct cg_reading *reading,
                               struct cg_error *error)
{
    struct cg_case c = *reading->item->reader->c;
    struct cg_reader reader = *reading->item->reader;
    size_t before = reader.problems->count;
    cg_reading_conditions(reading, &c);
    reader.c = &c;
    reader.found = &reading->column;
    enum cg_status status = read_duty(reading, &reader, error);
    if (status != CG_OK || reader.problems->count > before)
        return status;
    if (c.duty.course != NULL && c.duty.course->log.file[0] != '\0')
        return take(reading, &c.duty, error);
    cg_item_problem(reading->item, NULL, reading->column.key,
                    "is of a log, and this duty is none");
    return CG_OK;
}

/* Whether the column would be of the config's own log, which is wrong; that was
 * told where it is the duty. */
static bool is_told(const struct cg_reading *reading)
{
    const struct cg_reader *reader = reading->item->reader;
    return reading->duty == NULL && reader->c->duty.course == NULL &&
           config_lookup(&reader->file.config, "duty.log") != NULL;
}

enum cg_status cg_reading_log(struct cg_reading *reading,
                              struct cg_error *error)
{
    enum cg_status status = CG_OK;
    bool sound = check_keys(reading);
    if (sound && reading->column.heading[0] != '\0' && !is_told(reading))
        status = read_log(reading, error);
    if (reading->log == NULL && has_temperature(reading))
        reading->number.temperature = CG_ZERO_CELSIUS; /* told */
    return status;
}

void cg_reading_say_log(const struct cg_reading *reading,
                        struct cg_evidence_entry *entry)
{
    if (reading->log == NULL)
        return;
    snprintf(entry->log, sizeof entry->log, "%s", reading->log->file);
    snprintf(entry->column, sizeof entry->column, "%s",
             reading->column.heading);
    cg_plain_make(entry->column);
    entry->log_time = reading->log->highest.time;
}
