#include "course_refine.h"

#include <math.h>

#include "answer.h"
#include "course_error.h"
#include "duty_run.h"

#define BAND_BY (1.0 / 3.0)
#define CELLS_BY 0.5

/* The errors of the case's duty; none, and nothing is run, where every row is
 * and each by its own point. */
static enum cg_status find_error(const struct cg_case *c,
                                 struct cg_course_error *by,
                                 struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    struct cg_extremes extremes;
    *by = (struct cg_course_error){.rows = 0};
    enum cg_status status = cg_duty_run_lay_out(c, &run, error);
    bool exact = status == CG_OK && !run->mapped &&
                 c->duty.course->all_rows <= c->duty.course->rows;
    cg_duty_run_free(run);
    run = NULL;
    if (status != CG_OK || exact)
        return status;
    status = cg_duty_run_create(c, &run, error);
    if (status == CG_OK)
        status =
            cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes, NULL, error);
    if (status == CG_OK)
        status = cg_course_error_find(c, run, by, error);
    cg_duty_run_free(run);
    return status;
}

static struct cg_course_fine finer(const struct cg_course_fine *fine,
                                   const struct cg_course_error *by)
{
    struct cg_course_fine made = *fine;
    if (by->thinned > CG_COURSE_ALLOWED)
        made.band *= BAND_BY;
    if (by->between > CG_COURSE_ALLOWED)
        made.cells *= CELLS_BY;
    if (made.times++ == 0)
        made.before = fmax(by->thinned, by->between);
    return made;
}

/* The duty as it is run: on it goes while too much is left out. */
static enum cg_status refine(const struct cg_case *c, struct cg_duty_case *duty,
                             struct cg_course **list, struct cg_error *error)
{
    struct cg_case alone = *c;
    enum cg_status status = CG_OK;
    alone.survive.duties = 0;
    while (duty->course != NULL && !duty->left.known && status == CG_OK) {
        struct cg_course_error by;
        const struct cg_course_fine *as = &duty->course->fine;
        alone.duty = *duty;
        status = find_error(&alone, &by, error);
        bool enough = !(by.thinned > CG_COURSE_ALLOWED) &&
                      !(by.between > CG_COURSE_ALLOWED);
        if (status != CG_OK)
            return status;
        if (enough || as->times == CG_COURSE_REFINED) {
            duty->left = (struct cg_course_left){true, by.thinned, by.between};
            return CG_OK;
        }
        struct cg_course_fine fine = finer(as, &by);
        struct cg_course *made = NULL;
        status = cg_course_finer(duty->course, c->engine.speed, &fine, list,
                                 &made, error);
        if (status == CG_OK)
            duty->course = made;
    }
    return status;
}

enum cg_status cg_course_refine(struct cg_case *c, struct cg_error *error)
{
    enum cg_status status = refine(c, &c->duty, &c->courses, error);
    for (int i = 0; i < c->survive.duties && status == CG_OK; i++)
        status = refine(c, &c->survive.duty[i], &c->courses, error);
    return status;
}
