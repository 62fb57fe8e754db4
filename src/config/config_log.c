/* duty = { log = "pull.csv"; columns = { time_s = "Time"; ... }; }: a logged
 * run is the duty.  Columns are named by the user's own words. */
#include <string.h>

#include "config_build.h"
#include "config_parts.h"
#include "fuel.h"
#include "log_course.h"
#include "nearest.h"
#include "outside.h"

static void column_problem(struct cg_reader *reader,
                           const struct cg_config_file *file,
                           const config_setting_t *setting, const char *key,
                           const char *what)
{
    char path[128];
    snprintf(path, sizeof path, "duty.columns%s%.60s",
             key[0] != '\0' ? "." : "", key);
    cg_problem(reader->problems, cg_config_where(file, setting), path, "%s",
               what);
}

static void unknown_column(struct cg_reader *reader,
                           const struct cg_config_file *file,
                           const config_setting_t *setting)
{
    char key[CG_LOGGED][CG_NAME_LENGTH], hint[CG_PROBLEM_LENGTH / 2];
    char what[CG_PROBLEM_LENGTH / 2 + 32];
    const char *keys[CG_LOGGED];
    size_t count = cg_log_keys(key);
    for (size_t i = 0; i < count; i++)
        keys[i] = key[i];
    cg_nearest_hint(config_setting_name(setting), keys, count, hint,
                    sizeof hint);
    snprintf(what, sizeof what, "unknown column, %s", hint);
    column_problem(reader, file, setting, config_setting_name(setting), what);
}

bool cg_heading_of(const config_setting_t *setting,
                   char heading[CG_HEADING_LENGTH], char what[CG_NAME_TROUBLE])
{
    struct cg_value value = cg_value_of(setting);
    size_t length = value.kind == CG_VALUE_TEXT ? strlen(value.text) : 0;
    if (value.kind != CG_VALUE_TEXT)
        snprintf(what, CG_NAME_TROUBLE,
                 "must be the column's heading in quotes (got %s)", value.what);
    else if (length < 1 || length >= CG_HEADING_LENGTH)
        snprintf(what, CG_NAME_TROUBLE,
                 "must be the column's heading, 1 to %d letters",
                 CG_HEADING_LENGTH - 1);
    else
        memcpy(heading, value.text, length + 1);
    return length >= 1 && length < CG_HEADING_LENGTH;
}

static void read_column(struct cg_reader *reader,
                        const struct cg_config_file *file,
                        const config_setting_t *setting,
                        struct cg_log_column column[CG_LOGGED])
{
    const char *key = config_setting_name(setting);
    const struct cg_unit *unit;
    enum cg_logged quantity;
    char what[CG_NAME_TROUBLE] = "given twice, one is allowed";
    if (!cg_log_key(key, &quantity, &unit)) {
        unknown_column(reader, file, setting);
        return;
    }
    if (column[quantity].unit != NULL ||
        !cg_heading_of(setting, column[quantity].heading, what)) {
        column_problem(reader, file, setting, key, what);
        return;
    }
    if (quantity == CG_LOGGED_COOLANT && cg_air_cooled(reader->c)) {
        column_problem(reader, file, setting, key, cg_cooling_other(reader->c));
        return;
    }
    if (quantity == CG_LOGGED_BURN50 &&
        reader->c->combustion.ignition == CG_IGNITION_COMPRESSION) {
        column_problem(reader, file, setting, key,
                       "a diesel burns as it is injected; leave it out");
        return;
    }
    column[quantity].unit = unit;
    snprintf(column[quantity].key, CG_NAME_LENGTH, "%s", key);
}

/* What a run cannot be without, and what does not go together. */
static void check_columns(struct cg_reader *reader,
                          const struct cg_config_file *file,
                          const config_setting_t *columns,
                          const struct cg_log_column column[CG_LOGGED])
{
    bool load = column[CG_LOGGED_LOAD].unit != NULL;
    bool boost = column[CG_LOGGED_BOOST].unit != NULL;
    bool manifold = column[CG_LOGGED_MANIFOLD].unit != NULL;
    if (column[CG_LOGGED_TIME].unit == NULL)
        column_problem(reader, file, columns, "time_s", "missing");
    if (column[CG_LOGGED_SPEED].unit == NULL)
        column_problem(reader, file, columns, "speed_rpm", "missing");
    if (load + boost + manifold != 1)
        column_problem(reader, file, columns, "",
                       "one of boost_kPa (gauge), manifold_kPa (absolute) and "
                       "load_pct is allowed, and one is needed");
    else if (!load &&
             reader->c->combustion.ignition == CG_IGNITION_COMPRESSION)
        column_problem(reader, file, columns, "",
                       "a diesel's load is its fuel: load_pct is needed");
    if (column[CG_LOGGED_LAMBDA].unit != NULL &&
        column[CG_LOGGED_RATIO].unit != NULL)
        column_problem(reader, file, columns, "",
                       "lambda and air_fuel_ratio say the same, one of them "
                       "is allowed");
}

static void read_columns(struct cg_reader *reader,
                         const struct cg_config_file *file,
                         const config_setting_t *log,
                         struct cg_log_column column[CG_LOGGED])
{
    const config_setting_t *columns =
        config_lookup(&file->config, "duty.columns");
    if (columns == NULL || !config_setting_is_group(columns)) {
        column_problem(reader, file, columns != NULL ? columns : log, "",
                       "must be a group { } that names the columns of the "
                       "log: time_s, speed_rpm, boost_kPa ...");
        return;
    }
    for (int i = 0; i < config_setting_length(columns); i++)
        read_column(reader, file, config_setting_get_elem(columns, (unsigned)i),
                    column);
    check_columns(reader, file, columns, column);
}

/* Whether the case has what a log is read by; what is missing is told
 * elsewhere. */
static bool ready(const struct cg_case *c)
{
    return c->engine.speed > 0.0 && c->charge.ambient_pressure > 0.0 &&
           c->charge.boost >= 0.0 && cg_fuel_find(c->fuel.name) != NULL;
}

/* A duty without a name is called as its log, without the ending. */
static void name_by_log(const char *log, struct cg_duty_case *duty)
{
    const char *slash = strrchr(log, '/');
    const char *begin = slash != NULL ? slash + 1 : log;
    const char *dot = strrchr(begin, '.');
    size_t length =
        dot != NULL && dot != begin ? (size_t)(dot - begin) : strlen(begin);
    char name[CG_NAME_LENGTH], trouble[CG_NAME_TROUBLE];
    if (length >= sizeof name)
        length = sizeof name - 1;
    memcpy(name, begin, length);
    name[length] = '\0';
    if (cg_name_fits(name, trouble))
        strcpy(duty->name, name);
}

enum cg_status cg_log_duty_read(struct cg_reader *reader,
                                const struct cg_config_file *file,
                                const config_setting_t *log, bool named,
                                struct cg_error *error)
{
    struct cg_log_column column[CG_LOGGED] = {{.unit = NULL}};
    struct cg_duty_case *duty = &reader->c->duty;
    struct cg_course *course = NULL;
    struct cg_error trouble = {CG_OK, ""};
    struct cg_value value = cg_value_of(log);
    size_t before = reader->problems->count;
    char path[CG_PATH_LENGTH];
    if (value.kind != CG_VALUE_TEXT || value.text[0] == '\0' ||
        !cg_path_in(file, value.text, path)) {
        cg_problem(reader->problems, cg_config_where(file, log), "duty.log",
                   "must be the name of a log, from the config's own folder "
                   "(got %s)",
                   value.what);
        return CG_OK;
    }
    if (!named)
        name_by_log(value.text, duty);
    read_columns(reader, file, log, column);
    if (reader->found != NULL)
        column[CG_LOGGED_FOUND] = *reader->found;
    if (reader->problems->count > before || !ready(reader->c))
        return CG_OK;
    enum cg_status status =
        cg_log_read(path, reader->c, column, reader->courses, &course,
                    reader->problems, &trouble);
    if (status == CG_NO_MEMORY)
        return cg_error_set(error, status, "%s", trouble.text);
    if (status != CG_OK)
        cg_config_file_trouble(reader->problems, cg_config_where(file, log),
                               "duty.log", &trouble);
    duty->course = course;
    return CG_OK;
}
