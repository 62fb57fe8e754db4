/* Any bytes as a logged run; the first chooses the columns asked for. */
#include "fuzz.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "log_course.h"
#include "setting.h"

static void ask(const char *key, const char *heading,
                struct cg_log_column column[CG_LOGGED])
{
    enum cg_logged quantity;
    const struct cg_unit *unit;
    if (!cg_log_key(key, &quantity, &unit))
        abort();
    column[quantity].unit = unit;
    strcpy(column[quantity].heading, heading);
    strcpy(column[quantity].key, key);
}

static void choose(uint8_t by, struct cg_log_column column[CG_LOGGED])
{
    static const char *const load[] = {"boost_kPa", "manifold_bar", "load_pct",
                                       "boost_psi"};
    ask("time_s", "t", column);
    ask("speed_rpm", "n", column);
    ask(load[by & 3], "p", column);
    if (by & 4)
        ask(by & 8 ? "lambda" : "air_fuel_ratio", "mix", column);
    if (by & 16)
        ask("burn50_deg", "burn", column);
    if (by & 32)
        ask("coolant_F", "water", column);
    if (by & 64)
        ask("oil_C", "oil", column);
    if (by & 128)
        ask("air_C", "air", column);
}

/* What was taken is a course that a case may hold. */
static void check(const struct cg_course *course)
{
    if (course->rows < 2 ||
        (course->all_rows > 0 && course->all_rows < course->rows))
        abort();
    for (size_t i = 0; i < course->rows; i++) {
        const struct cg_course_row *row = &course->row[i];
        if (!isfinite(row->time) || (i > 0 && !(row->time > row[-1].time)) ||
            !(row->of[CG_CHANNEL_LOAD] >= 0.0 &&
              row->of[CG_CHANNEL_LOAD] <= CG_COURSE_MOST_LOAD) ||
            !(row->of[CG_CHANNEL_SPEED] >= CG_LOG_STANDS &&
              row->of[CG_CHANNEL_SPEED] <= 1.5 * 110.0))
            abort();
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    static struct cg_case c;
    struct cg_log_column column[CG_LOGGED] = {{.unit = NULL}};
    struct cg_problems problems = {.count = 0};
    struct cg_course *list = NULL, *course = NULL;
    struct cg_error error = {CG_OK, ""};
    if (c.engine.speed == 0.0) {
        cg_case_begin(&c);
        c.engine.speed = 110.0;
        c.charge.boost = 1e5;
        strcpy(c.fuel.name, "gasoline");
    }
    if (size == 0)
        return 0;
    choose(bytes[0], column);
    enum cg_status status =
        cg_log_read(fuzz_file(bytes + 1, size - 1), &c, column, &list, &course,
                    &problems, &error);
    if (status != CG_OK && status != CG_BAD_INPUT)
        abort();
    if (status == CG_OK && (course == NULL) == (problems.count == 0))
        abort(); /* refused without a reason, or taken with one */
    if (course != NULL)
        check(course);
    cg_courses_free(list);
    return 0;
}
