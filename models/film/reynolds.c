/* Symbols: x from the nearest point along the oil's way, the leading edge at
 * -a, the trailing one at b; u >= 0 the bore's speed past the ring; w = dh0/dt.
 *
 *   dp/dx = 12 eta N / h^3,   N = u/2 h + w x - q
 *
 * with the flow q that remains constant along the film.  Every integral asked
 * for is a sum of those of x^i / h^j ("moments").
 */
#include "reynolds.h"

#include <math.h>
#include <stdbool.h>

enum { SEARCH = 100 };
/* A step of Newton's method this small, in widths of the face, is the last:
 * what is left is of the order of its square. */
#define BOUND_TOLERANCE 1e-6

struct cg_face_curve cg_face_curve_of(enum cg_face_shape shape, double width,
                                      double drop, double peak)
{
    struct cg_face_curve face = {.shape = shape};
    if (shape == CG_FACE_BARREL) {
        double far = fmax(peak, 1.0 - peak) * width;
        face.above = peak * width;
        face.below = (1.0 - peak) * width;
        face.radius = 0.5 * far * far / drop;
    } else {
        face.above = width;
        face.slope = drop / width;
    }
    return face;
}

/* The state seen along the oil's way. */
struct gap {
    enum cg_face_shape shape;
    double radius, slope;
    double h0, u, w, eta;
    double lead, trail; /* x of the edges [m] */
    double p_lead, p_trail, p_cavity;
    double length; /* barrel: sqrt(2 R h0) */
};

/* Integrals from x = 0: a_j of 1/h^j, b_j of x/h^j, d3 of x^2/h^3. */
struct moments {
    double h, a1, a2, a3, b2, b3, d3;
};

static struct gap gap_of(const struct cg_face_curve *face,
                         const struct cg_face_state *state)
{
    bool down = state->speed >= 0.0; /* oil comes from below */
    double above = state->pressure_above, below = state->pressure_below;
    return (struct gap){.shape = face->shape,
                        .radius = face->radius,
                        .slope = down ? face->slope : -face->slope,
                        .h0 = state->film,
                        .u = fabs(state->speed),
                        .w = state->opening,
                        .eta = state->viscosity,
                        .lead = down ? -face->below : -face->above,
                        .trail = down ? face->above : face->below,
                        .p_lead = down ? below : above,
                        .p_trail = down ? above : below,
                        .p_cavity = fmin(above, below),
                        .length = sqrt(2.0 * face->radius * state->film)};
}

static double thickness(const struct gap *gap, double x)
{
    if (gap->shape == CG_FACE_BARREL)
        return gap->h0 + 0.5 * x * x / gap->radius;
    return gap->h0 + gap->slope * x;
}

/* Barrel: x = sqrt(2 R h0) tan t, so h = h0 / cos^2 t. */
static struct moments barrel_moments(const struct gap *gap, double x)
{
    double h0 = gap->h0, tangent = x / gap->length, t = atan(tangent);
    double cos2 = 1.0 / (1.0 + tangent * tangent), sc = tangent * cos2;
    struct moments m = {.h = h0 / cos2};
    m.a1 = gap->length / h0 * t;
    m.a2 = gap->length / (h0 * h0) * 0.5 * (t + sc);
    m.a3 = gap->length / (h0 * h0 * h0) * (0.375 * (t + sc) + 0.25 * sc * cos2);
    m.b2 = -gap->radius / m.h;
    m.b3 = -0.5 * gap->radius / (m.h * m.h);
    m.d3 = 2.0 * gap->radius * (m.a2 - h0 * m.a3);
    return m;
}

static struct moments taper_moments(const struct gap *gap, double x)
{
    double h0 = gap->h0, s = gap->slope;
    struct moments m = {.h = h0 + s * x};
    m.a1 = log1p(s * x / h0) / s;
    m.a2 = x / (h0 * m.h);
    m.a3 = 0.5 * x * (m.h + h0) / (h0 * h0 * m.h * m.h);
    m.b2 = (m.a1 - h0 * m.a2) / s;
    m.b3 = (m.a2 - h0 * m.a3) / s;
    m.d3 = (m.b2 - h0 * m.b3) / s;
    return m;
}

static struct moments moments_at(const struct gap *gap, double x)
{
    return gap->shape == CG_FACE_BARREL ? barrel_moments(gap, x)
                                        : taper_moments(gap, x);
}

static struct moments between(const struct moments *from,
                              const struct moments *to)
{
    return (struct moments){to->h,
                            to->a1 - from->a1,
                            to->a2 - from->a2,
                            to->a3 - from->a3,
                            to->b2 - from->b2,
                            to->b3 - from->b3,
                            to->d3 - from->d3};
}

/* Over a stretch with flow q: rise of p, integral of x dp/dx, of h dp/dx. */
static double rise(const struct gap *gap, const struct moments *m, double q)
{
    return 12.0 * gap->eta *
           (0.5 * gap->u * m->a2 + gap->w * m->b3 - q * m->a3);
}

static double lever(const struct gap *gap, const struct moments *m, double q)
{
    return 12.0 * gap->eta *
           (0.5 * gap->u * m->b2 + gap->w * m->d3 - q * m->b3);
}

static double pull(const struct gap *gap, const struct moments *m, double q)
{
    return 12.0 * gap->eta *
           (0.5 * gap->u * m->a1 + gap->w * m->b2 - q * m->a2);
}

/* dN/dx, and the flow that makes N vanish at x. */
static double steepness(const struct gap *gap, double x)
{
    double bend = gap->shape == CG_FACE_BARREL ? x / gap->radius : gap->slope;
    return 0.5 * gap->u * bend + gap->w;
}

static double flow_at_rest(const struct gap *gap, double x)
{
    return 0.5 * gap->u * thickness(gap, x) + gap->w * x;
}

/* Where N turns from - to +, the pressure's least place; INFINITY if it does
 * not. */
static double least_place(const struct gap *gap, double q)
{
    double level = 0.5 * gap->u * gap->h0 - q; /* N at x = 0 */
    if (gap->shape == CG_FACE_TAPER) {
        double n = steepness(gap, 0.0);
        return n > 0.0 ? -level / n : INFINITY;
    }
    double bend = 0.25 * gap->u / gap->radius; /* N = bend x^2 + w x + level */
    double square = gap->w * gap->w - 4.0 * bend * level;
    if (!(square >= 0.0))
        return INFINITY;
    double root = sqrt(square);
    if (gap->w > 0.0)
        return -2.0 * level / (gap->w + root);
    return bend > 0.0 ? 0.5 * (root - gap->w) / bend : INFINITY;
}

/* Where N is least, or the leading edge if it rises all along. */
static double search_start(const struct gap *gap)
{
    if (gap->shape == CG_FACE_TAPER || gap->u <= 0.0)
        return gap->lead;
    return fmax(-2.0 * gap->radius * gap->w / gap->u, gap->lead);
}

/* The bound of a cavity, where p is the cavity's and dp/dx = 0, between `free`
 * (inside the cavity, pressure would be too low) and `held`.  `edge` are the
 * moments at the film's other end, `above` the pressure there over the
 * cavity's.  Newton's method from `x` inside the bracket: the pressure left
 * over at the bound moves one way. */
static double cavity_bound(const struct gap *gap, double held, double free,
                           const struct moments *edge, double above, double x)
{
    bool ascending = held < free;
    double near_enough = BOUND_TOLERANCE * (gap->trail - gap->lead);
    if (!(ascending ? x > held && x < free : x < held && x > free))
        x = free;
    for (int i = 0; i < SEARCH; i++) {
        struct moments at = moments_at(gap, x), m = between(edge, &at);
        double over = above + rise(gap, &m, flow_at_rest(gap, x));
        if (over > 0.0)
            held = x;
        else
            free = x;
        double slope =
            -12.0 * gap->eta * steepness(gap, x) * m.a3; /* d over/dx */
        double next = x - over / slope;
        if (!((next - held) * (next - free) < 0.0))
            next = 0.5 * (held + free);
        bool found = fabs(next - x) <= near_enough;
        x = next;
        if (found)
            break;
    }
    return x;
}

static void full_film(const struct gap *gap, const struct moments *m, double q,
                      struct cg_face_film *film)
{
    double width = gap->trail - gap->lead;
    film->support =
        gap->p_cavity * width + gap->trail * (gap->p_trail - gap->p_cavity) -
        gap->lead * (gap->p_lead - gap->p_cavity) - lever(gap, m, q);
    film->friction = gap->eta * gap->u * m->a1 + 0.5 * pull(gap, m, q);
    film->inverse = m->a1;
    film->rupture = film->reform = gap->trail;
}

/* Integral of oil share over h in the cavity: the oil that comes in at the
 * rupture fills the gap while that narrows, and h(rupture)/h of it after. */
static double drawn(const struct gap *gap, double rupture, double reform)
{
    double from = rupture;
    if (gap->shape == CG_FACE_BARREL && rupture < 0.0)
        from = fmin(-rupture, reform);
    else if (gap->shape == CG_FACE_TAPER && gap->slope < 0.0)
        from = reform;
    struct moments a = moments_at(gap, rupture), b = moments_at(gap, from);
    struct moments c = moments_at(gap, reform);
    return b.a1 - a.a1 + a.h * (c.a2 - b.a2);
}

/* The film in two stretches, a cavity between them around `inside`. */
static void cavitated(const struct gap *gap, const struct moments *lead,
                      const struct moments *trail, double inside,
                      struct cg_face_film *film)
{
    double over_lead = gap->p_lead - gap->p_cavity;
    double over_trail = gap->p_trail - gap->p_cavity;
    double start = search_start(gap);
    film->rupture =
        start > gap->lead || over_lead > 0.0
            ? cavity_bound(gap, start, inside, lead, over_lead, film->rupture)
            : gap->lead;
    film->reform = over_trail > 0.0
                       ? cavity_bound(gap, gap->trail, inside, trail,
                                      over_trail, film->reform)
                       : gap->trail;
    struct moments rupture = moments_at(gap, film->rupture);
    struct moments reform = moments_at(gap, film->reform);
    double q1 = flow_at_rest(gap, film->rupture);
    double q2 = flow_at_rest(gap, film->reform);
    struct moments front = between(lead, &rupture);
    struct moments back = between(&reform, trail);
    film->support = gap->p_cavity * (gap->trail - gap->lead) -
                    gap->lead * over_lead - lever(gap, &front, q1) +
                    gap->trail * over_trail - lever(gap, &back, q2);
    film->inverse =
        front.a1 + drawn(gap, film->rupture, film->reform) + back.a1;
    film->friction = gap->eta * gap->u * film->inverse +
                     0.5 * (pull(gap, &front, q1) + pull(gap, &back, q2));
}

void cg_reynolds_film(const struct cg_face_curve *face,
                      const struct cg_face_state *state,
                      struct cg_face_film *film)
{
    struct gap gap = gap_of(face, state);
    struct moments lead = moments_at(&gap, gap.lead);
    struct moments trail = moments_at(&gap, gap.trail);
    struct moments all = between(&lead, &trail);
    double q = (0.5 * gap.u * all.a2 + gap.w * all.b3 -
                (gap.p_trail - gap.p_lead) / (12.0 * gap.eta)) /
               all.a3;
    double least = least_place(&gap, q);
    if (least > gap.lead && least < gap.trail) {
        struct moments at = moments_at(&gap, least);
        struct moments front = between(&lead, &at);
        if (gap.p_lead + rise(&gap, &front, q) < gap.p_cavity) {
            cavitated(&gap, &lead, &trail, least, film);
            return;
        }
    }
    full_film(&gap, &all, q, film);
}
