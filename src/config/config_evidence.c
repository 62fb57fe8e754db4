/* evidence: what was measured on the engine (evidence.h).
 *   ( { what = "groove_top"; temperature_C = 245.0; how = "hardness"; },
 *     { touched = false; cold_gap_mm = 0.45; duty = "drag_pass"; } )
 * A temperature may be a log's (config_evidence_log.c).
 * The run it was found in is the config's own, unless the entry says else. */
#include "config_evidence.h"

#include <math.h>
#include <string.h>

#include "constants.h"
#include "geometry.h"
#include "nearest.h"
#include "outside.h"

enum { LISTED = 16 }; /* entries of one list */

struct field {
    const char *name;
    enum cg_dimension dimension;
    bool of_rated;
    double low, high;  /* SI */
    size_t offset;     /* into struct cg_reading_numbers */
    const char *like;  /* setting whose band it has, or NULL */
};

#define AT(name) offsetof(struct cg_reading_numbers, name)

static const struct field fields[] = {
    {"temperature", CG_TEMPERATURE, false, CG_EVIDENCE_COLDEST,
     CG_EVIDENCE_HOTTEST_GAS, AT(temperature), NULL},
    {"share", CG_SHARE, false, 0.01, 0.9, AT(share), NULL},
    {"spread", CG_SHARE, false, 0.001, 0.5, AT(share_spread), NULL},
    {"spread", CG_DIFFERENCE, false, 0.1, 100.0, AT(spread), NULL},
    {"spread", CG_LENGTH, false, 1e-6, 1e-3, AT(gap_spread), NULL},
    {"at", CG_TIME, false, 0.0, 36000.0, AT(time), NULL},
    {"depth", CG_LENGTH, false, 0.0, 3.0, AT(depth), NULL},
    {"cold_gap", CG_LENGTH, false, 1e-6, 0.02, AT(cold_gap), NULL},
    {"boost", CG_PRESSURE, false, 0.0, 0.0, AT(boost), "charge.boost"},
    {"coolant", CG_TEMPERATURE, false, 0.0, 0.0, AT(coolant),
     "cooling.coolant"},
    {"ambient", CG_TEMPERATURE, false, 0.0, 0.0, AT(ambient),
     "charge.ambient"},
    {"speed", CG_ROTATION, false, 50.0 / 60.0, 25000.0 / 60.0, AT(speed),
     NULL},
    {"speed", CG_SHARE, true, 0.01, 1.5, AT(speed), NULL},
    {"load", CG_PLAIN, false, 0.0, 1.0, AT(load), NULL},
};

static const char *const keys[] = {
    "what", "temperature_C", "temperature_F", "temperature_K",
    "column_C", "column_F", "column_K", "spread_K",
    "how", "at_s", "at_min", "depth_mm", "depth_in", "touched", "cold_gap_mm",
    "cold_gap_in", "cold_gap_thou", "share_pct", "spread_pct", "spread_mm", "spread_thou", "duty",
    "boost_kPa", "boost_bar", "boost_psi", "coolant_C", "coolant_F",
    "ambient_C", "ambient_F", "speed_rpm", "speed_pct", "load"};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

static double *field_of(struct cg_reading *reading, const struct field *field)
{
    return (double *)((char *)&reading->number + field->offset);
}

static void read_number(struct cg_reading *reading, const struct field *field,
                        const struct cg_unit *unit,
                        const config_setting_t *setting)
{
    double low = field->low, high = field->high, si;
    double *to = field_of(reading, field);
    const char *key = config_setting_name(setting);
    if (field->like != NULL) {
        const struct cg_setting *like = cg_setting_find(field->like);
        const struct cg_unit *own =
            cg_unit_find(like->dimension, like->unit);
        low = cg_unit_to_si(own, like->low);
        high = cg_unit_to_si(own, like->high);
    }
    if (!isnan(*to))
        cg_item_problem(reading->item, setting, key,
                        "given twice, one is allowed");
    else if (cg_item_number(reading->item, setting, unit, low, high, &si))
        *to = field->of_rated ? si * reading->item->reader->c->engine.speed
                              : si;
    else
        *to = low; /* told: not to be called missing too */
}

static void read_touched(struct cg_reading *reading,
                         const config_setting_t *setting)
{
    struct cg_value value = cg_value_of(setting);
    reading->sign = true;
    reading->touched = value.truth;
    if (value.kind != CG_VALUE_TRUTH)
        cg_item_problem(reading->item, setting, "touched",
                        "must be true or false (got %s)", value.what);
}

static void read_key(struct cg_reading *reading,
                     const config_setting_t *setting)
{
    const char *key = config_setting_name(setting);
    const struct {
        const char *key;
        const char **to;
        const char *fallback; /* after trouble, which has been told */
    } texts[] = {{"what", &reading->what, "crown"},
                 {"how", &reading->how, "hardness"},
                 {"duty", &reading->duty, NULL}};
    for (size_t i = 0; i < COUNT(texts); i++)
        if (strcmp(key, texts[i].key) == 0) {
            const char *text = cg_item_text(reading->item, setting);
            *texts[i].to = text != NULL ? text : texts[i].fallback;
            return;
        }
    const struct cg_unit *unit = cg_key_unit(key, "column", CG_TEMPERATURE);
    if (unit != NULL) {
        cg_reading_heading(reading, setting, unit);
        return;
    }
    for (size_t i = 0; i < COUNT(fields); i++) {
        unit = cg_key_unit(key, fields[i].name, fields[i].dimension);
        if (unit != NULL) {
            read_number(reading, &fields[i], unit, setting);
            return;
        }
    }
    if (strcmp(key, "touched") == 0)
        read_touched(reading, setting);
    else
        cg_item_unknown_key(reading->item, setting, keys, COUNT(keys));
}

int cg_reading_word(const struct cg_reading *reading, const char *key,
                    const char *word, const char *const *names, size_t count)
{
    char list[CG_PROBLEM_LENGTH / 2];
    for (size_t i = 0; i < count; i++)
        if (strcmp(names[i], word) == 0)
            return (int)i;
    cg_nearest_list(word, names, count, list, sizeof list);
    cg_item_problem(reading->item,
                    config_setting_get_member(reading->item->group, key), key,
                    "unknown \"%.40s\", allowed: %s", word, list);
    return -1;
}

void cg_reading_refuse(const struct cg_reading *reading, const char *key,
                       bool given, const char *why)
{
    if (given)
        cg_item_problem(reading->item, NULL, key, "%s", why);
}

static void read_sign(const struct cg_reading *reading, const struct cg_case *c,
                      struct cg_evidence_entry *entry)
{
    static const char why[] = "does not go with touched; a temperature is an "
                              "entry of its own";
    const struct cg_reading_numbers *number = &reading->number;
    cg_reading_refuse(reading, "what", reading->what != NULL, why);
    cg_reading_refuse(reading, "how", reading->how != NULL, why);
    cg_reading_refuse(reading, "temperature", !isnan(number->temperature), why);
    cg_reading_refuse(reading, "spread_K", !isnan(number->spread), why);
    cg_reading_refuse(reading, "share_pct", !isnan(number->share), why);
    cg_reading_refuse(reading, "spread_pct", !isnan(number->share_spread), why);
    cg_reading_refuse(reading, "depth", !isnan(number->depth), why);
    cg_reading_refuse(reading, "at", !isnan(number->time),
           "does not go with touched, which is of the whole duty");
    cg_reading_refuse(reading, "cold_gap_mm", isnan(number->cold_gap),
           "missing, the cold gap that touched or did not");
    entry->what = CG_EVIDENCE_ENDS;
    entry->touched = reading->touched;
    entry->cold_gap = number->cold_gap;
    entry->spread = number->gap_spread;
    /* as the gap and the bore were measured */
    if (isnan(entry->spread))
        entry->spread = fmax(hypot(c->uncertainty.gap_measure,
                                   CG_PI * c->uncertainty.bore_size),
                             1e-6);
}

static void read_place(const struct cg_reading *reading,
                       const struct cg_case *c,
                       struct cg_evidence_entry *entry)
{
    const char *names[CG_EVIDENCE_ENDS];
    double depth = reading->number.depth, most = cg_bore_length(c);
    for (size_t i = 0; i < CG_EVIDENCE_ENDS; i++)
        names[i] = cg_evidence_name((enum cg_evidence_what)i);
    cg_reading_refuse(reading, "what", reading->what == NULL,
           "missing; allowed: what = \"groove_top\" or the like, or touched");
    if (reading->what == NULL)
        return;
    int what = cg_reading_word(reading, "what", reading->what, names,
                               CG_EVIDENCE_ENDS);
    if (what < 0)
        return;
    entry->what = (enum cg_evidence_what)what;
    entry->depth = depth;
    cg_reading_refuse(reading, "depth_mm",
           entry->what == CG_EVIDENCE_LINER && isnan(depth),
           "missing, the depth below the deck");
    cg_reading_refuse(reading, "depth",
           entry->what != CG_EVIDENCE_LINER && !isnan(depth),
           "goes with what = \"liner\" alone");
    if (depth > most)
        cg_item_problem(reading->item, NULL, "depth",
                        "must be at most %.4g mm, the bore that the rings "
                        "pass", most * 1e3);
}

/* What is read on the engine while it is held at one speed and load. */
static void read_steady(const struct cg_reading *reading,
                        struct cg_evidence_entry *entry)
{
    static const char why[] = "does not go with this what";
    const struct cg_reading_numbers *number = &reading->number;
    bool probe = entry->what == CG_EVIDENCE_PROBE;
    cg_reading_refuse(reading, "how", reading->how != NULL, why);
    cg_reading_refuse(reading, "at_s", !isnan(number->time), why);
    cg_reading_refuse(reading, "speed_rpm",
                      isnan(number->speed) && isnan(number->load) &&
                          reading->column.unit == NULL,
                      "missing; this what is read at one speed and load");
    entry->time = NAN;
    if (probe) {
        entry->spread = isnan(number->spread) ? CG_EVIDENCE_PROBE_SPREAD
                                              : number->spread;
        return;
    }
    cg_reading_refuse(reading, "temperature", !isnan(number->temperature), why);
    cg_reading_refuse(reading, "spread_K", !isnan(number->spread), why);
    cg_reading_refuse(reading, "what",
                      cg_air_cooled(reading->item->reader->c),
                      cg_cooling_other(reading->item->reader->c));
    cg_reading_refuse(reading, "share_pct", isnan(number->share),
                      "missing, the coolant's share of the fuel's energy");
    entry->share = number->share;
    entry->spread = isnan(number->share_spread)
                        ? CG_EVIDENCE_COOLANT_SPREAD * number->share
                        : number->share_spread;
}

/* How it was found, and so how well. */
static void read_way(const struct cg_reading *reading,
                     struct cg_evidence_entry *entry)
{
    const char *names[CG_EVIDENCE];
    size_t count;
    const struct cg_evidence_way *ways = cg_evidence_ways(&count);
    for (size_t i = 0; i < count; i++)
        names[i] = ways[i].name;
    entry->spread = reading->number.spread;
    entry->time = reading->number.time;
    if (reading->how == NULL) {
        cg_reading_refuse(reading, "how", isnan(entry->spread),
               "missing; give how = \"hardness\" or the like, or spread_K");
        return;
    }
    int way = cg_reading_word(reading, "how", reading->how, names, count);
    if (way < 0)
        return;
    if (isnan(entry->spread))
        entry->spread = ways[way].spread;
    cg_reading_refuse(reading, "how",
                      !ways[way].instants && reading->column.unit != NULL,
                      "does not go with a column, which reads as it runs");
    if (!ways[way].instants)
        cg_reading_refuse(reading, "at_s", !isnan(entry->time),
               "does not go with this how, which shows the hottest of the "
               "duty alone");
}

static void read_temperature(const struct cg_reading *reading,
                             const struct cg_case *c,
                             struct cg_evidence_entry *entry)
{
    static const char why[] = "goes with touched alone";
    const struct cg_reading_numbers *number = &reading->number;
    cg_reading_refuse(reading, "cold_gap", !isnan(number->cold_gap), why);
    cg_reading_refuse(reading, "spread_mm", !isnan(number->gap_spread), why);
    entry->temperature = number->temperature;
    read_place(reading, c, entry);
    if (entry->what != CG_EVIDENCE_COOLANT) {
        static const char share[] = "goes with what = \"coolant_share\" alone";
        cg_reading_refuse(reading, "share_pct", !isnan(number->share), share);
        cg_reading_refuse(reading, "spread_pct", !isnan(number->share_spread),
                          share);
        cg_reading_refuse(reading, "temperature_C", isnan(number->temperature),
                          "missing, what was measured");
    }
    if (cg_evidence_is_steady(entry->what)) {
        read_steady(reading, entry);
        return;
    }
    if (entry->temperature > CG_EVIDENCE_HOTTEST_METAL)
        cg_item_problem(reading->item, NULL, "temperature",
                        "must be at most %g C for metal (got %g)",
                        CG_EVIDENCE_HOTTEST_METAL - CG_ZERO_CELSIUS,
                        entry->temperature - CG_ZERO_CELSIUS);
    read_way(reading, entry);
}

/* What read_entry needs besides the item. */
struct context {
    const struct cg_found_in *in;
    enum cg_status status;
    struct cg_error *error;
};

static void read_entry(struct cg_item *item, void *context)
{
    struct context *in = context;
    struct cg_evidence *evidence = item->reader->evidence;
    struct cg_duty_case logged;
    struct cg_reading reading = {.item = item,
                                 .evidence = evidence,
                                 .logged = &logged,
                                 .engine = in->in->engine};
    struct cg_evidence_entry entry = {
        .time = NAN, .depth = NAN, .engine = in->in->engine};
    const struct cg_case *c = item->reader->c;
    if (evidence->entries == CG_EVIDENCE) {
        cg_item_problem(item, NULL, "", "one finding too many, %d in all are "
                        "allowed", CG_EVIDENCE);
        return;
    }
    for (size_t i = 0; i < COUNT(fields); i++)
        *field_of(&reading, &fields[i]) = NAN;
    for (int i = 0; i < config_setting_length(item->group); i++)
        read_key(&reading, config_setting_get_elem(item->group, (unsigned)i));
    if (reading.column.unit != NULL && in->status == CG_OK)
        in->status = cg_reading_log(&reading, in->error);
    if (reading.sign)
        read_sign(&reading, c, &entry);
    else
        read_temperature(&reading, c, &entry);
    if (in->status == CG_OK)
        in->status = cg_reading_run(&reading, &entry.run, in->error);
    cg_reading_say_log(&reading, &entry);
    entry.line = cg_config_where(&item->reader->file, item->group).line;
    snprintf(entry.from, sizeof entry.from, "%s", in->in->from);
    snprintf(entry.date, sizeof entry.date, "%s", in->in->date);
    evidence->entry[evidence->entries++] = entry;
}

enum cg_status cg_found_read(struct cg_reader *reader,
                             const config_setting_t *list, const char *path,
                             const struct cg_found_in *in,
                             struct cg_error *error)
{
    struct context context = {in, CG_OK, error};
    cg_items_in(reader, list, path, LISTED, read_entry, &context);
    return context.status;
}

enum cg_status cg_evidence_read(struct cg_reader *reader,
                                struct cg_error *error)
{
    const struct cg_found_in own = {"", "", 0};
    const config_setting_t *list =
        config_lookup(&reader->file.config, "evidence");
    return list != NULL
               ? cg_found_read(reader, list, "evidence", &own, error)
               : CG_OK;
}
