#include "ceiling.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

#include "answer.h"
#include "follow.h"
#include "growth.h"

enum { MOST_PASSES = 60 };
#define BOOST_TOLERANCE 50.0 /* of the ceiling [Pa] */

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
    return CG_OK;
}

/* What the root finder's function needs besides the boost. */
struct search {
    const struct cg_case *c;
    double gap;
    enum cg_status status;
    struct cg_error *error;
};

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

static bool stops(const struct cg_ceiling_point *point, double gap)
{
    return cg_advice_fits(gap, point->need, point->file_to.at_least) != CG_FITS;
}

/* Steps up from no boost to the first crossing. */
static enum cg_status look(struct search *search, struct cg_ceiling *out)
{
    double low = 0.0;
    struct cg_ceiling_point point;
    enum cg_status status =
        cg_ceiling_at(search->c, 0.0, &point, search->error);
    if (status != CG_OK)
        return status;
    out->at_none = point;
    out->rises = true;
    if (stops(&point, search->gap)) {
        out->never_enough = true;
        return CG_OK;
    }
    while (low < CG_CEILING_MOST) {
        double high = fmin(low + CG_CEILING_STEP, CG_CEILING_MOST);
        double before = point.file_to.at_least;
        status = cg_ceiling_at(search->c, high, &point, search->error);
        if (status != CG_OK)
            return status;
        out->rises = out->rises && point.file_to.at_least >= before;
        if (stops(&point, search->gap))
            return refine(search, low, high, &out->boost);
        low = high;
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

enum cg_status cg_ceiling_find(const struct cg_case *c, double gap,
                               struct cg_ceiling *ceiling,
                               struct cg_error *error)
{
    struct cg_ceiling found = {
        .gap = gap, .residual_time = NAN, .touch_time = NAN};
    struct search search = {c, gap, CG_OK, error};
    if (c->charge.charger == CG_CHARGER_NONE)
        return cg_error_set(error, CG_BAD_INPUT,
                            "charge.charger: none, and a ceiling needs "
                            "boost; turbine or belt is allowed");
    enum cg_status status = look(&search, &found);
    if (status == CG_OK)
        status = cg_ceiling_at(c, c->charge.boost, &found.at_target, error);
    if (status == CG_OK && found.at_target.need > gap)
        status = time_to_touch(c, &found, error);
    if (status == CG_OK)
        *ceiling = found;
    return status;
}
