#include "ceiling.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

#include "answer.h"
#include "follow.h"
#include "growth.h"
#include "operating.h"

enum { MOST_PASSES = 60 };
#define BOOST_TOLERANCE 50.0 /* of the ceiling [Pa] */
#define CAPPED 0.01 /* of the retard that is the most [deg] */
#define TOP_TOLERANCE 1e3 /* of a boost at which most is needed [Pa] */

bool cg_ceiling_capped(const struct cg_case *c,
                       const struct cg_performance *full)
{
    return c->combustion.ignition == CG_IGNITION_SPARK &&
           full->burn50_deg - c->combustion.burn50_deg >=
               CG_RETARD_MOST - CAPPED;
}

enum cg_status cg_ceiling_at(const struct cg_case *c, double boost,
                             struct cg_ceiling_point *point,
                             struct cg_error *error)
{
    struct cg_case at = *c;
    struct cg_duty_run *run;
    struct cg_answer answer;
    at.charge.boost = boost;
    enum cg_status status = cg_duty_run_create(&at, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(&at, run, 0.0, NULL, NULL, &answer, error);
    cg_duty_run_free(run);
    if (status != CG_OK)
        return status;
    point->need = answer.verdict.need;
    point->file_to = answer.file_to_top;
    memcpy(point->hardest, answer.duty[answer.hardest].name,
           sizeof point->hardest);
    size_t past = cg_answer_past(&answer);
    const struct cg_duty_answer *duty =
        &answer.duty[past < answer.duties ? past : 0];
    point->limits = duty->limits;
    memcpy(point->duty, duty->name, sizeof point->duty);
    point->capped = cg_ceiling_capped(c, &answer.performance);
    return CG_OK;
}

/* What the root finder's function needs besides the boost. */
struct search {
    const struct cg_case *c;
    double gap;
    enum cg_status status;
    struct cg_error *error;
    double free, held; /* boosts looked at: the highest below which no limit is
                          past, the lowest at which one is [Pa]; INFINITY */
};

static bool is_free(const struct cg_ceiling_point *point)
{
    return cg_limits_first(&point->limits) == CG_PAST_LIMITS && !point->capped;
}

/* Takes in what a boost showed of the limits. */
static void note_limits(double boost, const struct cg_ceiling_point *point,
                        struct search *search)
{
    if (!is_free(point))
        search->held = fmin(search->held, boost);
    else if (boost < search->held)
        search->free = fmax(search->free, boost);
}

static double shortfall(double boost, void *context)
{
    struct search *search = context;
    struct cg_ceiling_point point;
    enum cg_status status =
        cg_ceiling_at(search->c, boost, &point, search->error);
    if (status != CG_OK) {
        search->status = status;
        return GSL_NAN;
    }
    return point.file_to.at_least - search->gap;
}

/* Brent's method between two boosts that enclose the crossing. */
static enum cg_status refine(struct search *search, double low, double high,
                             double *boost)
{
    gsl_function function = {shortfall, search};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    if (solver == NULL)
        return cg_error_set(search->error, CG_NO_MEMORY, "out of memory");
    int gsl = gsl_root_fsolver_set(solver, &function, low, high);
    for (int pass = 0; gsl == GSL_SUCCESS && pass < MOST_PASSES; pass++) {
        gsl = gsl_root_fsolver_iterate(solver);
        if (gsl_root_fsolver_x_upper(solver) -
                gsl_root_fsolver_x_lower(solver) <
            BOOST_TOLERANCE)
            break;
    }
    /* The safe end of the bracket. */
    double found = gsl_root_fsolver_x_lower(solver);
    gsl_root_fsolver_free(solver);
    if (search->status != CG_OK)
        return search->status;
    if (gsl != GSL_SUCCESS)
        return cg_error_set(search->error, CG_NUMERICAL,
                            "ceiling between %.0f and %.0f kPa: %s", low / 1e3,
                            high / 1e3, gsl_strerror(gsl));
    *boost = found;
    return CG_OK;
}

/* The least gap to file to at that boost [m]. */
static enum cg_status least_at(struct search *search, double boost,
                               double *least)
{
    struct cg_ceiling_point point;
    enum cg_status status =
        cg_ceiling_at(search->c, boost, &point, search->error);
    if (status == CG_OK) {
        *least = point.file_to.at_least;
        note_limits(boost, &point, search);
    }
    return status;
}

static bool stops(const struct search *search, double least)
{
    return cg_advice_fits(search->gap, least, least) != CG_FITS;
}

/* Three boosts of the look, and what they need. */
struct bump {
    double low, middle, high;
    double at_low, at_middle, at_high;
};

/* Where the need falls again it was highest in between: golden sections (J.
 * Kiefer, "Sequential minimax search for a maximum", Proc. AMS 4, 1953) until a
 * boost is found at which the gap does not fit, or the highest need is.  *over:
 * that boost, or NaN. */
static enum cg_status climb(struct search *search, struct bump bump,
                            double *over)
{
    const double section = 0.381966;
    *over = NAN;
    while (bump.high - bump.low > TOP_TOLERANCE) {
        double right = bump.high - bump.middle, left = bump.middle - bump.low;
        bool up = right > left;
        double at = bump.middle + section * (up ? right : -left), need = 0.0;
        enum cg_status status = least_at(search, at, &need);
        if (status != CG_OK)
            return status;
        if (stops(search, need)) {
            *over = at;
            return CG_OK;
        }
        bool better = need > bump.at_middle;
        double out = better ? bump.middle : at;
        if (better == up)
            bump.low = out;
        else
            bump.high = out;
        if (better) {
            bump.middle = at;
            bump.at_middle = need;
        }
    }
    return CG_OK;
}

/* Whether the highest need around `bump.middle` fits; the ceiling if not. */
static enum cg_status look_between(struct search *search, struct bump bump,
                                   struct cg_ceiling *out, bool *found)
{
    double over;
    enum cg_status status = climb(search, bump, &over);
    *found = status == CG_OK && !isnan(over);
    return *found ? refine(search, bump.low, over, &out->boost) : status;
}

/* Steps up from no boost to the first crossing, with a look at every highest
 * need on the way. */
static enum cg_status look(struct search *search, struct cg_ceiling *out)
{
    struct bump at = {0.0, 0.0, 0.0, 0.0, 0.0, 0.0};
    bool found = false;
    enum cg_status status =
        cg_ceiling_at(search->c, 0.0, &out->at_none, search->error);
    if (status != CG_OK)
        return status;
    note_limits(0.0, &out->at_none, search);
    at.at_high = out->at_none.file_to.at_least;
    out->rises = true;
    if (stops(search, at.at_high)) {
        out->never_enough = true;
        return CG_OK;
    }
    at.at_low = at.at_middle = at.at_high;
    while (at.high < CG_CEILING_MOST) {
        at = (struct bump){at.middle,    at.high,
                           fmin(at.high + CG_CEILING_STEP, CG_CEILING_MOST),
                           at.at_middle, at.at_high, 0.0};
        status = least_at(search, at.high, &at.at_high);
        if (status != CG_OK)
            return status;
        bool rises = at.at_high >= at.at_middle;
        if (!rises && at.at_middle >= at.at_low)
            status = look_between(search, at, out, &found);
        out->rises = out->rises && rises;
        if (status != CG_OK || found)
            return status;
        if (stops(search, at.at_high))
            return refine(search, at.middle, at.high, &out->boost);
    }
    out->always_enough = true;
    out->boost = CG_CEILING_MOST;
    return CG_OK;
}

/* When the nominal closure leaves less than the residual, and nothing. */
enum { RESIDUAL, TOUCH, LIMITS };

struct touch {
    const struct cg_case *c;
    const struct cg_duty_run *run;
    double *strain; /* [stations] */
    struct cg_follow follow;
};

static void read_closure(void *context, const double *temperature,
                         double *value)
{
    struct touch *touch = context;
    const struct cg_case *c = touch->c;
    const struct cg_thermal *thermal = touch->run->thermal;
    cg_growth_bore(c, thermal, temperature, touch->strain);
    double ring = cg_growth_ring(c, thermal, temperature, CG_RING_TOP);
    value[RESIDUAL] = value[TOUCH] =
        cg_growth_closure(c, thermal, touch->strain, ring, CG_RING_TOP,
                          c->margin.residual)
            .closure;
}

static enum cg_status see_touch(void *context, const struct cg_instant *instant,
                                struct cg_error *error)
{
    struct touch *touch = context;
    (void)error;
    cg_follow_see(&touch->follow, touch->run, instant);
    return CG_OK;
}

static enum cg_status time_to_touch(const struct cg_case *c,
                                    struct cg_ceiling *ceiling,
                                    struct cg_error *error)
{
    struct cg_duty_run *run;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    struct touch touch = {.c = c, .run = run};
    struct cg_follow *follow = &touch.follow;
    touch.strain =
        malloc(run->thermal->bore.grid.stations * sizeof *touch.strain);
    status = cg_follow_begin(run, LIMITS, follow, error);
    follow->read = read_closure;
    follow->context = &touch;
    follow->limit[RESIDUAL] = ceiling->gap - c->margin.residual;
    follow->limit[TOUCH] = ceiling->gap;
    if (status == CG_OK && touch.strain == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (status == CG_OK)
        status = cg_duty_run_go(c, run, 0.0, see_touch, &touch, NULL, error);
    ceiling->residual_time = follow->passed[RESIDUAL];
    ceiling->touch_time = follow->passed[TOUCH];
    cg_follow_free(follow);
    free(touch.strain);
    cg_duty_run_free(run);
    return status;
}

/* Between the last boost that was free and the first that is held. */
static enum cg_status find_stop(struct search *search, struct cg_ceiling *out)
{
    struct cg_ceiling_point point = out->at_none;
    enum cg_status status = CG_OK;
    out->stops = out->boost;
    out->by = out->always_enough ? CG_CEILING_RULE : CG_CEILING_GAP;
    out->past = CG_PAST_LIMITS;
    if (!is_free(&out->at_none))
        search->held = search->free = 0.0;
    if (out->never_enough || search->held > CG_CEILING_MOST)
        return CG_OK;
    if (search->free > search->held) /* one between the steps was held */
        search->free = fmax(search->held - CG_CEILING_STEP, 0.0);
    while (search->held - search->free > CG_CEILING_BAND && status == CG_OK) {
        double middle = 0.5 * (search->free + search->held);
        status = cg_ceiling_at(search->c, middle, &point, search->error);
        if (status == CG_OK)
            note_limits(middle, &point, search);
    }
    if (status != CG_OK || search->free >= out->boost)
        return status;
    status = cg_ceiling_at(search->c, search->held, &point, search->error);
    out->stops = search->free;
    out->past = cg_limits_first(&point.limits);
    out->by = out->past != CG_PAST_LIMITS ? CG_CEILING_LIMIT : CG_CEILING_SPARK;
    return status;
}

enum cg_status cg_ceiling_find(const struct cg_case *c, double gap,
                               struct cg_ceiling *ceiling,
                               struct cg_error *error)
{
    struct cg_ceiling found = {
        .gap = gap, .residual_time = NAN, .touch_time = NAN};
    struct search search = {.c = c, .gap = gap, .error = error,
                            .held = INFINITY};
    if (c->charge.charger == CG_CHARGER_NONE)
        return cg_error_set(error, CG_BAD_INPUT,
                            "charge.charger: none, and a ceiling needs "
                            "boost; turbine or belt is allowed");
    enum cg_status status = look(&search, &found);
    if (status == CG_OK)
        status = find_stop(&search, &found);
    if (status == CG_OK)
        status = cg_ceiling_at(c, c->charge.boost, &found.at_target, error);
    /* It fits above what it stands: the need has fallen in between. */
    if (status == CG_OK && c->charge.boost > found.boost &&
        !stops(&search, found.at_target.file_to.at_least))
        found.rises = false;
    if (status == CG_OK && found.at_target.need > gap)
        status = time_to_touch(c, &found, error);
    if (status == CG_OK)
        *ceiling = found;
    return status;
}

bool cg_ceiling_stands(const struct cg_ceiling *ceiling)
{
    const struct cg_ceiling_point *target = &ceiling->at_target;
    return cg_limits_first(&target->limits) == CG_PAST_LIMITS &&
           cg_advice_fits(ceiling->gap, target->need,
                          target->file_to.at_least) == CG_FITS;
}
