/* Private to lesson_sheet*.c. */
#ifndef CG_LESSON_SHEET_PARTS_H
#define CG_LESSON_SHEET_PARTS_H

#include "lesson_sheet.h"

/* The parts of the sheet, in the order they need each other. */
void cg_lesson_sheet_charge(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_burn(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_ladder(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_layers(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_growth(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_ends(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_leak(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_sum(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_over_time(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_unknown(struct cg_lesson_sheet *sheet);
void cg_lesson_sheet_knock(struct cg_lesson_sheet *sheet);

/* Growth of ring and bore, and the closure that comes of it.  A name stands for
 * one number in a lesson; names: itself, rise, expansion, growth. */
struct cg_lesson_names {
    const char *ring[4], *bore[4], *closure;
};
void cg_lesson_sheet_grow(const struct cg_lesson_sheet *sheet,
                          const struct cg_lesson_names *name,
                          const struct cg_lesson_growth *at,
                          struct cg_lesson_growing *out);

/* What is left of the sum's cold gap. */
struct cg_hand cg_lesson_left(const struct cg_lesson_sheet *sheet,
                              const char *name,
                              const struct cg_lesson_growing *by);

/* A cold gap [m] as a figure, rounded up as screens show it. */
struct cg_figure cg_lesson_gap_figure(const struct cg_lesson_sheet *sheet,
                                      const char *name, double gap);

/* lesson_units.h in the units of the sheet. */
static inline struct cg_figure figure(const struct cg_lesson_sheet *sheet,
                                      const char *name,
                                      enum cg_lesson_quantity quantity,
                                      double si)
{
    return cg_lesson_figure(sheet->inch, name, quantity, si);
}

static inline struct cg_hand work(const struct cg_lesson_sheet *sheet,
                                  const char *name,
                                  enum cg_lesson_quantity quantity,
                                  const char *operators,
                                  const struct cg_figure *figures)
{
    return cg_lesson_work(sheet->inch, name, quantity, operators, figures);
}

#endif
