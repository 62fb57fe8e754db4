/* Reading a case, from first to last: the file's groups, the overrides, the
 * duty, defaults, names, materials, and whether it all fits together. */
#define _POSIX_C_SOURCE 200809L /* access */

#include "config.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "case_check.h"
#include "cautions.h"
#include "config_parts.h"
#include "fuel.h"
#include "heat_transfer.h"
#include "law.h"
#include "oil.h"
#include "uncertain.h"

enum { KNOWN_NAMES = 32 };

static void check_fuel(struct cg_reader *reader)
{
    const char *names[KNOWN_NAMES];
    size_t count, kept = 0;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (; kept < count && kept < KNOWN_NAMES; kept++)
        names[kept] = fuels[kept].name;
    if (cg_fuel_find(reader->c->fuel.name) == NULL)
        cg_name_translate("fuel.name", reader->c->fuel.name);
    if (cg_fuel_find(reader->c->fuel.name) == NULL)
        cg_name_unknown(reader, "fuel.name", "unknown fuel",
                        reader->c->fuel.name, names, kept);
}

static void check_correlation(struct cg_reader *reader)
{
    const char *names[KNOWN_NAMES], *name = reader->c->combustion.heat_transfer;
    size_t count, kept = 0;
    const struct cg_heat_transfer *known = cg_heat_transfers(&count);
    for (; kept < count && kept < KNOWN_NAMES; kept++)
        names[kept] = known[kept].name;
    if (cg_heat_transfer_find(name) == NULL)
        cg_name_unknown(reader, "combustion.heat_transfer",
                        "unknown correlation", name, names, kept);
}

static void check_oil(struct cg_reader *reader)
{
    const char *names[KNOWN_NAMES], *name = reader->c->cooling.oil_grade;
    size_t count, kept = 0;
    const struct cg_oil *known = cg_oils(&count);
    for (; kept < count && kept < KNOWN_NAMES; kept++)
        names[kept] = known[kept].name;
    if (cg_oil_find(name) == NULL)
        cg_name_unknown(reader, "cooling.oil_grade", "unknown SAE grade", name,
                        names, kept);
}

static void check_missing(struct cg_reader *reader)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++) {
        if (settings[i].rule != CG_REQUIRED || reader->origin[i].given)
            continue;
        char key[128];
        cg_key_write(&settings[i], NULL, true, key, sizeof key);
        cg_problem(reader->problems,
                   (struct cg_where){reader->file.path, reader->line, NULL},
                   key, "missing, %.6g to %.6g %s is allowed", settings[i].low,
                   settings[i].high, settings[i].unit);
    }
}

/* Points to whichever of the two settings the user wrote, and gives the limit
 * in the unit the user wrote. */
static void report_sense(struct cg_reader *reader,
                         const struct cg_case_problem *found)
{
    const struct cg_setting *setting = cg_setting_find(found->path);
    const struct cg_origin *origin = cg_origin_of(reader, found->path);
    const struct cg_unit *unit =
        origin->given ? origin->unit
                      : cg_unit_find(setting->dimension, setting->unit);
    char key[128], limit[64] = "";
    cg_key_write(setting, unit, true, key, sizeof key);
    if (!isnan(found->limit))
        snprintf(limit, sizeof limit, ": %.4g%s%s",
                 cg_unit_from_si(unit, found->limit),
                 unit->suffix[0] != '\0' ? " " : "", unit->suffix);
    bool other = !origin->given && found->other != NULL;
    cg_problem(reader->problems,
               cg_where_given(reader, other ? found->other : found->path),
               key, "%s%s", found->text, limit);
}

static void check_sense(struct cg_reader *reader)
{
    struct cg_case_problem found[CG_CASE_PROBLEMS];
    size_t count = cg_case_check(reader->c, found);
    for (size_t i = 0; i < count; i++)
        report_sense(reader, &found[i]);
}

/* Calibrated constants that are not given are those of the law chosen. */
static void take_law_defaults(struct cg_reader *reader)
{
    size_t inputs;
    const struct cg_uncertain *input = cg_uncertains(&inputs);
    for (size_t k = 0; k < CG_CALIBRATED; k++) {
        const char *const *path = cg_law_settings(k);
        char spread[64];
        bool given = false;
        for (int i = 0; i < CG_CALIBRATED_SETTINGS && path[i] != NULL; i++)
            given |= cg_origin_of(reader, path[i])->given;
        if (!given)
            cg_law_default_value(k, reader->c);
        snprintf(spread, sizeof spread, "uncertainty.%s",
                 input[cg_law_input(k)].name);
        if (!cg_origin_of(reader, spread)->given)
            cg_law_default_spread(k, reader->c);
    }
    cg_law_correlate(reader->c);
}

/* What follows once all settings are there. */
static enum cg_status complete(struct cg_reader *reader,
                               struct cg_error *error)
{
    check_missing(reader);
    cg_cooling_check(reader);
    take_law_defaults(reader);
    cg_ignition_read(reader);
    cg_correlations_read(reader);
    check_fuel(reader); /* the octane is that of the fuel, a log's mixture too */
    enum cg_status status = cg_duty_read(reader, error);
    if (status != CG_OK)
        return status;
    status = cg_survive_read(reader, error);
    if (status != CG_OK)
        return status;
    (void)cg_case_complete(reader->c); /* what is missing has been told */
    status = cg_duty_lag(reader, reader->c, &reader->c->duty, error);
    for (int i = 0; i < reader->c->survive.duties && status == CG_OK; i++)
        status =
            cg_duty_lag(reader, reader->c, &reader->c->survive.duty[i], error);
    if (status != CG_OK)
        return status;
    check_correlation(reader);
    check_oil(reader);
    status = cg_materials_read(reader, error);
    if (status != CG_OK)
        return status;
    check_sense(reader);
    return CG_OK;
}

static enum cg_status read_parts(struct cg_reader *reader,
                                 const char *const *set, size_t sets,
                                 struct cg_error *error)
{
    const struct cg_where by_set = {NULL, 0, NULL};
    cg_tree_read(reader, &reader->file, NULL, CG_GIVEN_TWICE);
    for (size_t i = 0; i < sets; i++)
        cg_override(reader, set[i], by_set);
    enum cg_status status = complete(reader, error);
    if (status == CG_OK)
        status = cg_evidence_read(reader, error);
    return status == CG_OK ? cg_notebook_read(reader, error) : status;
}

static void override_all(struct cg_reader *reader,
                         const struct cg_config_file *by,
                         const config_setting_t *set)
{
    int count = set != NULL ? config_setting_length(set) : 0;
    for (int i = 0; i < count; i++) {
        const config_setting_t *one =
            config_setting_get_elem(set, (unsigned)i);
        cg_override(reader, config_setting_get_string(one),
                    cg_config_where(by, one));
    }
}

enum cg_status cg_build_read(const struct cg_item *build, const char *path,
                             const config_setting_t *set, struct cg_case *c,
                             struct cg_error *error)
{
    const struct cg_config_file *by = &build->reader->file;
    struct cg_problems *problems = build->reader->problems;
    struct cg_reader reader = {.problems = problems,
                               .c = c,
                               .courses = build->reader->courses};
    size_t settings, before = problems->count;
    enum cg_status status = CG_OK;
    (void)cg_settings(&settings);
    cg_case_begin(c);
    reader.origin = calloc(settings, sizeof reader.origin[0]);
    if (reader.origin == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (path != NULL) {
        status = cg_config_file_open(&reader.file, path, problems, error);
    } else {
        config_init(&reader.file.config);
        reader.file.path = by->path;
        reader.line = cg_config_where(by, build->group).line;
    }
    if (status == CG_OK && problems->count == before) {
        cg_tree_read(&reader, &reader.file, NULL, CG_GIVEN_TWICE);
        override_all(&reader, by, set);
        status = complete(&reader, error);
    }
    cg_metals_free(&reader.metals);
    cg_config_file_close(&reader.duty);
    cg_config_file_close(&reader.file);
    free(reader.origin);
    return status;
}

static enum cg_status summary(const struct cg_problems *problems,
                              const char *path, struct cg_error *error)
{
    if (problems->count == 0)
        return CG_OK;
    const char *plural = problems->count == 1 ? "" : "s";
    if (problems->in_files == 0)
        return cg_error_set(error, CG_BAD_INPUT, "%zu error%s by --set",
                            problems->count, plural);
    if (problems->in_own == 0 && problems->in_files == problems->count)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%zu error%s in files that %s names", problems->count,
                            plural, path);
    return cg_error_set(error, CG_BAD_INPUT, "%zu error%s in %s",
                        problems->count, plural, path);
}

/* Reads the case and, unless NULL, the library; what is wrong with it is left
 * in `problems`. */
static enum cg_status read_case(const char *path, const char *const *set,
                                size_t sets, const struct cg_metals *shipped,
                                struct cg_case *c,
                                struct cg_evidence *evidence,
                                struct cg_material_library *library,
                                struct cg_problems *problems,
                                struct cg_error *error)
{
    struct cg_case fresh;
    struct cg_course *courses = NULL;
    struct cg_evidence found = {.entries = 0};
    struct cg_reader reader = {.problems = problems, .c = &fresh,
                               .evidence = &found,
                               .courses = &courses,
                               .shipped = shipped};
    size_t settings;
    (void)cg_settings(&settings);
    problems->own = path;
    cg_case_begin(&fresh);
    enum cg_status status =
        cg_config_file_open(&reader.file, path, problems, error);
    if (status == CG_FILE && access(path, F_OK) != 0 && errno == ENOENT)
        status = cg_error_set(error, CG_FILE, "%.400s: no such file; coldgap "
                              "template prints one to start from", path);
    if (status != CG_OK)
        goto out;
    reader.origin = calloc(settings, sizeof reader.origin[0]);
    if (reader.origin == NULL) {
        status = cg_error_set(error, CG_NO_MEMORY, "%s: out of memory", path);
        goto out;
    }
    if (problems->count == 0)
        status = read_parts(&reader, set, sets, error);
    if (status == CG_OK)
        status = summary(problems, path, error);
    if (status == CG_OK && library != NULL)
        status = cg_material_library_fill(&reader.metals, library, error);
    if (status == CG_OK) {
        *c = fresh;
        c->courses = courses;
        courses = NULL; /* theirs now */
    }
    if (status == CG_OK && evidence != NULL) {
        *evidence = found;
        found.run = NULL; /* theirs now */
    }
out:
    cg_courses_free(courses);
    cg_evidence_free(&found);
    cg_metals_free(&reader.metals);
    cg_config_file_close(&reader.duty);
    cg_config_file_close(&reader.file);
    free(reader.origin);
    return status;
}

static bool has_nitrous_on(const struct cg_case *c)
{
    bool on = cg_duty_nitrous(&c->duty) > 0.0;
    for (int i = 0; i < c->survive.duties; i++)
        on = on || cg_duty_nitrous(&c->survive.duty[i]) > 0.0;
    return on;
}

enum cg_status cg_config_read_evidence(const char *path,
                                       const char *const *set, size_t sets,
                                       struct cg_case *c,
                                       struct cg_evidence *evidence,
                                       struct cg_error *error)
{
    struct cg_problems problems = {0};
    enum cg_status status =
        read_case(path, set, sets, NULL, c, evidence, NULL, &problems, error);
    cg_problems_print(&problems, stderr);
    if (status == CG_OK && has_nitrous_on(c))
        cg_cautions_take_nitrous();
    return status;
}

enum cg_status cg_config_read_library(const char *path, const char *const *set,
                                      size_t sets,
                                      struct cg_material_library *library,
                                      struct cg_error *error)
{
    struct cg_problems problems = {0};
    struct cg_case c;
    enum cg_status status =
        read_case(path, set, sets, NULL, &c, NULL, library, &problems, error);
    if (status == CG_OK)
        cg_case_free(&c);
    cg_problems_print(&problems, stderr);
    return status;
}

enum cg_status cg_config_read(const char *path, const char *const *set,
                              size_t sets, struct cg_case *c,
                              struct cg_error *error)
{
    return cg_config_read_evidence(path, set, sets, c, NULL, error);
}

static enum cg_status try_case(const char *path, const char *const *set,
                               size_t sets, const struct cg_metals *shipped,
                               struct cg_case *c, struct cg_evidence *evidence,
                               struct cg_error *error)
{
    struct cg_problems problems = {0};
    enum cg_status status = read_case(path, set, sets, shipped, c, evidence,
                                      NULL, &problems, error);
    if (status == CG_BAD_INPUT && problems.count > 0)
        return cg_error_set(error, status, "%.500s", problems.line[0]);
    return status;
}

enum cg_status cg_config_try_evidence(const char *path,
                                      const char *const *set, size_t sets,
                                      struct cg_case *c,
                                      struct cg_evidence *evidence,
                                      struct cg_error *error)
{
    return try_case(path, set, sets, NULL, c, evidence, error);
}

enum cg_status cg_config_try(const char *path, const char *const *set,
                             size_t sets, const struct cg_metals *shipped,
                             struct cg_case *c, struct cg_error *error)
{
    return try_case(path, set, sets, shipped, c, NULL, error);
}
