/* The lesson's steps over boost and over time. */
#include "constants.h"
#include "report_lesson_parts.h"
#include "show.h"

static void tell_one_boost(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet, size_t i)
{
    const struct cg_lesson_growing *grown = &sheet->boost[i];
    struct cg_hand_text lines = {""};
    cg_hand_add(&lines, &grown->ring, false);
    cg_hand_add(&lines, &grown->bore, false);
    cg_hand_add(&lines, &grown->closure, false);
    cg_report_say(
        report, "Boost %s, ring at %s, bore at %s:",
        cg_show_boost(sheet->lesson->boost[i].boost, sheet->inch).text,
        cg_figure_text(&grown->ring_rise.figure[0]).text,
        cg_figure_text(&grown->bore_rise.figure[0]).text);
    cg_report_lines(report, lines.text);
}

/* Ring, bore and the growth of each around the bore, what a choke takes taken
 * off [K] [m]. */
static void put_growth(struct cg_report *report,
                       const struct cg_lesson_sheet *sheet,
                       const struct cg_lesson_growth *at)
{
    double around = CG_PI * sheet->c->engine.bore;
    cg_report_cell(report, at->ring_temperature);
    cg_report_cell(report, at->wall_temperature);
    cg_report_cell(report, around * at->ring_strain);
    cg_report_cell(report, around * at->bore_strain - at->choke);
}

#define GROWTH_COLUMNS                                                         \
    {"ring", "Ring", CG_SHOW_TEMPERATURE},                                     \
        {"bore", "Bore", CG_SHOW_TEMPERATURE},                                 \
        {"ring_growth", "Ring grew", CG_SHOW_SMALL_LENGTH},                    \
        {"bore_growth", "Bore grew", CG_SHOW_SMALL_LENGTH},                    \
    {                                                                          \
        "closure", "Closure", CG_SHOW_SMALL_LENGTH                             \
    }

static void tell_model(struct cg_report *report,
                       const struct cg_lesson_sheet *sheet)
{
    static const struct cg_report_column columns[] = {
        {"boost", "Boost", CG_SHOW_BOOST},
        GROWTH_COLUMNS,
        {"cold_gap_top", "Gap needed", CG_SHOW_GAP_ASKED}};
    cg_report_table(report, "boosts",
                    "By the model; the gap needed is for the whole duty",
                    columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++) {
        const struct cg_lesson_boost *at = &sheet->lesson->boost[i];
        cg_report_cell(report, at->boost);
        put_growth(report, sheet, &at->growth);
        cg_report_cell(report, at->growth.closure);
        cg_report_cell(report, at->cold_gap);
    }
}

void cg_lesson_tell_boosts(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet, bool second)
{
    double most = sheet->lesson->boost[CG_LESSON_BOOSTS - 1].cold_gap;
    bool blower = sheet->c->charge.charger == CG_CHARGER_BELT;
    (void)second;
    if (sheet->lesson->own == 0)
        cg_report_say(report, "Suppose a %s pushes air in.",
                      blower ? "blower" : "turbine");
    cg_report_say(report, "The engine is settled at full load. Ring and bore "
                          "grow as in steps 4 and 5.");
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++)
        tell_one_boost(report, sheet, i);
    cg_report_say(report, "From no boost to the highest:");
    cg_lesson_sums(report, CG_SUMS(&sheet->sum.more, &sheet->sum.per_boost));
    cg_report_figure(report, "lesson", "Ring, bore and gap against boost",
                     "The ring's growth rises faster with boost than the "
                     "bore's. Between them lies the closure. Above the ring "
                     "lies the gap that is left while hot, at %s of cold gap "
                     "for the highest boost.",
                     cg_show_gap_up(most, sheet->inch).text);
    tell_model(report, sheet);
}

static double shown(double length, bool inch)
{
    return cg_quantity_shown(cg_quantity(CG_SHOW_SMALL_LENGTH, length), inch);
}

/* The closure is of the growths as they are shown, in the units that come
 * first: whoever takes one from the other gets it. */
static void put_instant(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet,
                        const struct cg_lesson_instant *at)
{
    double around = CG_PI * sheet->c->engine.bore;
    double ring = shown(around * at->growth.ring_strain, sheet->inch);
    double bore = shown(around * at->growth.bore_strain - at->growth.choke,
                        sheet->inch);
    cg_report_cell(report, at->time);
    cg_report_cell(report, at->speed);
    cg_report_cell(report, at->load);
    put_growth(report, sheet, &at->growth);
    cg_report_cell(report, ring - bore);
}

void cg_lesson_tell_duty(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    static const struct cg_report_column columns[] = {
        {"time", "Time", CG_SHOW_TIME},
        {"speed", "Speed", CG_SHOW_SPEED},
        {"load", "Load", CG_SHOW_SHARE},
        GROWTH_COLUMNS};
    const struct cg_answer *answer = &sheet->lesson->answer;
    (void)second;
    cg_report_say(report,
                  "Metal takes time to warm. The duty is %s, %.4g s. In every "
                  "line the closure is the ring's growth less the bore's%s.",
                  sheet->c->duty.name, answer->duration,
                  sheet->c->bore.choke.narrower > 0.0
                      ? ", with what the choke takes taken off the bore's"
                      : "");
    cg_report_table(report, "duty", "Over the duty", columns,
                    sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < CG_LESSON_INSTANTS; i++)
        put_instant(report, sheet, &sheet->lesson->instant[i]);
    cg_lesson_tell_start(report, sheet);
    cg_lesson_tell_tightest(report, sheet);
}
