#include "log_table.h"

#include <math.h>

#include "constants.h"
#include "duties_table.h"
#include "table.h"

/* What was logged at a moment of the run, and what it closes then. */
static void write_moment(struct cg_table *table,
                         const struct cg_history *history,
                         const struct cg_moment *moment)
{
    const struct cg_course *course = history->c->duty.course;
    double of[CG_CHANNELS], least, at_top;
    cg_course_at(course, moment->time, of);
    cg_history_gaps(history, moment, 0.0, &least, &at_top);
    const double values[] = {course->log.begin + moment->time,
                             60.0 * moment->speed,
                             1e-3 * moment->manifold_pressure,
                             of[CG_CHANNEL_LAMBDA],
                             of[CG_CHANNEL_BURN50],
                             of[CG_CHANNEL_COOLANT] - CG_ZERO_CELSIUS,
                             of[CG_CHANNEL_OIL] - CG_ZERO_CELSIUS,
                             of[CG_CHANNEL_AIR] - CG_ZERO_CELSIUS,
                             -1e3 * least};
    cg_table_row(table, values, sizeof values / sizeof values[0]);
}

static void write_tightest(struct cg_table *table, double begin,
                           const struct cg_extremes *e)
{
    for (int i = 0; i < e->peaks; i++) {
        const double values[] = {begin + e->peak[i].time,
                                 60.0 * e->peak[i].speed,
                                 NAN,
                                 NAN,
                                 NAN,
                                 NAN,
                                 NAN,
                                 NAN,
                                 1e3 * e->peak[i].closure};
        cg_table_row(table, values, sizeof values / sizeof values[0]);
    }
}

enum cg_status cg_log_table_write(const char *dir, const struct cg_table_of *of,
                                  const struct cg_case *c,
                                  const struct cg_answer *answer,
                                  const struct cg_history *history,
                                  struct cg_error *error)
{
    const struct cg_course *course = c->duty.course;
    struct cg_table_head head = {
        "The logged run in the log's own time, and its tightest instants", of,
        "log_s  speed_rpm  manifold_kPa  lambda  burn50_deg  coolant_C  oil_C  "
        "air_C  closure_mm  block",
        "manifold: absolute; nan: not logged; closure: of the top ring"};
    struct cg_table *table;
    if (course == NULL || course->log.file[0] == '\0')
        return cg_table_drop(dir, "log.dat", error);
    enum cg_status status = cg_table_open(dir, "log.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_file_to_note(table, answer);
    cg_table_note(table, "log: %s", course->log.file);
    cg_table_block(table, "run");
    for (size_t i = 0; i < history->moments; i++)
        write_moment(table, history, &history->moment[i]);
    cg_table_block(table, "tightest");
    write_tightest(table, course->log.begin, &answer->extremes);
    return cg_table_close(table, CG_OK, error);
}
