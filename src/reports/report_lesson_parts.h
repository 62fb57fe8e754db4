/* Private to report_lesson*.c. */
#ifndef CG_REPORT_LESSON_PARTS_H
#define CG_REPORT_LESSON_PARTS_H

#include "report_lesson.h"

/* A step: words, and sums to key in.  `second`: of the level that reckons the
 * heat too. */
typedef void (*cg_lesson_step)(struct cg_report *report,
                               const struct cg_lesson_sheet *sheet,
                               bool second);

void cg_lesson_tell_boost(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_heat(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_ladder(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_ring(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_bore(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_left(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_boosts(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_duty(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_ends(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_leak(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_unknown(struct cg_report *report,
                            const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_gap(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_apart(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_tell_next(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second);

/* The burn and knock, for the step on heat. */
void cg_lesson_tell_knock(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet);

/* The duty's start and its tightest instant, for the step on the duty. */
void cg_lesson_tell_start(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet);
void cg_lesson_tell_tightest(struct cg_report *report,
                             const struct cg_lesson_sheet *sheet);

/* The questions of a level as steps, and their answers, a part each. */
void cg_lesson_ask(struct cg_report *report,
                   const struct cg_lesson_sheet *sheet, bool second);
void cg_lesson_answer(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet, bool second);

/* One of lesson_drawing.h as a figure. */
struct cg_lesson_drawing;
void cg_lesson_show(struct cg_report *report,
                    const struct cg_lesson_sheet *sheet,
                    void (*draw)(const struct cg_lesson_sheet *sheet,
                                 struct cg_lesson_drawing *out));

/* Sums that follow each other, formula and numbers; ends with NULL. */
void cg_lesson_sums(struct cg_report *report,
                    const struct cg_hand *const *sums);
#define CG_SUMS(...)                                                           \
    (const struct cg_hand *const[])                                            \
    {                                                                          \
        __VA_ARGS__, NULL                                                      \
    }

#endif
