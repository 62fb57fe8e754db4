/* Courses run finely enough: what thinning and a map leave out of the closure
 * is worked out (course_error.h), and where it is too much the course is run
 * finer.
 */
#ifndef CG_COURSE_REFINE_H
#define CG_COURSE_REFINE_H

#include "case.h"
#include "status.h"

/* So often at most; each time the band is a third, or the cells a half: errors
 * of straight lines fall with the square of their length. */
enum { CG_COURSE_REFINED = 3 };

/* Every duty of the case that is a course is run, and while what is left out
 * moves its closure by more than CG_COURSE_ALLOWED the duty points to a finer
 * one, which the case's courses own.  What is left out then the duty keeps
 * (cg_course_left), and the answer says it.  Errors: as cg_duty_run_create and
 * cg_duty_run_go. */
enum cg_status cg_course_refine(struct cg_case *c, struct cg_error *error);

#endif
