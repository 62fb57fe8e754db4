/* The lesson on the screen. */
#ifndef CG_REPORT_LESSON_H
#define CG_REPORT_LESSON_H

#include "lesson_sheet.h"

enum cg_lesson_level { CG_LESSON_FIRST, CG_LESSON_SECOND };

/* Steps, questions, with `answers` their answers, and the cautions; quiet: the
 * gap's sum alone. */
void cg_report_lesson(const struct cg_lesson_sheet *sheet, const char *config,
                      enum cg_lesson_level level, bool answers, bool quiet);

#endif
