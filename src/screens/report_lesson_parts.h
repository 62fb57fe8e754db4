/* Private to report_lesson*.c: the steps.  Each writes its own text
 * to a stream, for the screen or for a page. */
#ifndef CG_REPORT_LESSON_PARTS_H
#define CG_REPORT_LESSON_PARTS_H

#include <stdio.h>

#include "report_lesson.h"

typedef void (*cg_lesson_step)(FILE *out, const struct cg_lesson_sheet *sheet);

void cg_lesson_boost_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_boost_second(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_heat_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_heat_second(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_ladder_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_ladder_second(FILE *out, const struct cg_lesson_sheet *sheet);

void cg_lesson_ring(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_bore_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_bore_second(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_left(FILE *out, const struct cg_lesson_sheet *sheet);

void cg_lesson_boosts(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_duty(FILE *out, const struct cg_lesson_sheet *sheet);

void cg_lesson_ends_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_ends_second(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_leak_first(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_leak_second(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_sum(FILE *out, const struct cg_lesson_sheet *sheet);
void cg_lesson_apart(FILE *out, const struct cg_lesson_sheet *sheet);

/* "0.171 mm" at once in a sentence, from a figure. */
struct cg_lesson_text {
    char text[48];
};
struct cg_lesson_text cg_lesson_say(const struct cg_figure *figure);

#endif
