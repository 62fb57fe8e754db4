#include "chart_place.h"

#include <math.h>

#define AIR 2.0    /* around words */
#define APART 3.0  /* from the curve they name */
#define NEAR 9.0   /* another curve so near makes it doubtful which is named */
#define FAR 60.0   /* from a spot */
enum { TRIES = 32, TURNS = 12, SLIDES = 7 };

void cg_place_take(struct cg_place *place, struct cg_box box)
{
    if (place->boxes < CG_PLACES)
        place->taken[place->boxes++] = box;
}

void cg_place_curve(struct cg_place *place, const struct cg_point *point,
                    size_t count)
{
    if (place->curves == CG_PLACE_CURVES)
        return;
    place->curve[place->curves].point = point;
    place->curve[place->curves++].count = count;
}

/* Cuts the part of a line between two bounds in one direction (Liang and
 * Barsky, 1984). */
static void clip(double from, double step, double low, double high,
                 double *begin, double *end)
{
    if (step == 0.0) {
        if (from < low || from > high)
            *end = -1.0;
        return;
    }
    double a = (low - from) / step, b = (high - from) / step;
    *begin = fmax(*begin, fmin(a, b));
    *end = fmin(*end, fmax(a, b));
}

bool cg_box_crossed(struct cg_box box, struct cg_point from, struct cg_point to)
{
    double begin = 0.0, end = 1.0;
    if (!isfinite(from.x + from.y + to.x + to.y)) /* a hole in the curve */
        return false;
    clip(from.x, to.x - from.x, box.x, box.x + box.width, &begin, &end);
    clip(from.y, to.y - from.y, box.y, box.y + box.height, &begin, &end);
    return begin <= end;
}

static struct cg_box wider(struct cg_box box, double by)
{
    return (struct cg_box){box.x - by, box.y - by, box.width + 2.0 * by,
                           box.height + 2.0 * by};
}

static bool overlap(struct cg_box a, struct cg_box b)
{
    return a.x < b.x + b.width && b.x < a.x + a.width &&
           a.y < b.y + b.height && b.y < a.y + a.height;
}

static bool inside(struct cg_box box, struct cg_box frame)
{
    return box.x >= frame.x && box.y >= frame.y &&
           box.x + box.width <= frame.x + frame.width &&
           box.y + box.height <= frame.y + frame.height;
}

static bool crossed(struct cg_box box, const struct cg_point *point,
                    size_t count)
{
    for (size_t i = 1; i < count; i++)
        if (cg_box_crossed(box, point[i - 1], point[i]))
            return true;
    return false;
}

bool cg_place_free(const struct cg_place *place, struct cg_box box, double air)
{
    struct cg_box around = wider(box, air);
    if (!inside(box, place->frame))
        return false;
    for (size_t i = 0; i < place->boxes; i++)
        if (overlap(around, place->taken[i]))
            return false;
    for (size_t i = 0; i < place->curves; i++)
        if (crossed(around, place->curve[i].point, place->curve[i].count))
            return false;
    return true;
}

/* How high and low a curve runs from x to `past`; false where it does not run
 * all the way. */
static bool span_of(const struct cg_point *point, size_t count, double x,
                    double past, double *top, double *bottom)
{
    *top = INFINITY;
    *bottom = -INFINITY;
    if (count < 2 || !(point[0].x <= x) || !(point[count - 1].x >= past))
        return false;
    for (size_t i = 1; i < count; i++) {
        double begin = 0.0, end = 1.0, step = point[i].x - point[i - 1].x;
        double rise = point[i].y - point[i - 1].y;
        if (!isfinite(step + rise))
            continue;
        clip(point[i - 1].x, step, x, past, &begin, &end);
        if (begin > end)
            continue;
        double a = point[i - 1].y + begin * rise;
        double b = point[i - 1].y + end * rise;
        *top = fmin(*top, fmin(a, b));
        *bottom = fmax(*bottom, fmax(a, b));
    }
    return isfinite(*top) && isfinite(*bottom);
}

/* Whether another curve than this comes near a box. */
static bool doubtful(const struct cg_place *place, const struct cg_point *own,
                     struct cg_box box)
{
    struct cg_box around = wider(box, NEAR);
    for (size_t i = 0; i < place->curves; i++)
        if (place->curve[i].point != own &&
            crossed(around, place->curve[i].point, place->curve[i].count))
            return true;
    return false;
}

struct cg_box cg_place_beside(const struct cg_place *place,
                              const struct cg_point *point, size_t count,
                              double width, double height)
{
    struct cg_box best = {0.0, 0.0, 0.0, 0.0};
    double least = INFINITY, top, bottom;
    double room = place->frame.width - width - 2.0 * APART;
    for (int i = 0; i < 2 * TRIES && room > 0.0; i++) {
        double x = place->frame.x + APART + room * (i / 2) / (TRIES - 1);
        if (!span_of(point, count, x, x + width, &top, &bottom))
            continue;
        struct cg_box box = {
            x, i % 2 == 0 ? top - APART - height : bottom + APART, width,
            height};
        if (!cg_place_free(place, box, AIR))
            continue;
        double cost = bottom - top + (doubtful(place, point, box) ? 30.0 : 0.0);
        if (cost < least - 0.5) {
            least = cost;
            best = box;
        }
    }
    return best;
}

struct cg_box cg_place_between(const struct cg_place *place,
                               const struct cg_point *low, size_t lows,
                               const struct cg_point *high, size_t highs,
                               double width, double height)
{
    struct cg_box best = {0.0, 0.0, 0.0, 0.0};
    double most = 0.0, room = place->frame.width - width;
    double high_top, high_end, low_top, low_end;
    for (int i = 0; i < TRIES && room > 0.0; i++) {
        double x = place->frame.x + room * i / (TRIES - 1);
        if (!span_of(high, highs, x, x + width, &high_top, &high_end) ||
            !span_of(low, lows, x, x + width, &low_top, &low_end))
            continue;
        /* either may be the upper one */
        double y = fmin(high_end, low_end), past = fmax(low_top, high_top);
        struct cg_box box = {x, 0.5 * (y + past - height), width, height};
        if (past - y < height + 2.0 * AIR || past - y <= most ||
            !cg_place_free(place, box, AIR))
            continue;
        most = past - y;
        best = box;
    }
    return best;
}

/* Words so far from a spot in a direction, in the i-th of SLIDES ways: with
 * their near end there, or slid along above and below it. */
static struct cg_box slid(struct cg_point at, double away, double turn, int i,
                          double width, double height)
{
    double x = at.x + away * cos(turn), y = at.y - away * sin(turn);
    double aside = i == 0 ? 0.5 * (cos(turn) - 1.0) : -(i - 1) / (SLIDES - 2.0);
    return (struct cg_box){x + aside * width, y - 0.5 * height, width, height};
}

struct cg_box cg_place_around(const struct cg_place *place, struct cg_point at,
                              double width, double height)
{
    for (double away = 7.0; away <= FAR; away += 6.0)
        for (int i = 0; i < TURNS * SLIDES; i++) {
            double turn = 2.0 * acos(-1.0) * (i % TURNS) / TURNS;
            struct cg_box box = slid(at, away, turn, i / TURNS, width, height);
            if (cg_place_free(place, box, AIR))
                return box;
        }
    return (struct cg_box){0.0, 0.0, 0.0, 0.0};
}
