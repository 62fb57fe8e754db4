/* The duty: its segments or its log, the user's own or of a file of its own,
 * shipped or beside the user's config. */
#define _POSIX_C_SOURCE 200809L /* access */

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "config_build.h"
#include "config_parts.h"
#include "course_lag.h"
#include "data_folder.h"

static config_setting_t *find_segments(const struct cg_config_file *file)
{
    return config_lookup(&file->config, "duty.segments");
}

static config_setting_t *find_log(const struct cg_config_file *file)
{
    return config_lookup(&file->config, "duty.log");
}

bool cg_duty_path(const struct cg_reader *reader, const char *name,
                  const struct cg_data_names *shipped,
                  char path[CG_PATH_LENGTH])
{
    char file[CG_NAME_LENGTH + 8];
    for (size_t i = 0; i < shipped->count; i++)
        if (strcmp(shipped->name[i], name) == 0)
            return cg_data_path("duties", name, path, NULL) == CG_OK;
    snprintf(file, sizeof file, "%s.cfg", name);
    return reader->file.folder != NULL &&
           cg_path_in(&reader->file, file, path) && access(path, F_OK) == 0;
}

/* What the file says the duty is: segments, or a log. */
static enum cg_status read_own(struct cg_reader *reader,
                               const struct cg_config_file *file, bool named,
                               struct cg_error *error)
{
    config_setting_t *segments = find_segments(file), *log = find_log(file);
    if (segments != NULL && log != NULL)
        cg_problem(reader->problems, cg_config_where(file, log), "duty.log",
                   "does not go with duty.segments, one of the two is "
                   "allowed");
    if (segments != NULL)
        return cg_segments_read(reader, file, segments, error);
    return cg_log_duty_read(reader, file, log, named, error);
}

/* Opens the duty's file, reader->duty_path; start and cruise_* of the user's
 * stay. */
static enum cg_status read_file(struct cg_reader *reader,
                                struct cg_error *error)
{
    const char *path = reader->duty_path;
    enum cg_status status = cg_config_file_open(&reader->duty, path,
                                                reader->problems, error);
    if (status != CG_OK)
        return status;
    cg_tree_read(reader, &reader->duty, "duty", CG_GIVEN_KEEP);
    if (find_segments(&reader->duty) != NULL || find_log(&reader->duty) != NULL)
        return read_own(reader, &reader->duty, true, error);
    cg_problem(reader->problems, (struct cg_where){path, 0, NULL},
               "duty.segments", "missing");
    return CG_OK;
}

/* Segments of the user's own are not the shipped duty whose name they took. */
static void rename_own(struct cg_duty_case *duty)
{
    char name[CG_NAME_LENGTH];
    snprintf(name, sizeof name, "own_%.*s", CG_NAME_LENGTH - 5, duty->name);
    strcpy(duty->name, name);
}

/* Whether --set names the duty that the file's own segments are. */
static bool names_own(const struct cg_reader *reader)
{
    const char *name = "own";
    (void)config_lookup_string(&reader->file.config, "duty.name", &name);
    return strcmp(reader->c->duty.name, name) == 0;
}

enum cg_status cg_duty_read(struct cg_reader *reader, struct cg_error *error)
{
    struct cg_duty_case *duty = &reader->c->duty;
    const struct cg_origin *named = cg_origin_of(reader, "duty.name");
    config_setting_t *own = find_segments(&reader->file);
    config_setting_t *log = find_log(&reader->file);
    struct cg_data_names names;
    enum cg_status status = cg_data_list("duties", &names, error);
    if (status != CG_OK)
        return status;
    bool shipped = false;
    for (size_t i = 0; i < names.count; i++)
        shipped = shipped || strcmp(names.name[i], duty->name) == 0;
    /* A duty asked for by --set replaces the segments of the file. */
    if ((own != NULL || log != NULL) &&
        (!(named->given && named->where.file == NULL) || names_own(reader))) {
        if (!named->given)
            strcpy(duty->name, "own");
        else if (shipped)
            rename_own(duty);
        return read_own(reader, &reader->file, named->given, error);
    }
    if (cg_duty_path(reader, duty->name, &names, reader->duty_path))
        return read_file(reader, error);
    cg_name_unknown(reader, "duty.name", "unknown duty", duty->name, names.list,
                    names.count);
    return CG_OK;
}

enum cg_status cg_duty_named(struct cg_reader *reader, const char *name,
                             const char *path, struct cg_duty_case *duty,
                             struct cg_error *error)
{
    struct cg_case c = *reader->c, fresh;
    struct cg_reader other = {.problems = reader->problems,
                              .c = &c,
                              .courses = reader->courses,
                              .found = reader->found};
    size_t settings;
    (void)cg_settings(&settings);
    other.origin = calloc(settings, sizeof other.origin[0]);
    if (other.origin == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    cg_case_begin(&fresh);
    c.duty = fresh.duty;
    snprintf(c.duty.name, sizeof c.duty.name, "%s", name);
    snprintf(other.duty_path, sizeof other.duty_path, "%s", path);
    enum cg_status status = read_file(&other, error);
    (void)cg_case_complete(&c);
    if (status == CG_OK)
        *duty = c.duty;
    cg_config_file_close(&other.duty);
    free(other.origin);
    return status;
}

enum cg_status cg_duty_lag(const struct cg_reader *reader,
                           const struct cg_case *c, struct cg_duty_case *duty,
                           struct cg_error *error)
{
    struct cg_course *course = NULL;
    bool logged = duty->course != NULL && duty->course->log.file[0] != '\0';
    if (reader->problems->count > 0 || logged || !cg_case_lags(c) ||
        (duty->course == NULL && duty->segments < 1))
        return CG_OK;
    enum cg_status status =
        cg_course_lag(c, duty, reader->courses, &course, error);
    if (status == CG_OK)
        duty->course = course;
    return status;
}
