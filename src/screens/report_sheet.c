#include "report_sheet.h"

#include <math.h>
#include <stdio.h>

#include "cautions.h"
#include "constants.h"
#include "find_notes.h"
#include "show.h"

const char *cg_sheet_method(void)
{
    return "How to measure\n"
           "  1. Let block and rings lie until both are at room temperature, "
           "clean and dry.\n"
           "  2. Bore: gauge set on a micrometer; where the ring will be "
           "gauged, along the\n"
           "     crank and across it; write down the mean.\n"
           "  3. Gap: push the ring alone down its own bore with a bare "
           "piston, so that it\n"
           "     lies square; the thickest feeler that slides with a light "
           "drag is the gap.\n"
           "  4. File one end only, square, from the face inwards; measure "
           "again after every\n"
           "     few steps; take the burr off every edge; wash.\n"
           "  5. Write down the gap you end with: what was filed off does not "
           "go "
           "back.\n";
}

const char *cg_sheet_box(void)
{
    return "Engine ______________________________  Date ____________________\n"
           "\n"
           "Builder _____________________________  Checked _________________\n";
}

/* A length in the one unit of the sheet, to 1 um or a tenth of a thousandth;
 * "-" for NaN. */
struct cg_text cg_sheet_length(double metres, bool inch)
{
    struct cg_text out = {"-"};
    if (!isnan(metres))
        snprintf(out.text, sizeof out.text, inch ? "%.4f" : "%.3f",
                 inch ? metres / CG_INCH : metres * 1e3);
    return out;
}

struct cg_text cg_sheet_length_up(double metres, bool inch)
{
    return cg_sheet_length(cg_shown_up(metres, inch), inch);
}

static const char *unit_word(bool inch)
{
    return inch ? "in" : "mm";
}

/* coldgap's answer may be below the trade's rule; `find` says why. */
static void print_rule(const struct cg_sheet *sheet, bool inch)
{
    const struct cg_fit_asked *asked = sheet->fitting.asked;
    printf("  shop rule    top %s, second %s (common practice, no source)\n",
           cg_sheet_length_up(asked[0].rule, inch).text,
           cg_sheet_length_up(asked[1].rule, inch).text);
    if (cg_fit_need(&asked[0], 1.0) < asked[0].rule)
        printf("               The answer is below the rule: until your own "
               "engine has\n               shown better, file to the larger "
               "(column \"to rule\").\n");
}

static void print_asked(const struct cg_sheet *sheet, bool inch)
{
    const struct cg_fit_asked *top = &sheet->fitting.asked[0],
                              *second = &sheet->fitting.asked[1];
    double step = sheet->fitting.step;
    printf("Asked of a ring in a bore of %s %s\n",
           cg_sheet_length(sheet->c.engine.bore, inch).text, unit_word(inch));
    printf("  top ring     %s: closure %s, spread %s, residual %s\n",
           cg_sheet_length_up(cg_fit_asks(top, 1.0, step), inch).text,
           cg_sheet_length(top->closure, inch).text, cg_sheet_length(top->spread, inch).text,
           cg_sheet_length(top->minimum_hot_gap, inch).text);
    printf(
        "  second ring  %s:\n               %s",
        cg_sheet_length_up(cg_fit_asks(second, 1.0, step), inch).text,
        cg_find_second_reason(&sheet->answer));
    if (sheet->answer.seating.gap > 0.0)
        printf(",\n               with a top gap of up to %s",
               cg_sheet_length_up(sheet->answer.seating.top, inch).text);
    if (second->at_least > 0.0)
        printf("\n               (safe against closing from %s on)",
               cg_sheet_length_up(cg_fit_need(second, 1.0), inch).text);
    printf("\n");
    print_rule(sheet, inch);
    printf("  too wide     above top %s, second %s: margin.wide_factor times "
           "the\n               larger of answer and rule (common practice, "
           "no source)\n",
           cg_sheet_length(top->too_wide, inch).text,
           cg_sheet_length(second->too_wide, inch).text);
    printf("  filing step  %s, counted up\n\n",
           cg_show_gap(sheet->fitting.step, inch).text);
    if (inch)
        printf("Asked and take off are shown rounded up to half a thousandth; "
               "steps, then and\nstate go by the filing step "
               "(margin.filing_step_in = 0.0005 files in halves).\n\n");
}

static void print_head(const struct cg_sheet *sheet, bool inch)
{
    const struct cg_case *c = &sheet->c;
    printf("coldgap sheet %s --measured %s\n\n", sheet->config,
           sheet->measured);
    printf("Engine   %d cylinders, bore %s %s, boost %s, %s\n",
           c->engine.cylinders, cg_sheet_length(c->engine.bore, inch).text,
           unit_word(inch), cg_show_boost(c->charge.boost, inch).text,
           c->fuel.name);
    printf("Rings    top %s, second %s\n", c->ring[CG_RING_TOP].material,
           c->ring[CG_RING_SECOND].material);
    printf("Duty     %s, %.4g s, risk %g\n\n", c->duty.name,
           sheet->answer.duration, c->margin.risk);
    print_asked(sheet, inch);
}

static const char *state_text(enum cg_fit_state state)
{
    static const char *const text[CG_FIT_STATES] = {"not measured", "TOO SMALL",
                                                    "file", "fits", "too wide"};
    return text[state];
}

/* A length to be taken off; "-" for none. */
static struct cg_text off(double metres, bool inch)
{
    return metres > 0.0 ? cg_sheet_length_up(metres, inch) : cg_sheet_length(NAN, inch);
}

static void print_ring(const struct cg_fit *fit, int ring, bool inch)
{
    char steps[16] = "";
    if (fit->steps > 0.0)
        snprintf(steps, sizeof steps, "%.0f", fit->steps);
    printf(" %-6s %7s %7s %8s %5s %7s %7s  %s\n", cg_fit_ring_word(ring),
           cg_sheet_length(fit->gap, inch).text, cg_sheet_length_up(fit->asked, inch).text,
           off(fit->take_off, inch).text, steps, cg_sheet_length(fit->then, inch).text,
           off(fit->rule_take_off, inch).text, state_text(fit->state));
}

static void print_rings(const struct cg_sheet *sheet, bool inch)
{
    const struct cg_gauged_cylinder *gauged = sheet->gauged.cylinder;
    printf(
        "By cylinder [%s]\n"
        "         bore ring       gap   asked take off steps    then to rule  "
        "state\n",
        unit_word(inch));
    for (int i = 0; i < sheet->fitting.cylinders; i++) {
        if (!gauged[i].listed) {
            printf("%3d        - not in the file: nothing is said of it\n",
                   i + 1);
            continue;
        }
        printf("%3d %8s", i + 1, cg_sheet_length(gauged[i].bore, inch).text);
        print_ring(&sheet->fitting.cylinder[i].ring[0], 0, inch);
        printf("%12s", "");
        print_ring(&sheet->fitting.cylinder[i].ring[1], 1, inch);
    }
}

static void print_beyond(const struct cg_verdict *verdict,
                         const struct cg_gap_sum *sum, const char *ring,
                         bool inch)
{
    if (verdict->beyond)
        printf("NOT SAFE, %s ring: %s\n", ring,
               cg_find_beyond(verdict, sum, inch).text);
}

static void print_count(const struct cg_sheet *sheet, bool inch)
{
    const int *count = sheet->fitting.count;
    const struct cg_answer *answer = &sheet->answer;
    printf("\nRings    %d too small, %d to file, %d fit, %d too wide, %d not "
           "measured\n",
           count[CG_FIT_TOO_SMALL], count[CG_FIT_FILE], count[CG_FIT_FITS],
           count[CG_FIT_TOO_WIDE], count[CG_FIT_UNKNOWN]);
    if (count[CG_FIT_TOO_SMALL] > 0)
        printf("         NOT SAFE for this duty before the small ones are "
               "filed\n");
    print_beyond(&answer->verdict, &answer->top, "top", inch);
    print_beyond(&answer->second_verdict, &answer->second, "second", inch);
    printf("\n");
}

/* What the table took from elsewhere than its own line. */
static void print_taken(const struct cg_sheet *sheet, bool inch)
{
    for (int i = 0; i < sheet->fitting.cylinders; i++) {
        const struct cg_gauged_cylinder *gauged = &sheet->gauged.cylinder[i];
        const struct cg_fitted_cylinder *fitted = &sheet->fitting.cylinder[i];
        int from = gauged->measured_in - 1;
        if (gauged->listed && isnan(gauged->bore))
            printf("Cylinder %d: bore not measured, engine.bore of %s %s is "
                   "taken.\n",
                   i + 1, cg_sheet_length(fitted->bore, inch).text, unit_word(inch));
        if (from >= 0 && from != i)
            printf(
                "Cylinder %d: gaps measured in the bore of cylinder %d; in its "
                "own\n  they change by %+.*f %s.\n",
                i + 1, from + 1, inch ? 4 : 3,
                cg_fit_carry(sheet->fitting.cylinder[from].bore, fitted->bore) /
                    (inch ? CG_INCH : 1e-3),
                unit_word(inch));
    }
}

/* What a ring too wide costs, in its own cylinder. */
static void print_price(const struct cg_gap_price *price, double asked,
                        bool inch)
{
    if (isnan(price->blow_by)) {
        printf("  What it costs in blow-by is not known: the rings do not "
               "settle to a motion\n  that repeats.\n");
        return;
    }
    printf("  Costs %s (%.3g %s) of blow-by in that cylinder, at rated "
           "speed\n  and full load, where %s pass with the gaps asked for "
           "(seal's model).\n",
           cg_show_leak(price->blow_by, inch).text,
           cg_show_draught(price->volume, inch), cg_show_draught_unit(inch),
           cg_show_leak(asked, inch).text);
}

/* A gap that is too wide: what it means for the builder. */
static void print_too_wide(const struct cg_sheet *sheet, bool inch)
{
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
            const struct cg_fit *fit = &sheet->fitting.cylinder[i].ring[ring];
            if (fit->state != CG_FIT_TOO_WIDE)
                continue;
            printf("Cylinder %d, %s ring: %s %s wider than asked; only "
                   "another ring helps.\n",
                   i + 1, cg_fit_ring_word(ring),
                   cg_sheet_length(fit->gap - fit->asked, inch).text, unit_word(inch));
            print_price(&sheet->prices.ring[i][ring], sheet->prices.asked,
                        inch);
        }
}

static void print_bores(const struct cg_sheet *sheet, bool inch)
{
    const struct cg_fitting *fitting = &sheet->fitting;
    int small = fitting->smallest, large = fitting->largest;
    if (small < 0)
        return;
    const struct cg_fitted_cylinder *cylinder = fitting->cylinder;
    printf("\nGap against bore: the same ring opens by pi times what the bore "
           "is larger;\nclosure and spread grow with the bore itself.\n");
    for (int i = 0; i < fitting->cylinders; i++)
        if (!isnan(cylinder[i].opens))
            printf("  cylinder %2d  bore +%s  gap +%s %s\n", i + 1,
                   cg_sheet_length(cylinder[i].bore - cylinder[small].bore, inch).text,
                   cg_sheet_length(cylinder[i].opens, inch).text, unit_word(inch));
    if (cylinder[large].opens > 0.0)
        printf("  A ring filed in cylinder %d and run in cylinder %d has %s "
               "%s less than was\n  gauged: file each ring in the bore it "
               "runs in.\n",
               large + 1, small + 1, cg_sheet_length(cylinder[large].opens, inch).text,
               unit_word(inch));
}

void cg_report_sheet(const struct cg_sheet *sheet, bool inch, bool quiet)
{
    if (!quiet)
        print_head(sheet, inch);
    print_rings(sheet, inch);
    print_count(sheet, inch);
    if (!quiet) {
        print_taken(sheet, inch);
        print_too_wide(sheet, inch);
        print_bores(sheet, inch);
        printf("\n%s\n%s\n", cg_sheet_method(), cg_sheet_box());
        printf("Left out: taper and ovality of the bore, wear, light between "
               "ring and bore;\nevery cylinder is taken to run as hot as the "
               "config says.\n");
    }
    printf("%s\n", cg_cautions_text());
}
