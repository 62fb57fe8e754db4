/* The top ring in its groove and bore, cut through. */
#include <math.h>
#include <stdio.h>

#include "cautions.h"
#include "lesson_drawing.h"
#include "say_common.h"
#include "show.h"
#include "svg_draw.h"

#define WIDTH 360.0 /* of the drawing */
#define MOST 240.0  /* height of the cut */
#define TOP 48.0    /* where the cut begins */
#define LETTER 11.0

/* Where the parts' edges lie, in units of the drawing. */
struct cut {
    double scale;                             /* units for each metre */
    double left, back, ring, bore, right;     /* x: piston cut, back of groove,
                                                 inside of ring, bore, bore cut */
    double land;                              /* x: edge of the piston */
    double top, groove, upper, lower, bottom; /* y: cut, top of groove, upper
                                                 and lower side of ring, cut */
};

static struct cut cut_of(const struct cg_case *c)
{
    const struct cg_ring_case *ring = &c->ring[CG_RING_TOP];
    double left = 0.5 * ring->depth, right = 0.55 * ring->depth;
    double above = fmax(0.6 * ring->width, 0.5 * ring->depth);
    double below = 0.8 * above;
    double across = left + ring->back_clearance + ring->depth + right;
    double down = above + ring->side_clearance + ring->width + below;
    struct cut cut = {.scale = fmin((WIDTH - 16.0) / across, MOST / down)};
    double s = cut.scale;
    double spare = (WIDTH - 16.0) / s - across; /* where it is high */
    left += 0.5 * spare;
    right += 0.5 * spare;
    cut.left = 8.0;
    cut.back = cut.left + s * left;
    cut.ring = cut.back + s * ring->back_clearance;
    cut.bore = cut.ring + s * ring->depth;
    cut.right = cut.bore + s * right;
    cut.land = cut.bore - s * 0.5 * c->piston.land_clearance;
    cut.top = TOP;
    cut.groove = cut.top + s * above;
    cut.upper = cut.groove + s * ring->side_clearance;
    cut.lower = cut.upper + s * ring->width;
    cut.bottom = cut.lower + s * below;
    return cut;
}

static void draw_parts(struct cg_draw *draw, const struct cut *at)
{
    const struct cg_point piston[] = {
        {at->left, at->top},    {at->land, at->top},   {at->land, at->groove},
        {at->back, at->groove}, {at->back, at->lower}, {at->land, at->lower},
        {at->land, at->bottom}, {at->left, at->bottom}};
    cg_draw_area(draw, piston, sizeof piston / sizeof piston[0], CG_GREY_LIGHT);
    cg_draw_box(draw, at->bore, at->top, at->right - at->bore,
                at->bottom - at->top, CG_GREY_MIDDLE);
    cg_draw_box(draw, at->ring, at->upper, at->bore - at->ring,
                at->lower - at->upper, CG_GREY_DARK);
}

/* From the crown behind the groove to its lower side, up into the ring, through
 * its face into the bore. */
static void draw_heat(struct cg_draw *draw, const struct cut *at)
{
    double x = at->left + 0.35 * (at->back - at->left);
    double into = at->ring + 0.3 * (at->bore - at->ring);
    double below = at->lower + 0.45 * (at->bottom - at->lower);
    double middle = at->lower - 0.3 * (at->lower - at->upper);
    double out = at->bore + 0.7 * (at->right - at->bore);
    cg_draw_line(draw, (struct cg_point){x, at->top + 24.0},
                 (struct cg_point){x, below}, 3.0);
    cg_draw_line(draw, (struct cg_point){x - 1.5, below},
                 (struct cg_point){into, below}, 3.0);
    cg_draw_arrow(draw, (struct cg_point){into, below + 1.5},
                  (struct cg_point){into, middle}, 3.0);
    cg_draw_arrow(draw, (struct cg_point){into + 10.0, middle},
                  (struct cg_point){out, middle}, 3.0);
}

static struct cg_text degrees(const struct cg_lesson_sheet *sheet,
                              double temperature)
{
    struct cg_figure figure =
        cg_lesson_figure(sheet->inch, NULL, CG_LESSON_TEMPERATURE, temperature);
    return cg_figure_text(&figure);
}

static void draw_temperatures(struct cg_draw *draw, const struct cut *at,
                              const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    double below = at->lower + 0.45 * (at->bottom - at->lower);
    double middle = 0.5 * (at->bore + at->right);
    cg_draw_words(draw, (struct cg_point){at->left + 5.0, at->bottom - 6.0},
                  LETTER, "piston");
    cg_draw_words(draw, (struct cg_point){at->left + 5.0, at->top + 16.0},
                  LETTER, "crown %s", degrees(sheet, heat->crown).text);
    cg_draw_words(
        draw,
        (struct cg_point){at->left + 0.5 * (at->back - at->left), below + 15.0},
        LETTER, "groove %s", degrees(sheet, heat->groove).text);
    cg_draw_words(
        draw,
        (struct cg_point){at->ring + 8.0,
                          at->upper + 5.0 + 0.25 * (at->lower - at->upper)},
        LETTER, "ring %s", degrees(sheet, heat->ring).text);
    cg_draw_middle(draw, (struct cg_point){middle, at->top + 16.0}, LETTER,
                   "bore");
    cg_draw_middle(draw, (struct cg_point){middle, at->top + 30.0}, LETTER,
                   "%s", degrees(sheet, heat->bore).text);
    cg_draw_middle(draw, (struct cg_point){middle, at->groove - 4.0}, LETTER,
                   "to the");
    cg_draw_middle(draw, (struct cg_point){middle, at->groove + 9.0}, LETTER,
                   "%s", cg_say_outside(sheet->c));
}

static void point_out(struct cg_draw *draw, int number, struct cg_point from,
                      struct cg_point to)
{
    cg_draw_line(draw, from, to, 1.0);
    cg_draw_number(draw, from, number);
}

static void draw_numbers(struct cg_draw *draw, const struct cut *at)
{
    double side = at->ring + 0.6 * (at->bore - at->ring);
    double back = 0.5 * (at->back + at->ring);
    double above = at->groove - at->top;
    point_out(draw, 1, (struct cg_point){side, at->groove - 14.0},
              (struct cg_point){side, 0.5 * (at->groove + at->upper)});
    point_out(draw, 2, (struct cg_point){back, at->groove - 14.0},
              (struct cg_point){back, at->groove + 12.0});
    point_out(
        draw, 3, (struct cg_point){at->land - 16.0, at->top + 0.35 * above},
        (struct cg_point){0.5 * (at->land + at->bore), at->top + 0.35 * above});
    point_out(draw, 4, (struct cg_point){at->bore + 18.0, at->lower + 16.0},
              (struct cg_point){at->bore, at->lower - 3.0});
}

/* A length that fits beside the legend, to scale. */
static void draw_bar(struct cg_draw *draw, const struct cut *at, double y,
                     bool inch)
{
    double length = inch ? 1.27e-3 : 1e-3;
    struct cg_point to = {WIDTH - 12.0, y};
    struct cg_point from = {to.x - at->scale * length, y};
    cg_draw_line(draw, from, to, 1.5);
    cg_draw_line(draw, (struct cg_point){from.x, y - 4.0},
                 (struct cg_point){from.x, y + 4.0}, 1.5);
    cg_draw_line(draw, (struct cg_point){to.x, y - 4.0},
                 (struct cg_point){to.x, y + 4.0}, 1.5);
    cg_draw_middle(draw, (struct cg_point){0.5 * (from.x + to.x), y - 6.0},
                   LETTER, "%s", inch ? "0.05 in" : "1 mm");
}

static void draw_legend(struct cg_draw *draw, const struct cut *at,
                        const struct cg_lesson_sheet *sheet)
{
    const struct cg_case *c = sheet->c;
    const struct cg_ring_case *ring = &c->ring[CG_RING_TOP];
    const struct {
        const char *name;
        enum cg_kind kind;
        double length;
    } row[] = {{"side clearance", CG_SHOW_SMALL_LENGTH, ring->side_clearance},
               {"back clearance", CG_SHOW_SMALL_LENGTH, ring->back_clearance},
               {"land clearance", CG_SHOW_SMALL_LENGTH,
                0.5 * c->piston.land_clearance},
               {"oil film, hot, too thin to draw:", CG_SHOW_FILM,
                sheet->lesson->heat.film}};
    double y = at->bottom + 20.0;
    draw_bar(draw, at, y + 4.0, sheet->inch);
    for (int i = 0; i < 4; i++, y += 16.0)
        cg_draw_words(draw, (struct cg_point){8.0, y}, LETTER, "%d: %s %s",
                      i + 1, row[i].name,
                      cg_quantity_one(cg_quantity(row[i].kind, row[i].length),
                                      sheet->inch)
                          .text);
    cg_draw_words(draw, (struct cg_point){8.0, y}, LETTER,
                  "Temperatures: held at full load, settled.");
    cg_draw_words(draw, (struct cg_point){8.0, y + 15.0}, 10.0, "%s",
                  cg_cautions_list()[0]);
}

void cg_lesson_draw_ring(const struct cg_lesson_sheet *sheet,
                         struct cg_lesson_drawing *out)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    struct cut at = cut_of(sheet->c);
    struct cg_draw draw;
    out->name = "lesson_ring";
    out->title = "The top ring in its groove, cut through";
    snprintf(out->words, sizeof out->words,
             "Piston on the left, bore on the right, the ring in its groove "
             "against both, cold and to scale. Heat goes from the crown (%s) "
             "to the lower side of the groove (%s), into the ring (%s), "
             "through its face to the bore (%s) and the %s.",
             degrees(sheet, heat->crown).text,
             degrees(sheet, heat->groove).text, degrees(sheet, heat->ring).text,
             degrees(sheet, heat->bore).text, cg_say_outside(sheet->c));
    cg_draw_begin(&draw, WIDTH, at.bottom + 110.0, out->title, out->words);
    cg_draw_words(&draw, (struct cg_point){8.0, 18.0}, 13.0, "%s", out->title);
    cg_draw_words(&draw, (struct cg_point){8.0, 36.0}, LETTER,
                  "Cold, to scale of this engine; arrows: heat's way");
    draw_parts(&draw, &at);
    draw_heat(&draw, &at);
    draw_temperatures(&draw, &at, sheet);
    draw_numbers(&draw, &at);
    draw_legend(&draw, &at, sheet);
    out->svg = cg_draw_end(&draw);
}
