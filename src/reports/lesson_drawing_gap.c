/* The end gap seen from above: cold, hot, and at the worst allowed for. */
#include <math.h>
#include <stdio.h>

#include "cautions.h"
#include "lesson_drawing.h"
#include "lesson_sheet_parts.h"
#include "svg_draw.h"

#define WIDTH 360.0 /* of the drawing */
#define MIDDLE 180.0
#define WIDEST 200.0 /* gap */
#define LETTER 11.0
#define FIRST 112.0 /* y of the first row, and from row to row */
#define ROW 90.0
#define BORE 30.0 /* of a row: bore, ring, end of ring */
#define RING 44.0
#define END 70.0

enum { ROWS = 3 };

/* The sum as it is printed: each gap is the one before less a part. */
struct gaps {
    struct cg_figure closure, allowance, least; /* least that stays open */
    struct cg_hand hot, worst;
    struct cg_figure row[ROWS];
    double scale; /* units for each unit of the figures */
};

static struct gaps gaps_of(const struct cg_lesson_sheet *sheet)
{
    const struct cg_gap_sum *sum = &sheet->lesson->answer.top;
    struct gaps out = {
        .closure = figure(sheet, "closure", CG_LESSON_GROWTH, sum->closure),
        .allowance = figure(sheet, "allowance", CG_LESSON_GROWTH, sum->spread),
        .least = figure(sheet, "least", CG_LESSON_GROWTH, sum->residual)};
    double widest = 0.0;
    out.row[0] = cg_lesson_gap_figure(sheet, "cold", cg_lesson_file_to(sheet));
    out.hot = work(sheet, "hot", CG_LESSON_GROWTH, "-",
                   CG_FIGURES(out.row[0], out.closure));
    out.worst = work(sheet, "worst", CG_LESSON_GROWTH, "-",
                     CG_FIGURES(out.hot.result, out.allowance));
    out.row[1] = out.hot.result;
    out.row[2] = out.worst.result;
    for (int i = 0; i < ROWS; i++)
        widest = fmax(widest, out.row[i].value);
    out.scale = widest > 0.0 ? WIDEST / widest : 0.0;
    return out;
}

/* Bore above, the ring's ends below it; the gap by an arrow. */
static void draw_strip(struct cg_draw *draw, double y, double gap)
{
    double half = 0.5 * fmax(gap, 0.0);
    cg_draw_box(draw, 8.0, y + BORE, WIDTH - 16.0, RING - BORE, CG_GREY_MIDDLE);
    cg_draw_box(draw, 8.0, y + RING, MIDDLE - half - 8.0, END - RING,
                CG_GREY_DARK);
    cg_draw_box(draw, MIDDLE + half, y + RING, MIDDLE - half - 8.0, END - RING,
                CG_GREY_DARK);
    cg_draw_middle(draw, (struct cg_point){MIDDLE, y + RING - 3.5}, 10.0,
                   "bore");
    cg_draw_middle(draw, (struct cg_point){36.0, y + 0.5 * (RING + END) + 4.0},
                   LETTER, "ring");
    cg_draw_middle(
        draw, (struct cg_point){WIDTH - 36.0, y + 0.5 * (RING + END) + 4.0},
        LETTER, "ring");
    if (half > 0.0)
        cg_draw_span(draw,
                     (struct cg_point){MIDDLE - half, y + 0.5 * (RING + END)},
                     (struct cg_point){MIDDLE + half, y + 0.5 * (RING + END)});
}

static void draw_rows(struct cg_draw *draw, const struct gaps *gaps,
                      const char *duty)
{
    static const char *const head[ROWS] = {
        "Cold, filed to", "Hot, by the middle estimate",
        "Hot, with all the allowance used up"};
    char more[ROWS][160];
    snprintf(more[0], sizeof more[0], "measured in the bore it will run in");
    snprintf(more[1], sizeof more[1], "closure %s, duty %s",
             cg_figure_text(&gaps->closure).text, duty);
    snprintf(more[2], sizeof more[2], "allowance %s; %s must stay open",
             cg_figure_text(&gaps->allowance).text,
             cg_figure_text(&gaps->least).text);
    for (int i = 0; i < ROWS; i++) {
        double y = FIRST + i * ROW;
        cg_draw_words(draw, (struct cg_point){8.0, y + 9.0}, 12.0, "%s: %s",
                      head[i], cg_figure_text(&gaps->row[i]).text);
        cg_draw_words(draw, (struct cg_point){8.0, y + 23.0}, LETTER, "%s",
                      more[i]);
        draw_strip(draw, y, gaps->scale * gaps->row[i].value);
    }
}

/* Where the ends stood cold, and how near they may come. */
static void draw_marks(struct cg_draw *draw, const struct gaps *gaps)
{
    double cold = 0.5 * gaps->scale * gaps->row[0].value;
    double least = 0.5 * gaps->scale * gaps->least.value;
    for (int side = -1; side <= 1; side += 2) {
        for (int i = 1; i < ROWS; i++)
            cg_draw_dashes(
                draw,
                (struct cg_point){MIDDLE + side * cold, FIRST + i * ROW + RING},
                (struct cg_point){MIDDLE + side * cold,
                                  FIRST + i * ROW + END + 6.0});
        cg_draw_line(draw,
                     (struct cg_point){MIDDLE + side * least,
                                       FIRST + 2 * ROW + END - 8.0},
                     (struct cg_point){MIDDLE + side * least,
                                       FIRST + 2 * ROW + END + 6.0},
                     1.5);
    }
}

/* The whole ring, small, and a box around what the rows show. */
static void draw_whole(struct cg_draw *draw,
                       const struct cg_lesson_sheet *sheet,
                       const struct gaps *gaps)
{
    const struct cg_case *c = sheet->c;
    struct cg_figure bore =
        figure(sheet, "bore", CG_LESSON_LENGTH, c->engine.bore);
    struct cg_figure depth =
        figure(sheet, "depth", CG_LESSON_LENGTH, c->ring[CG_RING_TOP].depth);
    double radius = 26.0, thick = 2.0 * radius * depth.value / bore.value;
    double times =
        10.0 * round(0.1 * gaps->scale * bore.value / (2.0 * radius));
    struct cg_point middle = {42.0, 68.0};
    cg_draw_circle(draw, middle, radius, 0.8);
    cg_draw_circle(draw, middle, radius - 0.5 * thick, thick);
    cg_draw_line(draw, (struct cg_point){middle.x - 5.0, 36.0},
                 (struct cg_point){middle.x + 5.0, 36.0}, 1.0);
    cg_draw_line(draw, (struct cg_point){middle.x - 5.0, 47.0},
                 (struct cg_point){middle.x + 5.0, 47.0}, 1.0);
    cg_draw_line(draw, (struct cg_point){middle.x - 5.0, 36.0},
                 (struct cg_point){middle.x - 5.0, 47.0}, 1.0);
    cg_draw_line(draw, (struct cg_point){middle.x + 5.0, 36.0},
                 (struct cg_point){middle.x + 5.0, 47.0}, 1.0);
    cg_draw_words(draw, (struct cg_point){84.0, 46.0}, LETTER,
                  "Seen from above; the bore is %s,",
                  cg_figure_text(&bore).text);
    cg_draw_words(draw, (struct cg_point){84.0, 61.0}, LETTER,
                  "the ring %s deep. Below: the box,",
                  cg_figure_text(&depth).text);
    cg_draw_words(draw, (struct cg_point){84.0, 76.0}, LETTER,
                  "its gap %.0f times as wide.", times);
}

void cg_lesson_draw_gap(const struct cg_lesson_sheet *sheet,
                        struct cg_lesson_drawing *out)
{
    struct gaps gaps = gaps_of(sheet);
    double height = FIRST + ROWS * ROW + 40.0;
    struct cg_draw draw;
    out->name = "lesson_gap";
    out->title = "The top ring's gap, cold and hot";
    snprintf(
        out->words, sizeof out->words,
        "The ring's ends seen from above, to scale of this engine: filed "
        "to %s cold; hot, by the middle estimate, %s are left; with all "
        "the allowance used up %s, and %s must stay open.",
        cg_figure_text(&gaps.row[0]).text, cg_figure_text(&gaps.row[1]).text,
        cg_figure_text(&gaps.row[2]).text, cg_figure_text(&gaps.least).text);
    cg_draw_begin(&draw, WIDTH, height, out->title, out->words);
    cg_draw_words(&draw, (struct cg_point){8.0, 18.0}, 13.0, "%s", out->title);
    draw_whole(&draw, sheet, &gaps);
    draw_rows(&draw, &gaps, sheet->c->duty.name);
    draw_marks(&draw, &gaps);
    cg_draw_words(&draw, (struct cg_point){8.0, height - 28.0}, LETTER,
                  "Dashed: the ends cold. Bars: the least gap.");
    cg_draw_words(&draw, (struct cg_point){8.0, height - 10.0}, 10.0, "%s",
                  cg_cautions_list()[0]);
    out->svg = cg_draw_end(&draw);
}
