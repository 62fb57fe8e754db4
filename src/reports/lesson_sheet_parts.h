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
