/* The lesson on the screen, and its parts for a page. */
#ifndef CG_REPORT_LESSON_H
#define CG_REPORT_LESSON_H

#include <stdio.h>

#include "lesson_sheet.h"

enum cg_lesson_level { CG_LESSON_FIRST, CG_LESSON_SECOND };

/* Steps, from 0; those that a page adds to. */
enum {
    CG_LESSON_AT_BOOSTS = 6,
    CG_LESSON_AT_DUTY = 7,
    CG_LESSON_AT_GAP = 10,
    CG_LESSON_STEPS = 12
};

/* A step's title, and its text: words, and lines to key in, which are set in
 * by two spaces. */
const char *cg_lesson_title(int step);
void cg_lesson_print(FILE *out, int step, const struct cg_lesson_sheet *sheet,
                     enum cg_lesson_level level);

/* All questions of the level, "1. ..."; their answers. */
void cg_lesson_ask(FILE *out, const struct cg_lesson_sheet *sheet,
                   enum cg_lesson_level level);
void cg_lesson_answer(FILE *out, const struct cg_lesson_sheet *sheet,
                      enum cg_lesson_level level);

/* How to use the lines, a newline where a screen breaks it; "second; --level
 * first has fewer formulas". */
const char *cg_lesson_how(void);
const char *cg_lesson_level_text(enum cg_lesson_level level);

/* Steps, questions, with `answers` their answers, and the cautions; quiet: the
 * gap's sum alone. */
void cg_report_lesson(const struct cg_lesson_sheet *sheet, const char *config,
                      enum cg_lesson_level level, bool answers, bool quiet);

#endif
