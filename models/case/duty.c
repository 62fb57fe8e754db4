/* What is asked of a duty, whether it is segments or a course. */
#include <math.h>

#include "case.h"

double cg_duty_seconds(const struct cg_duty_case *duty)
{
    const struct cg_course *course = duty->course;
    double seconds = 0.0;
    if (course != NULL)
        return course->row[course->rows - 1].time - course->row[0].time;
    for (int i = 0; i < duty->segments; i++)
        seconds += duty->segment[i].seconds;
    return seconds;
}

double cg_duty_slowest(const struct cg_duty_case *duty)
{
    const struct cg_course *course = duty->course;
    double slowest = INFINITY;
    for (size_t i = 0; course != NULL && i < course->rows; i++)
        slowest = fmin(slowest, course->row[i].of[CG_CHANNEL_SPEED]);
    for (int i = 0; course == NULL && i < duty->segments; i++)
        slowest = fmin(
            slowest, fmin(duty->segment[i].speed, duty->segment[i].speed_end));
    return slowest;
}

double cg_duty_knock_heat(const struct cg_duty_case *duty)
{
    double most = 0.0;
    if (duty->course != NULL)
        return duty->course->knock_heat;
    for (int i = 0; i < duty->segments; i++)
        most = fmax(most, duty->segment[i].knock_heat);
    return most;
}

double cg_duty_nitrous(const struct cg_duty_case *duty)
{
    const struct cg_course *course = duty->course;
    double most = 0.0;
    for (size_t i = 0; course != NULL && i < course->rows; i++)
        most = fmax(most, course->row[i].of[CG_CHANNEL_NITROUS]);
    for (int i = 0; course == NULL && i < duty->segments; i++)
        most = fmax(most, duty->segment[i].nitrous);
    return most;
}

void cg_case_free(struct cg_case *c)
{
    cg_courses_free(c->courses);
    c->courses = NULL;
    c->duty.course = NULL;
    for (int i = 0; i < CG_DUTIES - 1; i++)
        c->survive.duty[i].course = NULL;
}
