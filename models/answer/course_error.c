#include "course_error.h"

#include <math.h>
#include <stdlib.h>

#include "answer.h"
#include "growth.h"

enum { PLACES = 6 };
#define LOOK_BACK 20.0 /* [s] */

/* The tightest closure of what an instant of the course sees. */
static enum cg_status closure_seen(const struct cg_case *c, double time,
                                   enum cg_seen_by by, struct cg_course **list,
                                   double *closure, struct cg_error *error)
{
    struct cg_case at = *c;
    struct cg_course *seen = NULL;
    struct cg_duty_run *run = NULL;
    struct cg_extremes extremes;
    enum cg_status status =
        cg_course_seen(c->duty.course, time, by, list, &seen, error);
    at.duty.course = seen;
    if (status == CG_OK)
        status = cg_duty_run_create(&at, &run, error);
    if (status == CG_OK)
        status = cg_answer_extremes(&at, run, 0.0, NULL, NULL, &extremes, NULL,
                                    error);
    if (status == CG_OK)
        *closure = extremes.closure;
    cg_duty_run_free(run);
    return status;
}

static enum cg_status find_thinned(const struct cg_case *c, double time,
                                   double *thinned, struct cg_error *error)
{
    struct cg_course *list = NULL;
    double thin = 0.0, whole = 0.0;
    enum cg_status status =
        closure_seen(c, time, CG_SEEN_ROWS, &list, &thin, error);
    if (status == CG_OK)
        status = closure_seen(c, time, CG_SEEN_ALL, &list, &whole, error);
    cg_courses_free(list);
    *thinned = fabs(whole - thin);
    return status;
}

/* Error of the map at a place: settled closure against that of a point solved
 * there. */
static enum cg_status error_at(const struct cg_case *c, struct cg_duty_run *run,
                               size_t place, struct cg_operating_point *solved,
                               double *off, struct cg_error *error)
{
    struct cg_operating_point *mixed = &run->mixed[0];
    double exact, blended;
    (void)cg_duty_run_place(run, place, mixed);
    solved->operating = run->place[place].operating;
    enum cg_status status =
        cg_point_settle(run->thermal, &run->workspace, mixed, error);
    if (status == CG_OK)
        status = cg_point_solve(c, run->thermal, &run->workspace,
                                &run->point[run->place[place].at.node[0]],
                                solved, error);
    if (status == CG_OK)
        status =
            cg_answer_settled_closure(c, run, solved->settled, &exact, error);
    if (status == CG_OK)
        status =
            cg_answer_settled_closure(c, run, mixed->settled, &blended, error);
    if (status == CG_OK)
        *off = fmax(*off, fabs(blended - exact));
    return status;
}

static enum cg_status find_between(const struct cg_case *c,
                                   struct cg_duty_run *run, double *between,
                                   struct cg_error *error)
{
    struct cg_operating_point solved;
    enum cg_status status = cg_point_create(run->thermal, &solved, error);
    for (int i = 0; i < PLACES && status == CG_OK; i++) {
        double time = run->tightest - LOOK_BACK * i / PLACES;
        size_t at = 0;
        while (at + 1 < run->pieces && run->piece[at].to < time)
            at++;
        status = error_at(c, run, run->piece[at].end, &solved, between, error);
    }
    cg_point_free(&solved);
    return status;
}

enum cg_status cg_course_error_find(const struct cg_case *c,
                                    struct cg_duty_run *run,
                                    struct cg_course_error *found,
                                    struct cg_error *error)
{
    const struct cg_course *course = c->duty.course;
    enum cg_status status = CG_OK;
    *found = (struct cg_course_error){.rows = 0};
    if (course == NULL)
        return CG_OK;
    *found = (struct cg_course_error){.rows = course->rows,
                                      .all = course->all_rows,
                                      .points = run->points,
                                      .pieces = run->pieces,
                                      .mapped = run->mapped,
                                      .thinned = c->duty.left.thinned,
                                      .between = c->duty.left.between};
    if (c->duty.left.known)
        return CG_OK;
    if (run->mapped)
        status = find_between(c, run, &found->between, error);
    if (status == CG_OK && course->all_rows > course->rows)
        status = find_thinned(c, run->tightest, &found->thinned, error);
    return status;
}
