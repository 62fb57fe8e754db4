/* The allowance for what is not known, the duty's two ends, and how late knock
 * makes the burn, by hand. */
#include <math.h>

#include "lesson_sheet_parts.h"

static const struct cg_lesson_names first = {
    {"ring", "ring's first rise", "ring's expansion", "ring's first growth"},
    {"bore", "bore's first rise", "bore's expansion", "bore's first growth"},
    "first closure"};
static const struct cg_lesson_names last = {
    {"ring", "ring's last rise", "ring's expansion", "ring's last growth"},
    {"bore", "bore's last rise", "bore's expansion", "bore's last growth"},
    "closure by hand"};

void cg_lesson_sheet_over_time(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson *lesson = sheet->lesson;
    struct cg_lesson_over_time *out = &sheet->over_time;
    cg_lesson_sheet_grow(sheet, &first, &lesson->instant[0].growth,
                         &out->start);
    cg_lesson_sheet_grow(sheet, &last, &cg_lesson_tightest(lesson)->growth,
                         &out->tightest);
    out->left = cg_lesson_left(sheet, "gap at the start", &out->start);
}

/* Keeps an input among the largest, in order. */
static void place(struct cg_lesson_unknown *out,
                  const struct cg_contribution *input)
{
    size_t at = out->inputs;
    while (at > 0 && out->input[at - 1]->share < input->share)
        at--;
    if (out->inputs < CG_LESSON_INPUTS)
        out->inputs++;
    for (size_t i = out->inputs; --i > at;)
        out->input[i] = out->input[i - 1];
    if (at < CG_LESSON_INPUTS)
        out->input[at] = input;
}

static void rank(const struct cg_answer *answer, struct cg_lesson_unknown *out)
{
    out->others = 1.0;
    for (size_t i = 0; i < answer->contributions; i++)
        if (answer->contribution[i].share != 0.0)
            place(out, &answer->contribution[i]);
    for (size_t i = 0; i < out->inputs; i++)
        out->others -= out->input[i]->share;
}

/* Variances add, so the rest of them is what stays when one is known. */
static void set_rest(const struct cg_lesson_sheet *sheet,
                     struct cg_figure allowance, struct cg_lesson_unknown *out)
{
    struct cg_figure share =
        cg_figure_of("its share", out->input[0]->share, 2, "");
    out->one_leads = share.value > 0.0 && share.value < 1.0;
    if (!out->one_leads)
        return;
    out->rest =
        cg_hand_work("rest", "", 2, "-", CG_FIGURES(cg_figure_plain(1), share));
    out->root = cg_hand_root("root", "", 2, &out->rest.result);
    out->then = work(sheet, "allowance then", CG_LESSON_GROWTH, "x",
                     CG_FIGURES(allowance, out->root.result));
}

void cg_lesson_sheet_unknown(struct cg_lesson_sheet *sheet)
{
    const struct cg_answer *answer = &sheet->lesson->answer;
    struct cg_lesson_unknown *out = &sheet->unknown;
    struct cg_figure allowance =
        figure(sheet, "allowance", CG_LESSON_GROWTH, answer->top.spread);
    struct cg_figure sigma =
        figure(sheet, "standard deviation", CG_LESSON_GROWTH, answer->sigma);
    rank(answer, out);
    out->known =
        !(allowance.value > 0.0 && sigma.value > 0.0 && out->inputs > 0);
    if (out->known)
        return;
    out->part = cg_hand_work(
        "part of the gap", "%", 0, "/x",
        CG_FIGURES(allowance, sheet->sum.gap.result, cg_figure_plain(100)));
    out->deviations =
        cg_hand_work("so many", "", 2, "/", CG_FIGURES(allowance, sigma));
    set_rest(sheet, allowance, out);
}

void cg_lesson_sheet_knock(struct cg_lesson_sheet *sheet)
{
    const struct cg_performance *at = &sheet->lesson->answer.performance;
    if (sheet->c->combustion.ignition == CG_IGNITION_COMPRESSION)
        return;
    sheet->knock.retard = cg_hand_work(
        "retarded by", "deg", 1, "-",
        CG_FIGURES(cg_figure_of("half burned", at->burn50_deg, 1, "deg"),
                   cg_figure_of("without knock",
                                sheet->c->combustion.burn50_deg, 1, "deg")));
}
