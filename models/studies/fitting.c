#include "fitting.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "constants.h"
#include "ring_gap.h"

/* Gaps that differ by less are equal, as in the answer's own verdict. */
#define ROUNDING 1e-9

const char *cg_fit_word(enum cg_fit_state state)
{
    static const char *const word[CG_FIT_STATES] = {"not_measured", "too_small",
                                                    "file", "fits", "too_wide"};
    return word[state];
}

const char *cg_fit_ring_word(int ring)
{
    return ring == 0 ? "top" : "second";
}

double cg_fit_carry(double from_bore, double to_bore)
{
    return CG_PI * (to_bore - from_bore);
}

double cg_fit_need(const struct cg_fit_asked *asked, double ratio)
{
    return fmax(
        (asked->closure + asked->spread) * ratio + asked->minimum_hot_gap, 0.0);
}

double cg_fit_asks(const struct cg_fit_asked *asked, double ratio, double step)
{
    return fmax(cg_gap_round_up(cg_fit_need(asked, ratio), step),
                asked->at_least);
}

/* What is missing to `wanted` is taken off in whole steps. */
static double steps_to(double wanted, double gap, double step)
{
    if (gap >= wanted * (1.0 - ROUNDING))
        return 0.0;
    return fmax(ceil((wanted - gap) / step - ROUNDING), 1.0);
}

void cg_fit_ring(const struct cg_fit_asked *asked, double ratio, double step,
                 double gap, struct cg_fit *fit)
{
    fit->gap = gap;
    fit->need = cg_fit_need(asked, ratio);
    fit->asked = cg_fit_asks(asked, ratio, step);
    fit->state = CG_FIT_UNKNOWN;
    fit->steps = fit->take_off = fit->then = NAN;
    if (isnan(gap))
        return;
    fit->steps = steps_to(fit->asked, gap, step);
    fit->take_off = fit->steps * step;
    fit->then = gap + fit->take_off;
    if (steps_to(fit->need, gap, step) > 0.0)
        fit->state = CG_FIT_TOO_SMALL;
    else if (fit->steps > 0.0)
        fit->state = CG_FIT_FILE;
    else
        fit->state = gap > asked->too_wide ? CG_FIT_TOO_WIDE : CG_FIT_FITS;
}

/* The need carries from bore to bore; what else is filed to stays. */
static struct cg_fit_asked ask(const struct cg_case *c,
                               const struct cg_gap_sum *sum,
                               const struct cg_ring_advice *advice)
{
    bool none = advice->from == CG_ADVICE_NONE;
    bool other = !none && advice->from != CG_ADVICE_MODEL;
    struct cg_fit_asked asked = {.closure = sum->closure,
                                 .spread = sum->spread,
                                 .minimum_hot_gap = sum->residual,
                                 .at_least = other ? advice->file_to : 0.0};
    if (!none && advice->at_least > cg_fit_need(&asked, 1.0) * (1.0 + ROUNDING))
        asked.at_least = advice->file_to; /* gas asks for more than closing */
    asked.too_wide =
        c->margin.wide_factor * fmax(cg_fit_need(&asked, 1.0), asked.at_least);
    return asked;
}

void cg_fit_ask(const struct cg_case *c, const struct cg_answer *answer,
                struct cg_fit_asked asked[CG_FIT_RINGS])
{
    asked[0] = ask(c, cg_answer_needed(answer), &answer->file_to_top);
    asked[1] = ask(c, &answer->second, &answer->file_to_second);
}

static void find_ends(const struct cg_gauged *gauged,
                      struct cg_fitting *fitting)
{
    const struct cg_gauged_cylinder *at = gauged->cylinder;
    fitting->smallest = fitting->largest = -1;
    for (int i = 0; i < gauged->cylinders; i++) {
        if (isnan(at[i].bore))
            continue;
        if (fitting->smallest < 0 || at[i].bore < at[fitting->smallest].bore)
            fitting->smallest = i;
        if (fitting->largest < 0 || at[i].bore > at[fitting->largest].bore)
            fitting->largest = i;
    }
}

/* From the bore that the gaps were measured in to the cylinder's own. */
static double carry_home(const struct cg_gauged *gauged, int cylinder)
{
    const struct cg_gauged_cylinder *at = gauged->cylinder;
    int from = at[cylinder].measured_in - 1;
    if (from < 0 || from == cylinder)
        return 0.0;
    return cg_fit_carry(at[from].bore, at[cylinder].bore);
}

static void fit_cylinder(const struct cg_case *c,
                         const struct cg_gauged *gauged, int cylinder,
                         struct cg_fitting *fitting)
{
    const struct cg_gauged_cylinder *in = &gauged->cylinder[cylinder];
    struct cg_fitted_cylinder *out = &fitting->cylinder[cylinder];
    out->bore = isnan(in->bore) ? c->engine.bore : in->bore;
    out->opens =
        isnan(in->bore)
            ? NAN
            : cg_fit_carry(gauged->cylinder[fitting->smallest].bore, in->bore);
    for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
        struct cg_fit *fit = &out->ring[ring];
        fit->measured = in->gap[ring];
        cg_fit_ring(&fitting->asked[ring], out->bore / c->engine.bore,
                    fitting->step, in->gap[ring] + carry_home(gauged, cylinder),
                    fit);
        fitting->count[fit->state]++;
    }
}

void cg_fitting_find(const struct cg_case *c, const struct cg_answer *answer,
                     const struct cg_gauged *gauged, struct cg_fitting *fitting)
{
    assert(gauged->cylinders > 0 && gauged->cylinders <= CG_FIT_CYLINDERS);
    memset(fitting, 0, sizeof *fitting);
    fitting->cylinders = gauged->cylinders;
    fitting->step = c->margin.filing_step;
    cg_fit_ask(c, answer, fitting->asked);
    find_ends(gauged, fitting);
    for (int i = 0; i < gauged->cylinders; i++)
        fit_cylinder(c, gauged, i, fitting);
}
