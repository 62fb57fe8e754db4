/* lesson.dat: the lesson's curves as the model has them, unrounded. */
#ifndef CG_LESSON_TABLE_H
#define CG_LESSON_TABLE_H

#include "lesson.h"
#include "table_of.h"

/* Writes DIR/lesson.dat: block `boosts`, then `duty`.  CG_FILE as table.h. */
enum cg_status cg_lesson_table_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_case *c,
                                     const struct cg_lesson *lesson,
                                     struct cg_error *error);

#endif
