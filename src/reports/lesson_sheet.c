#include "lesson_sheet.h"

#include <math.h>
#include <string.h>

#include "advice.h"
#include "lesson_sheet_parts.h"

const struct cg_lesson_growing *
cg_lesson_own(const struct cg_lesson_sheet *sheet)
{
    return &sheet->boost[sheet->lesson->own];
}

double cg_lesson_file_to(const struct cg_lesson_sheet *sheet)
{
    double to = sheet->lesson->answer.file_to_top.file_to;
    return isnan(to) ? sheet->lesson->answer.top.cold_gap : to;
}

/* Where it is tightest at the start, the instants go on to the end. */
const struct cg_lesson_instant *
cg_lesson_tightest(const struct cg_lesson *lesson)
{
    bool later = lesson->answer.extremes.time > 0.0;
    return &lesson->instant[later ? CG_LESSON_INSTANTS - 1 : 0];
}

void cg_lesson_sheet_set(const struct cg_case *c,
                         const struct cg_lesson *lesson, bool inch,
                         struct cg_lesson_sheet *sheet)
{
    memset(sheet, 0, sizeof *sheet);
    sheet->c = c;
    sheet->lesson = lesson;
    sheet->inch = inch;
    sheet->arc = cg_lesson_work(
        inch, "arc", CG_LESSON_LENGTH, "x",
        CG_FIGURES(
            cg_figure_plain(3.1416),
            cg_lesson_figure(inch, "bore", CG_LESSON_LENGTH, c->engine.bore)));
    cg_lesson_sheet_charge(sheet);
    cg_lesson_sheet_burn(sheet);
    cg_lesson_sheet_ladder(sheet);
    cg_lesson_sheet_layers(sheet);
    cg_lesson_sheet_growth(sheet);
    cg_lesson_sheet_ends(sheet);
    cg_lesson_sheet_leak(sheet);
    cg_lesson_sheet_sum(sheet);
    cg_lesson_sheet_over_time(sheet);
    cg_lesson_sheet_unknown(sheet);
    cg_lesson_sheet_knock(sheet);
}
