/* Private to report_lesson*.c: the steps.  Each prints its own text. */
#ifndef CG_REPORT_LESSON_PARTS_H
#define CG_REPORT_LESSON_PARTS_H

#include "report_lesson.h"

typedef void (*cg_lesson_step)(const struct cg_lesson_sheet *sheet);

void cg_lesson_boost_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_boost_second(const struct cg_lesson_sheet *sheet);
void cg_lesson_heat_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_heat_second(const struct cg_lesson_sheet *sheet);
void cg_lesson_ladder_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_ladder_second(const struct cg_lesson_sheet *sheet);

void cg_lesson_ring(const struct cg_lesson_sheet *sheet);
void cg_lesson_bore_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_bore_second(const struct cg_lesson_sheet *sheet);
void cg_lesson_left(const struct cg_lesson_sheet *sheet);

void cg_lesson_boosts(const struct cg_lesson_sheet *sheet);
void cg_lesson_duty(const struct cg_lesson_sheet *sheet);

void cg_lesson_ends_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_ends_second(const struct cg_lesson_sheet *sheet);
void cg_lesson_leak_first(const struct cg_lesson_sheet *sheet);
void cg_lesson_leak_second(const struct cg_lesson_sheet *sheet);
void cg_lesson_sum(const struct cg_lesson_sheet *sheet);
void cg_lesson_apart(const struct cg_lesson_sheet *sheet);

/* All questions of the level, then on request their answers. */
void cg_lesson_questions(const struct cg_lesson_sheet *sheet,
                         enum cg_lesson_level level, bool answers);

/* "0.171 mm" at once in a sentence, from a figure. */
struct cg_lesson_text {
    char text[48];
};
struct cg_lesson_text cg_lesson_say(const struct cg_figure *figure);

#endif
