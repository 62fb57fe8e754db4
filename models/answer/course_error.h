/* What leaving out rows of a course, and running it by a map, does to the
 * closure: found, not assumed.
 */
#ifndef CG_COURSE_ERROR_H
#define CG_COURSE_ERROR_H

#include "duty_run.h"

/* Both are to be below this [m]; more is said. */
#define CG_COURSE_ALLOWED 1e-6

struct cg_course_error {
    size_t rows, all;      /* run, and before thinning (0: not thinned) */
    size_t points, pieces; /* of the run */
    bool mapped;
    double thinned; /* change of the top closure with every row of the last
                       seconds before the tightest instant [m] */
    double between; /* largest error of a settled closure between the map's
                       points, of places just before that instant [m] */
};

/* For a run that went through its duty (run->tightest), unless the duty knows
 * its errors (cg_course_left); all 0 without a course.  The run's points stay.
 * Errors: as cg_duty_run_create and cg_duty_run_go. */
enum cg_status cg_course_error_find(const struct cg_case *c,
                                    struct cg_duty_run *run,
                                    struct cg_course_error *found,
                                    struct cg_error *error);

#endif
