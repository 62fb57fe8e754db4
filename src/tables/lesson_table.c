#include "lesson_table.h"

#include <math.h>

#include "constants.h"
#include "table.h"

enum { COLUMNS = 9 }; /* and the block's */

/* Ring and bore at their tightest, the columns both blocks share. */
static void put_growth(const struct cg_case *c,
                       const struct cg_lesson_growth *growth, double *values)
{
    double around = CG_PI * c->engine.bore * 1e3;
    values[0] = growth->ring_temperature - CG_ZERO_CELSIUS;
    values[1] = around * growth->ring_strain;
    values[2] = around * growth->bore_strain - growth->choke * 1e3;
    values[3] = growth->closure * 1e3;
}

static void write_boosts(struct cg_table *table, const struct cg_case *c,
                         const struct cg_lesson *lesson)
{
    cg_table_block(table, "boosts");
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++) {
        const struct cg_lesson_boost *at = &lesson->boost[i];
        double values[COLUMNS] = {at->boost / 1e3};
        put_growth(c, &at->growth, values + 1);
        values[5] = at->cold_gap * 1e3;
        values[6] = at->growth.wall_temperature - CG_ZERO_CELSIUS;
        values[7] = at->duty_closure * 1e3;
        values[8] = NAN;
        cg_table_row(table, values, COLUMNS);
    }
}

static void write_duty(struct cg_table *table, const struct cg_case *c,
                       const struct cg_lesson *lesson)
{
    cg_table_block(table, "duty");
    for (size_t i = 0; i < CG_LESSON_INSTANTS; i++) {
        const struct cg_lesson_instant *at = &lesson->instant[i];
        double values[COLUMNS] = {c->charge.boost / 1e3};
        put_growth(c, &at->growth, values + 1);
        values[5] = lesson->answer.verdict.gap * 1e3;
        values[6] = at->growth.wall_temperature - CG_ZERO_CELSIUS;
        values[7] = lesson->answer.extremes.closure * 1e3;
        values[8] = at->time;
        cg_table_row(table, values, COLUMNS);
    }
}

enum cg_status cg_lesson_table_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_case *c,
                                     const struct cg_lesson *lesson,
                                     struct cg_error *error)
{
    struct cg_table_head head = {
        "Growth of top ring and bore where they are tightest: settled at "
        "rated speed, full load, at three boosts; then over the duty",
        of,
        "boost_kPa  ring_C  ring_growth_mm  bore_growth_mm  closure_mm  "
        "cold_gap_mm  bore_C  duty_closure_mm  time_s  block",
        "growth: of arc; cold gap: for the duty; time: nan where settled"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "lesson.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    write_boosts(table, c, lesson);
    write_duty(table, c, lesson);
    return cg_table_close(table, CG_OK, error);
}
