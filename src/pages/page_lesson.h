/* The page of `lesson`. */
#ifndef CG_PAGE_LESSON_H
#define CG_PAGE_LESSON_H

#include "page.h"
#include "report_lesson.h"

/* Fills a page below its cautions.  CG_NO_MEMORY. */
enum cg_status cg_page_lesson(struct cg_page *page,
                              const struct cg_lesson_sheet *sheet,
                              enum cg_lesson_level level, bool answers,
                              struct cg_error *error);

#endif
