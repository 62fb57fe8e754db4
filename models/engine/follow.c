#include "follow.h"

#include <math.h>
#include <stdlib.h>

/* Looks at one maximum, or for one crossing. */
enum { MOST_LOOKS = 16, MOST_HALVINGS = 60 };

/* Points nearer than this share of their bracket are one. */
static const double APART = 1e-6;

/* A quantity at a time. */
struct point {
    double time, value;
};

enum cg_status cg_follow_begin(const struct cg_duty_run *run, size_t count,
                               struct cg_follow *follow, struct cg_error *error)
{
    *follow = (struct cg_follow){.count = count};
    for (size_t k = 0; k < count; k++) {
        follow->limit[k] = follow->level[k] = INFINITY;
        follow->most[k] = follow->recorded[k] = -INFINITY;
        follow->passed[k] = NAN;
    }
    follow->between =
        malloc(run->thermal->network->nodes * sizeof *follow->between);
    if (follow->between == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    return CG_OK;
}

void cg_follow_free(struct cg_follow *follow)
{
    free(follow->between);
    follow->between = NULL;
}

static void look(struct cg_follow *follow, const struct cg_instant *instant,
                 struct cg_follow_point *point)
{
    point->time = instant->time;
    follow->read(follow->context, instant->temperature, point->value);
    for (size_t k = 0; k < follow->count; k++) {
        follow->most[k] = fmax(follow->most[k], point->value[k]);
        if (!(point->value[k] > follow->recorded[k] + follow->tolerance[k]))
            continue;
        follow->recorded[k] = point->value[k];
        if (follow->record != NULL)
            follow->record(follow->context, k, instant);
    }
}

static struct point look_inside(struct cg_follow *follow,
                                const struct cg_duty_run *run, size_t k,
                                double time)
{
    struct cg_instant instant;
    struct cg_follow_point point;
    cg_duty_run_inside(run, time, follow->between, &instant);
    look(follow, &instant, &point);
    return (struct point){time, point.value[k]};
}

/* Vertex of the parabola through three points; false where it is no maximum
 * inside, or one of the three. */
static bool vertex_of(const struct point *p, struct point *vertex)
{
    double first = (p[1].value - p[0].value) / (p[1].time - p[0].time);
    double second = (p[2].value - p[1].value) / (p[2].time - p[1].time);
    double width = p[2].time - p[0].time;
    double curvature = (second - first) / width;
    if (!(curvature < 0.0))
        return false;
    vertex->time = 0.5 * (p[0].time + p[1].time) - 0.5 * first / curvature;
    vertex->value =
        p[0].value + (vertex->time - p[0].time) *
                         (first + curvature * (vertex->time - p[1].time));
    for (int i = 0; i < 3; i++)
        if (!(fabs(vertex->time - p[i].time) > APART * width))
            return false;
    return vertex->time > p[0].time && vertex->time < p[2].time;
}

/* Puts a point where its time belongs among `count` others. */
static void insert(struct point *p, size_t count, struct point new)
{
    size_t i = count;
    for (; i > 0 && p[i - 1].time > new.time; i--)
        p[i] = p[i - 1];
    p[i] = new;
}

/* Of three points and one more between them, the three around the best. */
static void take_in(struct point *p, struct point new)
{
    struct point four[4] = {p[0], p[1], p[2]};
    size_t best = 0;
    insert(four, 3, new);
    for (size_t i = 1; i < 4; i++)
        if (four[i].value > four[best].value)
            best = i;
    for (size_t i = 0; i < 3; i++)
        p[i] = four[(best < 2 ? 0 : 1) + i];
}

/* Looks for a larger value of quantity k among three points of a step; how
 * often it looked. */
static int climb(struct cg_follow *follow, const struct cg_duty_run *run,
                 size_t k, struct point *p)
{
    struct point vertex;
    int looks = 0;
    while (looks < MOST_LOOKS && vertex_of(p, &vertex) &&
           vertex.value > follow->most[k] + follow->tolerance[k]) {
        take_in(p, look_inside(follow, run, k, vertex.time));
        looks++;
    }
    return looks;
}

/* The instant between two at which quantity k passes its limit. */
static double cross(struct cg_follow *follow, const struct cg_duty_run *run,
                    size_t k, struct point low, struct point high)
{
    double limit = follow->limit[k];
    double below = low.value - limit, above = high.value - limit;
    int side = 0; /* which end moved last: one that stays twice counts half */
    for (int i = 0; i < MOST_HALVINGS; i++) {
        double width = high.time - low.time;
        if (!(width > APART * (1.0 + high.time)))
            break;
        double time = low.time + width * below / (below - above);
        struct point now = look_inside(follow, run, k, time);
        if (now.value > limit) {
            high = now;
            above = now.value - limit;
            below *= side > 0 ? 0.5 : 1.0;
            side = 1;
        } else {
            low = now;
            below = now.value - limit;
            above *= side < 0 ? 0.5 : 1.0;
            side = -1;
        }
        if (fabs(now.value - limit) <= APART * fabs(limit))
            return now.time;
    }
    return high.time;
}

/* Of the time from a to b, that over the level. */
static double time_over(double level, const struct point *a,
                        const struct point *b)
{
    double length = b->time - a->time, rise = fabs(b->value - a->value);
    double most = fmax(a->value, b->value) - level;
    double least = fmin(a->value, b->value) - level;
    if (most <= 0.0)
        return 0.0;
    return least >= 0.0 ? length : length * most / rise;
}

/* A step, begun and halved before, ends: what quantity k did in between. */
static void end_step(struct cg_follow *follow, const struct cg_duty_run *run,
                     size_t k, const struct cg_follow_point *end)
{
    struct point p[4] = {{follow->begin.time, follow->begin.value[k]},
                         {follow->middle.time, follow->middle.value[k]},
                         {end->time, end->value[k]}};
    struct point around[3] = {p[0], p[1], p[2]};
    size_t points = 3;
    follow->over[k] += time_over(follow->level[k], &p[0], &p[1]) +
                       time_over(follow->level[k], &p[1], &p[2]);
    if (climb(follow, run, k, around) > 0)
        insert(p, points++, around[1]);
    for (size_t i = 1; i < points && isnan(follow->passed[k]); i++)
        if (p[i].value > follow->limit[k])
            follow->passed[k] = cross(follow, run, k, p[i - 1], p[i]);
}

void cg_follow_see(struct cg_follow *follow, const struct cg_duty_run *run,
                   const struct cg_instant *instant)
{
    struct cg_follow_point point;
    if (instant->step == CG_STEP_NONE)
        return;
    look(follow, instant, &point);
    if (instant->step == CG_STEP_MIDDLE) {
        follow->middle = point;
        return;
    }
    bool halved = follow->started && follow->middle.time > follow->begin.time;
    for (size_t k = 0; k < follow->count; k++)
        if (!follow->started && point.value[k] > follow->limit[k])
            follow->passed[k] = point.time;
        else if (halved)
            end_step(follow, run, k, &point);
        else if (follow->started) /* nothing has moved */
            follow->over[k] += time_over(
                follow->level[k],
                &(struct point){follow->begin.time, follow->begin.value[k]},
                &(struct point){point.time, point.value[k]});
    follow->started = true;
    follow->begin = point;
}
