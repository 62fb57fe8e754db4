#include "course_lag.h"

#include <math.h>

#include "operating.h"
#include "outside.h"

/* A step over the time since the piece began, which the shorter of the two
 * bodies' times is added to: what settles is straight enough within it. */
#define STEP 0.1

bool cg_case_lags(const struct cg_case *c)
{
    return (c->charge.boost_time > 0.0 && c->charge.boost > 0.0) ||
           (c->charge.cooler_soak > 0.0 &&
            c->charge.cooler_effectiveness > 0.0);
}

/* The states of the two bodies. */
struct lag {
    const struct cg_case *c;
    double load; /* that the manifold is at */
    double soak; /* of the core, 1 where full boost would bring it */
};

/* Load at which the manifold is at ambient pressure; of a diesel, the share of
 * full load's fuel that the air without boost burns. */
static double ambient_load(const struct cg_case *c)
{
    const struct cg_charge_case *in = &c->charge;
    if (c->combustion.ignition == CG_IGNITION_COMPRESSION)
        return in->ambient_pressure / (in->ambient_pressure + in->boost);
    double whole = in->ambient_pressure + in->boost - in->closed_throttle;
    return (in->ambient_pressure - in->closed_throttle) / whole;
}

/* The rise behind the compressor over that at full boost. */
static double rise_at(const struct cg_case *c, double load)
{
    double full = cg_operating_rise(c, 1.0);
    return full > 0.0 ? cg_operating_rise(c, load) / full : 0.0;
}

/* A first-order body of `time` that is at y, driven straight from a to b in
 * some seconds: y' = (u - y) / time, solved. */
static double follow(double y, double a, double b, double seconds, double time)
{
    if (!(seconds > 0.0))
        return y;
    double behind = (b - a) / seconds * time;
    return b - behind + (y - a + behind) * exp(-seconds / time);
}

/* The manifold, asked for straight from a to b: at once up to ambient and where
 * less is asked for than is there, behind above it. */
static double load_after(const struct lag *lag, double a, double b,
                         double seconds)
{
    double ambient = ambient_load(lag->c), time = lag->c->charge.boost_time;
    if (!(time > 0.0) || b <= ambient)
        return b;
    if (a < ambient) {
        seconds *= (b - ambient) / (b - a);
        a = ambient;
    }
    double from = fmin(fmax(lag->load, ambient), a);
    return fmin(follow(from, a, b, seconds, time), b);
}

static void step(struct lag *lag, double a, double b, double seconds)
{
    double rise = rise_at(lag->c, lag->load);
    lag->load = load_after(lag, a, b, seconds);
    lag->soak = follow(lag->soak, rise, rise_at(lag->c, lag->load), seconds,
                       lag->c->charge.soak_time);
}

static void put(const struct lag *lag, const struct cg_course_row *row,
                struct cg_course *made)
{
    struct cg_course_row *to = &made->row[made->rows++];
    *to = *row;
    to->of[CG_CHANNEL_LOAD] = lag->load;
    to->of[CG_CHANNEL_SOAK] =
        lag->c->charge.cooler_soak > 0.0 ? lag->soak : NAN;
}

/* Steps that grow with the time since the piece began, in which every jump is
 * long past. */
static int steps_of(const struct cg_case *c, double length)
{
    const struct cg_charge_case *in = &c->charge;
    double time = in->soak_time;
    if (in->boost_time > 0.0)
        time = fmin(time, in->boost_time);
    return 1 + (int)(log1p(length / time) / log1p(STEP));
}

/* Where the step ends, over the piece: their lengths are a geometric series. */
static double part_of(int step, int steps)
{
    return step == steps
               ? 1.0
               : expm1(step * log1p(STEP)) / expm1(steps * log1p(STEP));
}

static void run_piece(struct lag *lag, const struct cg_course *asked, size_t i,
                      struct cg_course *made)
{
    const struct cg_course_row *a = &asked->row[i], *b = a + 1;
    double length = b->time - a->time;
    double load = a->of[CG_CHANNEL_LOAD], before = a->time;
    int steps = steps_of(lag->c, length);
    step(lag, load, load, 0.0); /* a throttle shut or opened at once */
    put(lag, a, made);
    for (int s = 1; s <= steps; s++) {
        double part = part_of(s, steps);
        struct cg_course_row row = {.time = a->time + part * length};
        for (int k = 0; k < CG_CHANNELS; k++)
            row.of[k] = a->of[k] + part * (b->of[k] - a->of[k]);
        step(lag, load, row.of[CG_CHANNEL_LOAD], row.time - before);
        load = row.of[CG_CHANNEL_LOAD];
        before = row.time;
        put(lag, &row, made);
    }
}

static size_t rows_of(const struct cg_case *c, const struct cg_course *asked)
{
    size_t rows = 0;
    for (size_t i = 0; i + 1 < asked->rows; i++)
        rows += 1 + (size_t)steps_of(c, asked->row[i + 1].time -
                                            asked->row[i].time);
    return rows;
}

enum cg_status cg_course_lag(const struct cg_case *c,
                             const struct cg_duty_case *duty,
                             struct cg_course **list, struct cg_course **course,
                             struct cg_error *error)
{
    struct cg_course *asked = NULL, *made = NULL, *own = NULL;
    enum cg_status status = CG_OK;
    if (duty->course == NULL)
        status = cg_course_of_segments(duty->segment, (size_t)duty->segments,
                                       cg_outside_temperature(c), &own, &asked,
                                       error);
    const struct cg_course *from = duty->course != NULL ? duty->course : asked;
    if (status == CG_OK)
        status = cg_course_create(list, rows_of(c, from), &made, error);
    if (status == CG_OK) {
        double load = duty->start == CG_START_CRUISE ? duty->cruise_load
                      : duty->start == CG_START_COLD
                          ? 0.0
                          : from->row[0].of[CG_CHANNEL_LOAD];
        struct lag lag = {c, load, rise_at(c, load)};
        for (size_t i = 0; i + 1 < from->rows; i++)
            if (from->row[i + 1].time > from->row[i].time)
                run_piece(&lag, from, i, made);
        made->knock_heat = from->knock_heat;
        status = cg_course_thin(c->engine.speed, &cg_thin_usual, made, error);
    }
    cg_courses_free(own);
    if (status == CG_OK)
        *course = made;
    return status;
}
