/* The lesson: why the gap must grow with heat, told step by step. */
#ifndef CG_REPORT_LESSON_H
#define CG_REPORT_LESSON_H

#include "lesson_sheet.h"
#include "report.h"

enum cg_lesson_level { CG_LESSON_FIRST, CG_LESSON_SECOND };

/* Fills the report: the gap to file to, thirteen steps, the questions, and with
 * `answers` their answers.  Cannot fail but for memory (cg_report_status). */
void cg_report_lesson(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet,
                      enum cg_lesson_level level, bool answers);

#endif
