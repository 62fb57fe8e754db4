#define _XOPEN_SOURCE 700 /* open_memstream */

#include "page_lesson.h"

#include <stdlib.h>

#include "constants.h"
#include "page_values.h"
#include "show.h"

/* A text of the screen on its way to the page. */
struct text {
    FILE *out;
    char *text;
    size_t length;
};

static enum cg_status text_begin(struct text *text, struct cg_error *error)
{
    text->text = NULL;
    text->out = open_memstream(&text->text, &text->length);
    return text->out != NULL
               ? CG_OK
               : cg_error_set(error, CG_NO_MEMORY, "out of memory");
}

static enum cg_status text_end(struct text *text, struct cg_error *error)
{
    bool whole = ferror(text->out) == 0;
    if (fclose(text->out) == 0 && whole && text->text != NULL)
        return CG_OK;
    free(text->text);
    text->text = NULL;
    return cg_error_set(error, CG_NO_MEMORY, "out of memory");
}

static void engine_part(struct cg_page *page,
                        const struct cg_lesson_sheet *sheet,
                        enum cg_lesson_level level)
{
    const struct cg_case *c = sheet->c;
    cg_page_section(page, "Engine");
    cg_page_values(page, "What the numbers below are of");
    cg_page_plain(page, "Cylinders", "%d", c->engine.cylinders);
    cg_page_length(page, "Bore", c->engine.bore);
    cg_page_length(page, "Stroke", c->engine.stroke);
    cg_page_plain(page, "Speed", "%.0f rpm", c->engine.speed * 60.0);
    cg_page_both(page, "Boost", cg_show_boost(c->charge.boost, false).text,
                 cg_show_boost(c->charge.boost, true).text);
    cg_page_plain(page, "Top ring", "%s", c->ring[CG_RING_TOP].material);
    cg_page_plain(page, "Bore's metal", "%s", c->bore.material);
    cg_page_values_end(page);
    cg_page_say(page, "Level: %s.", cg_lesson_level_text(level));
    cg_page_say(page, "%s", cg_lesson_how());
}

/* One row of growth: what, then ring, bore, ring's and bore's growth. */
static void growth_row(struct cg_page *page, const char *name,
                       const struct cg_lesson_sheet *sheet,
                       const struct cg_lesson_growth *at, bool inch)
{
    double around = CG_PI * sheet->c->engine.bore;
    struct cg_text ring = cg_show_temperature(at->ring_temperature, inch);
    struct cg_text bore = cg_show_temperature(at->wall_temperature, inch);
    struct cg_text grown = cg_show_length(around * at->ring_strain, inch);
    struct cg_text back = cg_show_length(around * at->bore_strain, inch);
    struct cg_text closure = cg_show_length(at->closure, inch);
    const char *const cells[] = {name,       ring.text, bore.text,
                                 grown.text, back.text, closure.text};
    cg_page_row(page, cells, 6, NULL);
}

static void boosts_table(struct cg_page *page,
                         const struct cg_lesson_sheet *sheet, bool inch)
{
    static const char *const heads[] = {"Boost",     "Ring",      "Bore",
                                        "Ring grew", "Bore grew", "Closure"};
    cg_page_table(page,
                  inch ? "The model at three boosts, inch"
                       : "The model at three boosts, metric",
                  heads, 6);
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++)
        growth_row(page,
                   cg_show_boost(sheet->lesson->boost[i].boost, inch).text,
                   sheet, &sheet->lesson->boost[i].growth, inch);
    cg_page_table_end(page);
}

static void duty_table(struct cg_page *page,
                       const struct cg_lesson_sheet *sheet, bool inch)
{
    static const char *const heads[] = {"Time",      "Ring",      "Bore",
                                        "Ring grew", "Bore grew", "Closure"};
    cg_page_table(page,
                  inch ? "The model over the duty, inch"
                       : "The model over the duty, metric",
                  heads, 6);
    for (size_t i = 0; i < CG_LESSON_INSTANTS; i++) {
        char time[32];
        snprintf(time, sizeof time, "%.1f s", sheet->lesson->instant[i].time);
        growth_row(page, time, sheet, &sheet->lesson->instant[i].growth, inch);
    }
    cg_page_table_end(page);
}

/* What a page can show beside the lines. */
static void add_to(struct cg_page *page, int step,
                   const struct cg_lesson_sheet *sheet)
{
    double gap = sheet->lesson->answer.top.cold_gap;
    bool inch = cg_page_inch(page);
    if (step == CG_LESSON_AT_BOOSTS) {
        cg_page_figure(
            page, "lesson", "Ring, bore and gap against boost",
            "Ring's growth rises faster with boost than the "
            "bore's; between them lies the closure, above the ring "
            "the gap that is left while hot, at %s of cold gap for "
            "the highest boost.",
            cg_show_gap_up(sheet->lesson->boost[CG_LESSON_BOOSTS - 1].cold_gap,
                           false)
                .text);
        boosts_table(page, sheet, inch);
        boosts_table(page, sheet, !inch);
    } else if (step == CG_LESSON_AT_DUTY) {
        duty_table(page, sheet, inch);
        duty_table(page, sheet, !inch);
    } else if (step == CG_LESSON_AT_GAP &&
               !sheet->lesson->answer.verdict.beyond) {
        cg_page_answer(page, "Top ring: file to at least",
                       cg_show_length_up(gap, false).text,
                       cg_show_length_up(gap, true).text);
    }
}

static enum cg_status step_part(struct cg_page *page, int step,
                                const struct cg_lesson_sheet *sheet,
                                enum cg_lesson_level level,
                                struct cg_error *error)
{
    char title[96];
    struct text text;
    enum cg_status status = text_begin(&text, error);
    if (status != CG_OK)
        return status;
    cg_lesson_print(text.out, step, sheet, level);
    status = text_end(&text, error);
    if (status != CG_OK)
        return status;
    snprintf(title, sizeof title, "%d. %s", step + 1, cg_lesson_title(step));
    cg_page_section(page, title);
    cg_page_lines(page, text.text);
    add_to(page, step, sheet);
    free(text.text);
    return CG_OK;
}

/* Questions are a list; answers are lines of a step's kind. */
static enum cg_status questions_part(struct cg_page *page, bool answers,
                                     const struct cg_lesson_sheet *sheet,
                                     enum cg_lesson_level level,
                                     struct cg_error *error)
{
    struct text text;
    enum cg_status status = text_begin(&text, error);
    if (status != CG_OK)
        return status;
    if (answers)
        cg_lesson_answer(text.out, sheet, level);
    else
        cg_lesson_ask(text.out, sheet, level);
    status = text_end(&text, error);
    if (status != CG_OK)
        return status;
    cg_page_section(page, answers ? "Answers" : "Questions");
    if (answers)
        cg_page_lines(page, text.text);
    else
        cg_page_steps(page, text.text);
    free(text.text);
    return CG_OK;
}

enum cg_status cg_page_lesson(struct cg_page *page,
                              const struct cg_lesson_sheet *sheet,
                              enum cg_lesson_level level, bool answers,
                              struct cg_error *error)
{
    enum cg_status status = CG_OK;
    engine_part(page, sheet, level);
    for (int i = 0; i < CG_LESSON_STEPS && status == CG_OK; i++)
        status = step_part(page, i, sheet, level, error);
    if (status == CG_OK)
        status = questions_part(page, false, sheet, level, error);
    if (status == CG_OK && answers)
        status = questions_part(page, true, sheet, level, error);
    return status;
}
