/* duty.segments: a list of groups, each a time at or between speeds and loads. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "config_build.h"
#include "config_parts.h"
#include "nearest.h"
#include "outside.h"

/* An engine may be driven above its rated speed, but not without end. */
#define MOST_OVERSPEED 1.5

/* Keys of a segment.  Speeds may also be given in per cent of engine.speed;
 * pct is not a unit of rotation, so they have rows of their own. */
struct field {
    const char *name;
    enum cg_dimension dimension;
    bool of_rated, required;
    double low, high; /* SI */
    size_t offset;    /* into struct cg_segment */
};

static const struct field fields[] = {
    {"seconds", CG_PLAIN, false, true, 0.001, 36000.0,
     offsetof(struct cg_segment, seconds)},
    {"speed", CG_ROTATION, false, true, 50.0 / 60.0, 25000.0 / 60.0,
     offsetof(struct cg_segment, speed)},
    {"speed", CG_SHARE, true, false, 0.01, MOST_OVERSPEED,
     offsetof(struct cg_segment, speed)},
    {"speed_end", CG_ROTATION, false, false, 50.0 / 60.0, 25000.0 / 60.0,
     offsetof(struct cg_segment, speed_end)},
    {"speed_end", CG_SHARE, true, false, 0.01, MOST_OVERSPEED,
     offsetof(struct cg_segment, speed_end)},
    {"load", CG_PLAIN, false, true, 0.0, 1.0,
     offsetof(struct cg_segment, load)},
    {"load_end", CG_PLAIN, false, false, 0.0, 1.0,
     offsetof(struct cg_segment, load_end)},
    {"heat_factor", CG_PLAIN, false, false, 0.3, 3.0,
     offsetof(struct cg_segment, heat_factor)},
    {"knock_heat", CG_PLAIN, false, false, CG_KNOCK_HEAT_LEAST,
     CG_KNOCK_HEAT_MOST, offsetof(struct cg_segment, knock_heat)},
    {"nitrous", CG_PLAIN, false, false, 0.0, 1.0,
     offsetof(struct cg_segment, nitrous)},
    {"coolant", CG_TEMPERATURE, false, false, 273.15 - 40.0, 273.15 + 140.0,
     offsetof(struct cg_segment, coolant_temperature)},
    {"air", CG_SHARE, false, false, CG_AIR_LEAST, CG_AIR_MOST,
     offsetof(struct cg_segment, air)},
};

enum { FIELDS = sizeof fields / sizeof fields[0] };

struct item {
    struct cg_reader *reader;
    const struct cg_config_file *file;
    config_setting_t *group;
    char path[64]; /* "duty.segments[3]" */
    struct cg_segment *segment;
};

static void item_problem(const struct item *item,
                         const config_setting_t *setting, const char *key,
                         const char *what)
{
    char path[160];
    snprintf(path, sizeof path, "%s%s%.60s", item->path,
             key[0] != '\0' ? "." : "", key);
    cg_problem(item->reader->problems, cg_config_where(item->file, setting),
               path, "%s", what);
}

static double *field_of(const struct item *item, const struct field *field)
{
    return (double *)((char *)item->segment + field->offset);
}

static void unknown_key(const struct item *item,
                        const config_setting_t *setting)
{
    static const char *const keys[] = {
        "seconds",  "speed_rpm",   "speed_pct", "speed_end_rpm",
        "speed_end_pct", "load", "load_end", "heat_factor", "knock_heat",
        "coolant_C", "coolant_F", "coolant_K", "air_pct", "nitrous"};
    const char *key = config_setting_name(setting);
    char what[CG_PROBLEM_LENGTH / 2 + 32], hint[CG_PROBLEM_LENGTH / 2];
    cg_nearest_hint(key, keys, sizeof keys / sizeof keys[0], hint, sizeof hint);
    snprintf(what, sizeof what, "unknown setting, %s", hint);
    item_problem(item, setting, key, what);
}

static void store(const struct item *item, const struct field *field,
                  const struct cg_unit *unit, config_setting_t *setting)
{
    const char *key = config_setting_name(setting);
    struct cg_value value = cg_value_of(setting);
    double si = cg_unit_to_si(unit, value.number), rated =
        item->reader->c->engine.speed;
    char what[192] = "";
    if (value.kind != CG_VALUE_NUMBER)
        snprintf(what, sizeof what, "must be a number (got %s)", value.what);
    else if (!(si >= field->low && si <= field->high))
        snprintf(what, sizeof what, "must be %.6g to %.6g (got %.6g)",
                 cg_unit_from_si(unit, field->low),
                 cg_unit_from_si(unit, field->high), value.number);
    else if (!isnan(*field_of(item, field)))
        snprintf(what, sizeof what, "given twice, one is allowed");
    else if (cg_air_cooled(item->reader->c)
                 ? field->dimension == CG_TEMPERATURE
                 : strcmp(field->name, "air") == 0)
        snprintf(what, sizeof what, "%s", cg_cooling_other(item->reader->c));
    else if (strcmp(field->name, "air") == 0 &&
             item->reader->c->cooling.air.drive == CG_AIR_FAN)
        snprintf(what, sizeof what,
                 "goes with the engine's speed, cooling.air_drive is fan; "
                 "allowed where it is stream");
    else if (field->dimension == CG_ROTATION && si > MOST_OVERSPEED * rated)
        snprintf(what, sizeof what,
                 "must be at most %g times engine.speed_rpm (got %.6g)",
                 MOST_OVERSPEED, value.number);
    else
        *field_of(item, field) = field->of_rated ? si * rated : si;
    if (what[0] != '\0')
        item_problem(item, setting, key, what);
}

static void read_member(const struct item *item, config_setting_t *setting)
{
    for (int i = 0; i < FIELDS; i++) {
        const struct cg_unit *unit =
            cg_key_unit(config_setting_name(setting), fields[i].name,
                        fields[i].dimension);
        if (unit != NULL) {
            store(item, &fields[i], unit, setting);
            return;
        }
    }
    unknown_key(item, setting);
}

/* True if some key of the segment names the field, rightly or wrongly. */
static bool mentioned(const struct item *item, const struct field *field)
{
    for (int i = 0; i < config_setting_length(item->group); i++) {
        const char *key = config_setting_name(
            config_setting_get_elem(item->group, (unsigned)i));
        for (int j = 0; j < FIELDS; j++)
            if (fields[j].offset == field->offset &&
                cg_key_unit(key, fields[j].name, fields[j].dimension) != NULL)
                return true;
    }
    return false;
}

static double or_else(double value, double fallback)
{
    return isnan(value) ? fallback : value;
}

static void read_item(const struct item *item)
{
    struct cg_segment *s = item->segment;
    *s = (struct cg_segment){NAN, NAN, NAN, NAN, NAN,
                             NAN, NAN, NAN, NAN, NAN};
    if (!config_setting_is_group(item->group)) {
        item_problem(item, item->group, "", "must be a group { }");
        return;
    }
    for (int i = 0; i < config_setting_length(item->group); i++)
        read_member(item, config_setting_get_elem(item->group, (unsigned)i));
    for (int i = 0; i < FIELDS; i++)
        if (fields[i].required && !mentioned(item, &fields[i]))
            item_problem(item, item->group,
                         fields[i].dimension == CG_ROTATION ? "speed_rpm"
                                                            : fields[i].name,
                         "missing");
    s->speed_end = or_else(s->speed_end, s->speed);
    s->load_end = or_else(s->load_end, s->load);
    s->heat_factor = or_else(s->heat_factor, 1.0);
    s->knock_heat = or_else(s->knock_heat, 0.0);
    s->air = or_else(s->air, 0.0);
    s->nitrous = or_else(s->nitrous, 0.0);
}

static void read_items(struct cg_reader *reader,
                       const struct cg_config_file *file,
                       const config_setting_t *segments, int count,
                       struct cg_segment *segment)
{
    for (int i = 0; i < count; i++) {
        struct item item = {reader, file,
                            config_setting_get_elem(segments, (unsigned)i), "",
                            &segment[i]};
        snprintf(item.path, sizeof item.path, "duty.segments[%d]", i);
        read_item(&item);
    }
}

/* More segments than a duty holds itself: a course. */
static enum cg_status read_many(struct cg_reader *reader,
                                const struct cg_config_file *file,
                                const config_setting_t *segments, int count,
                                struct cg_error *error)
{
    struct cg_course *course = NULL;
    size_t before = reader->problems->count;
    struct cg_segment *segment = malloc((size_t)count * sizeof *segment);
    if (segment == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    read_items(reader, file, segments, count, segment);
    enum cg_status status = CG_OK;
    if (reader->problems->count == before)
        status = cg_course_of_segments(segment, (size_t)count,
                                       cg_outside_temperature(reader->c),
                                       reader->courses, &course, error);
    free(segment);
    if (status == CG_OK && course != NULL)
        status = cg_course_thin(reader->c->engine.speed, &cg_thin_usual,
                                course, error);
    reader->c->duty.course = course;
    return status;
}

enum cg_status cg_segments_read(struct cg_reader *reader,
                                const struct cg_config_file *file,
                                const config_setting_t *segments,
                                struct cg_error *error)
{
    struct cg_duty_case *duty = &reader->c->duty;
    int count = config_setting_is_list(segments)
                    ? config_setting_length(segments)
                    : 0;
    if (count > CG_SEGMENTS)
        return read_many(reader, file, segments, count, error);
    if (count < 1)
        cg_problem(reader->problems, cg_config_where(file, segments),
                   "duty.segments", "must be a list ( { }, ... ) of 1 segment "
                   "and more (got %d)", count);
    else
        read_items(reader, file, segments, count, duty->segment);
    duty->segments = count;
    return CG_OK;
}
