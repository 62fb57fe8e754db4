#include "film.h"

#include <math.h>
#include <stdbool.h>

enum { BALANCE_STEPS = 80, CYCLES = 60, LEAST_POINTS = 16 };
/* A metal never comes nearer than this [m]; the balance is met before. */
#define FILM_LEAST 1e-9
/* log h is found to this if nothing else is asked for, and a cycle repeats when
 * it agrees to so many times as much. */
#define BALANCE_TOLERANCE 1e-7
#define REPEAT_TIMES 10.0
/* Least part of a face that oil wets. */
#define LEAST_WET 0.02
/* Height of the film, over its least, where the pressure peaks, under a face
 * that has oil in plenty: H. M. Martin, "Lubrication of gear teeth" (1916), from
 * memory. */
#define FLOODED_FLOW 1.226
/* Film in rms roughnesses below which lubrication is mixed (Hamrock 1994). */
#define MIXED_FILM 3.0

/* What the balance needs at one instant: d(log h)/dt = rate log h + past. */
struct balance {
    const struct cg_film_ring *ring;
    const struct cg_film_drive *drive;
    size_t at;
    double near;       /* to which log h is found */
    double rate, past; /* [1/s] */
    /* Kept from look to look. */
    double slope; /* d excess / d log h */
    struct cg_face_film face;
    struct cg_film_point point;
};

/* Load on the asperities: the pressure over the part of the face within reach,
 * by Gauss and Legendre's rule, which is exact for x to the 15th (the pressure
 * there is nearly a polynomial of x to the 13.6th). */
static double contact_load(const struct cg_film_ring *ring, double film)
{
    static const double place[4] = {0.1834346424956498, 0.5255324099163290,
                                    0.7966664774136267, 0.9602898564975363};
    static const double weight[4] = {0.3626837833783620, 0.3137066458778873,
                                     0.2223810344533745, 0.1012285362903763};
    const struct cg_face_curve *face = &ring->face;
    double overlap = CG_ASPERITY_REACH * ring->asperity.roughness - film;
    if (!(overlap > 0.0))
        return 0.0;
    bool barrel = face->shape == CG_FACE_BARREL;
    double reach =
        barrel ? sqrt(2.0 * face->radius * overlap) : overlap / face->slope;
    double from = -fmin(reach, face->below), to = fmin(reach, face->above);
    double sum = 0.0;
    for (int i = 0; i < 4; i++)
        for (int side = -1; side <= 1; side += 2) {
            double x = 0.5 * (from + to) + side * place[i] * 0.5 * (to - from);
            double h =
                film + (barrel ? 0.5 * x * x / face->radius : face->slope * x);
            sum += weight[i] * cg_asperity_pressure(&ring->asperity, h);
        }
    return 0.5 * (to - from) * sum;
}

/* The face as far as oil wets it, never less than LEAST_WET of its width;
 * `dry`: what is left of it at the leading edge [m]. */
static struct cg_face_curve wetted(const struct cg_film_ring *ring, double film,
                                   bool down, double *dry)
{
    struct cg_face_curve face = ring->face;
    double *lead = down ? &face.below : &face.above, whole = *lead;
    *dry = 0.0;
    if (!(ring->supply > 0.0))
        return face;
    double wet = (2.0 * ring->supply / film - 1.0) / (FLOODED_FLOW - 1.0);
    double least = fmin(LEAST_WET * (face.above + face.below), whole);
    *lead = fmin(whole, fmax(wet * whole, least));
    *dry = whole - *lead;
    return face;
}

/* log(held off / pushed on): falls as the film grows. */
static double excess(struct balance *b, double log_film)
{
    const struct cg_film_drive *drive = b->drive;
    double film = exp(log_film);
    struct cg_face_state state = {
        .film = film,
        .opening = film * (b->rate * log_film + b->past),
        .speed = drive->speed[b->at],
        .viscosity = drive->viscosity[b->at],
        .pressure_above = drive->pressure_above[b->at],
        .pressure_below = drive->pressure_below[b->at]};
    double dry;
    bool down = state.speed >= 0.0;
    struct cg_face_curve face = wetted(b->ring, film, down, &dry);
    cg_reynolds_film(&face, &state, &b->face);
    b->face.support +=
        dry * (down ? state.pressure_below : state.pressure_above);
    double contact = contact_load(b->ring, film);
    b->point = (struct cg_film_point){film, contact, b->face.friction,
                                      b->ring->boundary_friction * contact,
                                      b->face.inverse};
    return log((b->face.support + contact) / drive->load[b->at]);
}

/* Finds log h of the balance: secant steps from `guess`, the first with the
 * slope of the instant before, inside a bracket that closes around the root.
 * The film's bounds stand for the root where they cut it off. */
static double find_film(struct balance *b, double guess)
{
    double low = log(FILM_LEAST), high = log(CG_FILM_MOST);
    double y = fmin(fmax(guess, low), high), e = excess(b, y);
    for (int i = 0; i < BALANCE_STEPS; i++) {
        if (e > 0.0)
            low = y;
        else
            high = y;
        double next = y - e / b->slope;
        if (!(fabs(next - y) < 1.0))
            next = y + (e > 0.0 ? 1.0 : -1.0);
        if (!(next > low && next < high))
            next = 0.5 * (low + high);
        double e_next = excess(b, next), moved = next - y;
        double slope = (e_next - e) / moved;
        if (slope < 0.0)
            b->slope = slope;
        y = next;
        e = e_next;
        if (fabs(moved) <= b->near || fabs(e) <= b->near * fabs(b->slope))
            break;
    }
    return y;
}

/* ---- the drive ---- */

static bool positive(double value)
{
    return value > 0.0 && isfinite(value);
}

static enum cg_status check(const struct cg_film_ring *ring,
                            const struct cg_film_drive *drive,
                            struct cg_error *error)
{
    const struct cg_face_curve *face = &ring->face;
    if (!positive(face->above) || !(face->below >= 0.0) ||
        !positive(face->shape == CG_FACE_BARREL ? face->radius : face->slope))
        return cg_error_set(error, CG_BAD_INPUT,
                            "ring face: width and shape must be above 0");
    if (!positive(ring->asperity.roughness) ||
        !(ring->asperity.stiffness >= 0.0))
        return cg_error_set(error, CG_BAD_INPUT,
                            "ring face: roughness must be above 0");
    if (drive->points < LEAST_POINTS || !positive(drive->step))
        return cg_error_set(error, CG_BAD_INPUT,
                            "film: at least %d points and a step above 0",
                            LEAST_POINTS);
    for (size_t i = 0; i < drive->points; i++)
        if (!isfinite(drive->speed[i]) || !positive(drive->viscosity[i]) ||
            !positive(drive->load[i]) || !positive(drive->pressure_above[i]) ||
            !positive(drive->pressure_below[i]))
            return cg_error_set(error, CG_BAD_INPUT,
                                "film: point %zu: viscosity, load and gas "
                                "pressures must be above 0",
                                i);
    return CG_OK;
}

static size_t fastest(const struct cg_film_drive *drive)
{
    size_t at = 0;
    for (size_t i = 1; i < drive->points; i++)
        if (fabs(drive->speed[i]) > fabs(drive->speed[at]))
            at = i;
    return at;
}

/* From the steady film where the ring is fastest on, until a point of the
 * next cycle and its neighbour come out as in this one. */
static enum cg_status march(const struct cg_film_ring *ring,
                            const struct cg_film_drive *drive,
                            struct cg_film_point *point, size_t *steps,
                            struct cg_error *error)
{
    size_t points = drive->points;
    struct balance b = {
        .ring = ring,
        .drive = drive,
        .near = drive->near > 0.0 ? drive->near : BALANCE_TOLERANCE,
        .slope = -1.0};
    b.at = fastest(drive);
    double last = find_film(&b, log(3e-6)), before = last, third = last;
    bool agreed = false;
    b.rate = 1.5 / drive->step;
    for (*steps = 1; *steps <= CYCLES * points; (*steps)++) {
        b.at = (b.at + 1) % points;
        b.past = (0.5 * before - 2.0 * last) / drive->step;
        double y = find_film(&b, 3.0 * (last - before) + third);
        bool agrees = *steps > points &&
                      fabs(y - log(point[b.at].film)) < REPEAT_TIMES * b.near;
        point[b.at] = b.point;
        if (agrees && agreed)
            return CG_OK;
        agreed = agrees;
        third = before;
        before = last;
        last = y;
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "the ring's oil film does not come to repeat in %d "
                        "cycles (viscosity %.3g Pa s)",
                        CYCLES, drive->viscosity[0]);
}

static void average(const struct cg_film_ring *ring,
                    const struct cg_film_drive *drive,
                    const struct cg_film_point *point,
                    struct cg_film_mean *mean)
{
    double share = 1.0 / (double)drive->points, inverse = 0.0;
    mean->minimum = INFINITY;
    for (size_t i = 0; i < drive->points; i++) {
        double speed = fabs(drive->speed[i]);
        if (point[i].film < mean->minimum) {
            mean->minimum = point[i].film;
            mean->minimum_at = i;
        }
        inverse += share * point[i].inverse;
        mean->viscous_power += share * speed * point[i].viscous;
        mean->boundary_power += share * speed * point[i].boundary;
        if (point[i].film < MIXED_FILM * ring->asperity.roughness)
            mean->mixed_share += share;
        if (point[i].film > 0.999 * CG_FILM_MOST)
            mean->lifted_share += share;
    }
    mean->heat_film = (ring->face.above + ring->face.below) / inverse;
}

enum cg_status cg_film_solve(const struct cg_film_ring *ring,
                             const struct cg_film_drive *drive,
                             struct cg_film_point *point,
                             struct cg_film_mean *mean, struct cg_error *error)
{
    *mean = (struct cg_film_mean){0};
    enum cg_status status = check(ring, drive, error);
    if (status == CG_OK)
        status = march(ring, drive, point, &mean->steps, error);
    if (status == CG_OK)
        average(ring, drive, point, mean);
    return status;
}
