/* Where each part stops, from what a book of looks shows. */
#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

#include "ladder_look.h"

enum { PASSES = 40, SECTIONS = 6 };
#define SECTION 0.381966 /* golden: J. Kiefer, Proc. AMS 4 (1953) */

enum cg_look_depth cg_look_depth_of(enum cg_ladder_part part)
{
    switch (part) {
    case CG_LADDER_FINISH:
    case CG_LADDER_CHARGE:
        return CG_LOOK_CHARGE;
    case CG_LADDER_TOP_GAP:
    case CG_LADDER_SECOND_GAP:
    case CG_LADDER_SEATING:
        return CG_LOOK_GAPS;
    default:
        return CG_LOOK_HEAT;
    }
}

/* What the root finder's function needs besides the boost. */
struct search {
    struct cg_look_book *book;
    enum cg_ladder_part part;
    int which; /* of the two scores */
    int why;   /* of the last boost at which it was positive */
    enum cg_status status;
    struct cg_error *error;
};

static double score(double boost, void *context)
{
    struct search *search = context;
    const struct cg_look *look;
    enum cg_status status =
        cg_look_at(search->book, boost, cg_look_depth_of(search->part), &look,
                   search->error);
    if (status != CG_OK) {
        search->status = status;
        return GSL_NAN;
    }
    double at = look->score[search->part][search->which];
    if (at > 0.0)
        search->why = look->why[search->part];
    return fmin(fmax(at, -1e3), 1e3);
}

/* Brent's method between two boosts that enclose the crossing; *boost is the
 * lower end, where the part is good. */
static enum cg_status refine(struct search *search, double low, double high,
                             double *boost)
{
    gsl_function function = {score, search};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    if (solver == NULL)
        return cg_error_set(search->error, CG_NO_MEMORY, "out of memory");
    int gsl = gsl_root_fsolver_set(solver, &function, low, high);
    double from = low, to = high;
    for (int pass = 0; gsl == GSL_SUCCESS && pass < PASSES; pass++) {
        if (to - from <= CG_LADDER_TOLERANCE)
            break;
        gsl = gsl_root_fsolver_iterate(solver);
        from = gsl_root_fsolver_x_lower(solver);
        to = gsl_root_fsolver_x_upper(solver);
    }
    gsl_root_fsolver_free(solver);
    if (search->status != CG_OK)
        return search->status;
    if (gsl != GSL_SUCCESS)
        return cg_error_set(search->error, CG_NUMERICAL,
                            "%s between %.0f and %.0f kPa: %s",
                            cg_ladder_word(search->part), low / 1e3, high / 1e3,
                            gsl_strerror(gsl));
    *boost = from;
    return CG_OK;
}

/* Three boosts of the look, the middle one the highest, and their scores. */
struct bump {
    double at[3], score[3];
};

/* Whether the score, highest in between and not yet positive, comes to nothing
 * good there: *over, or NaN.  What cannot reach 0 by a bend as sharp as that of
 * the three points is not looked at. */
static enum cg_status climb_bump(struct search *search, struct bump bump,
                                 double *over)
{
    double bend = 2.0 * bump.score[1] - bump.score[0] - bump.score[2];
    *over = NAN;
    for (int i = 0; i < SECTIONS && bump.score[1] + bend > 0.0; i++) {
        double left = bump.at[1] - bump.at[0], right = bump.at[2] - bump.at[1];
        int up = right > left;
        double at = bump.at[1] + SECTION * (up ? right : -left);
        double now = score(at, search);
        if (search->status != CG_OK)
            return search->status;
        if (now > 0.0) {
            *over = at;
            return CG_OK;
        }
        int better = now > bump.score[1];
        double out = better ? bump.at[1] : at;
        double out_score = better ? bump.score[1] : now;
        int end = better == up ? 0 : 2;
        bump.at[end] = out;
        bump.score[end] = out_score;
        if (better) {
            bump.at[1] = at;
            bump.score[1] = now;
        }
    }
    return CG_OK;
}

/* The first crossing of one score over the boosts of the look. */
static enum cg_status find_crossing(struct search *search, const double *boost,
                                    size_t boosts, double *found)
{
    double over = NAN;
    *found = NAN;
    struct bump at = {{0.0, 0.0, boost[0]}, {-1e3, -1e3, 0.0}};
    for (size_t i = 0; i < boosts; i++) {
        at = (struct bump){{at.at[1], at.at[2], boost[i]},
                           {at.score[1], at.score[2], score(boost[i], search)}};
        if (search->status != CG_OK)
            return search->status;
        if (i == 0 && at.score[2] > 0.0) {
            *found = boost[0];
            return CG_OK;
        }
        if (i > 1 && at.score[1] >= at.score[0] && at.score[2] < at.score[1]) {
            enum cg_status status = climb_bump(search, at, &over);
            if (status != CG_OK)
                return status;
            if (!isnan(over))
                return refine(search, at.at[0], over, found);
        }
        if (at.score[2] > 0.0)
            return refine(search, boost[i - 1], boost[i], found);
    }
    return CG_OK;
}

static enum cg_status find_stop(struct cg_look_book *book,
                                enum cg_ladder_part part, const double *boost,
                                size_t boosts, struct cg_ladder_stop *stop,
                                struct cg_error *error)
{
    struct search search = {.book = book, .part = part, .error = error};
    enum cg_status status = find_crossing(&search, boost, boosts, &stop->fits);
    stop->why = search.why;
    search.which = 1;
    if (status == CG_OK)
        status = find_crossing(&search, boost, boosts, &stop->stands);
    /* what does not stand does not fit */
    if (!isnan(stop->stands))
        stop->fits = fmin(stop->fits, stop->stands);
    return status;
}

enum { MOST_BOOSTS = 64 };

/* The boosts of the first look: steps, with `must` among them. */
static size_t list_boosts(double must, double end, double boost[MOST_BOOSTS])
{
    size_t count = 0;
    for (double at = 0.0; at < end - 1.0 && count < MOST_BOOSTS - 2;
         at += CG_LADDER_STEP) {
        if (count > 0 && boost[count - 1] < must - 1.0 && at > must + 1.0)
            boost[count++] = must;
        boost[count++] = at;
    }
    if (boost[count - 1] < must - 1.0 && must < end - 1.0)
        boost[count++] = must;
    boost[count++] = end;
    return count;
}

enum cg_status cg_look_climb(struct cg_look_book *book, double must,
                             double *end,
                             struct cg_ladder_stop stop[CG_LADDER_PARTS],
                             struct cg_error *error)
{
    double boost[MOST_BOOSTS] = {0.0};
    const struct cg_look *look;
    size_t boosts = list_boosts(must, *end, boost), seen = 0;
    enum cg_status status = CG_OK;
    for (; seen < boosts && status == CG_OK; seen++)
        status = cg_look_at(book, boost[seen], CG_LOOK_GAPS, &look, error);
    if (status == CG_NUMERICAL && boost[seen - 1] > must + 1.0) {
        boosts = seen - 1; /* further than can be computed */
        status = CG_OK;
    }
    *end = boost[boosts - 1];
    for (int part = 0; part < CG_LADDER_PARTS && status == CG_OK; part++)
        status = find_stop(book, (enum cg_ladder_part)part, boost, boosts,
                           &stop[part], error);
    return status;
}
