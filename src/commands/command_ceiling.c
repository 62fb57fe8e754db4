#include <math.h>
#include <stdio.h>

#include "answer.h"
#include "cautions.h"
#include "ceiling.h"
#include "constants.h"
#include "find_notes.h"
#include "operating.h"
#include "options.h"
#include "show.h"
#include "updated_case.h"

/* --gap, or else the gap the config asks to judge. */
static enum cg_status choose_gap(const struct cg_options *options,
                                 const struct cg_case *c, double *gap,
                                 struct cg_error *error)
{
    *gap = options->gap > 0.0 ? options->gap : c->ring[CG_RING_TOP].cold_gap;
    if (isnan(*gap))
        return cg_error_set(error, CG_BAD_INPUT,
                            "ceiling: no gap; give --gap 0.50mm, or "
                            "rings.top.cold_gap_mm in the config");
    return CG_OK;
}

static void print_target(const struct cg_case *c, const struct cg_ceiling *at,
                         bool inch)
{
    printf("At the config's boost of %s it takes %s.\n",
           cg_show_boost(c->charge.boost, inch).text,
           cg_show_gap_up(at->need_at_target, inch).text);
    if (at->need_at_target <= at->gap)
        return;
    if (!isnan(at->touch_time))
        printf("  Nominally the ends touch %.1f s into the duty.\n",
               at->touch_time);
    else if (!isnan(at->residual_time))
        printf("  Nominally less than the residual is open from %.1f s on; "
               "the ends do not touch.\n",
               at->residual_time);
    else
        printf("  Nominally the residual stays open; the margin is what is "
               "missing.\n");
}

static void print_needs(const struct cg_case *c, const struct cg_ceiling *at,
                        bool inch)
{
    printf("\nWithout boost it takes %s.\n",
           cg_show_gap_up(at->need_at_none, inch).text);
    print_target(c, at, inch);
    if (!at->rises)
        printf("Note: the gap needed does not rise all the way with boost; "
               "this is the lowest crossing.\n");
}

/* Down to the digit that is shown: 1 kPa or 0.1 psi. */
static double floor_shown(double boost, bool inch)
{
    double step = inch ? 0.1 * CG_PSI : 1e3;
    return step * floor(boost / step);
}

static void print_headline(const struct cg_ceiling *at, bool inch)
{
    if (at->never_enough)
        printf("\nCeiling  none: this gap is too small even without boost\n");
    else if (at->always_enough)
        printf("\nCeiling  above %s, the highest looked at\n",
               cg_show_boost(CG_CEILING_MOST, inch).text);
    else
        printf("\nCeiling  %s of boost\n",
               cg_show_boost(floor_shown(at->boost, inch), inch).text);
}

/* What the figure rests on: boost is limited by more than the ring. */
static void print_limits(const struct cg_case *c, const struct cg_ceiling *at,
                         bool inch)
{
    double rule = cg_shop_rule(c->engine.bore, at->boost);
    if (!at->never_enough && !at->always_enough) {
        printf("\nShop rule at that boost: %s (common practice, no source)\n",
               cg_show_gap_up(rule, inch).text);
        if (at->gap < rule)
            printf("  The gap is below the rule: until your own engine has "
                   "shown better, file to\n  the larger.\n");
    }
    printf("\n");
    printf("What it takes is by first order: find --samples asks for up to "
           "%s more\non the shipped engines.\n",
           cg_show_length(CG_FIRST_ORDER_SHORT, inch).text);
    printf("This is the ring gap's ceiling alone.  Knock, head gasket, rods "
           "and turbine have\nceilings of their own, not looked at; half "
           "burned is taken %.*f deg later for each\n%s on gasoline, "
           "%.0f deg at most.\n",
           inch ? 1 : 0,
           c->combustion.retard_deg_per_100kPa *
               (inch ? 10.0 * CG_PSI / 100e3 : 1.0),
           inch ? "10 psi" : "100 kPa", CG_RETARD_MOST);
}

enum cg_status cg_command_ceiling(const struct cg_options *options,
                                  struct cg_error *error)
{
    struct cg_updated_case updated;
    const struct cg_case *c = &updated.c;
    struct cg_ceiling ceiling;
    double gap = 0.0;
    enum cg_status status = cg_updated_case_read(
        options->config, options->set, options->sets, false, &updated, error);
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = choose_gap(options, c, &gap, error);
    if (status == CG_OK)
        status = cg_ceiling_find(c, gap, &ceiling, error);
    if (status != CG_OK)
        return status;
    if (!options->quiet)
        printf("coldgap ceiling %s\n\n", options->told);
    printf("Top ring gap %s, duty %s, risk %g\n",
           cg_show_gap(ceiling.gap, options->inch).text, c->duty.name,
           c->margin.risk);
    if (!options->quiet)
        print_needs(c, &ceiling, options->inch);
    print_headline(&ceiling, options->inch);
    if (!options->quiet)
        print_limits(c, &ceiling, options->inch);
    printf("\n%s\n", cg_cautions_text());
    if (ceiling.need_at_target > gap) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return CG_OK;
}
