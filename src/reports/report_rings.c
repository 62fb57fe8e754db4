#include "report_rings.h"

#include <math.h>
#include <stdio.h>

#include "answer.h"
#include "constants.h"
#include "say_common.h"
#include "show.h"

struct ring_name {
    char text[128];
};

static struct ring_name name_of(const struct cg_ring_choice *ring)
{
    struct ring_name name;
    snprintf(name.text, sizeof name.text, "%s, %s%s", ring->material->name,
             ring->face->name, ring->own ? " (yours)" : "");
    return name;
}

static void tell_verdict(struct cg_report *report,
                         const struct cg_rings_answer *answer, size_t i)
{
    const struct cg_ring_choice *ring = &answer->ring[i];
    char why[CG_REASON], place[64];
    cg_ring_reason_both(ring, cg_report_inch(report), why);
    snprintf(place, sizeof place, "Number %zu of", i + 1);
    cg_report_verdict(report, ring->verdict != CG_RING_UNFIT,
                      "%s %zu top rings: %s. It %s%s; %s.",
                      i == 0 ? "Best of" : place, answer->rings,
                      name_of(ring).text,
                      ring->verdict == CG_RING_FITS ? "" : "is ",
                      cg_ring_verdict_text(ring->verdict), why);
}

/* In kPa down to 10, to 50 from 100 on; in psi down to 1, to 5 from 15 on. */
static int coarse(double boost, bool inch)
{
    double shown = inch ? boost / CG_PSI : boost / 1e3;
    double step =
        inch ? (shown < 15.0 ? 1.0 : 5.0) : (shown < 100.0 ? 10.0 : 50.0);
    return (int)(step * floor(shown / step * (1.0 + 1e-9)));
}

/* From where a ring begins to fail to where it has, a band, for its limits have
 * no source: "350 to 500", in a column "350-500"; not before the highest boost
 * looked at. */
static struct cg_text fits_to(const struct cg_ring_choice *ring, double reached,
                              bool column, bool inch)
{
    struct cg_text out;
    const char *to = column ? "-" : " to ", *over = column ? ">" : "over ";
    int low = coarse(ring->stops_fitting, inch);
    int high = coarse(ring->unfit_from, inch), most = coarse(reached, inch);
    if (ring->stops_fitting >= reached)
        snprintf(out.text, sizeof out.text, "%s%d", over, most);
    else if (ring->unfit_from >= reached)
        snprintf(out.text, sizeof out.text, "%d%s%s%d", low, to, over, most);
    else
        snprintf(out.text, sizeof out.text, "%d%s%d", low, to, high);
    return out;
}

/* The best, and the config's own. */
static void tell_first(struct cg_report *report,
                       const struct cg_rings_answer *answer)
{
    bool inch = cg_report_inch(report);
    const struct cg_ring_choice *best = &answer->ring[0];
    tell_verdict(report, answer, 0);
    if (!best->no_gap) {
        cg_report_answer(report, "file_to_top", "With it, file to",
                         cg_quantity(CG_SHOW_GAP_ASKED, best->file_to.file_to));
        cg_report_remark(
            report, "%s",
            cg_say_from(&best->file_to, best->cold_gap, best->hardest, inch)
                .text);
    }
    cg_report_words(report, "stops_fitting", "It fits to a boost of",
                    "some %s %s",
                    fits_to(best, answer->reached, false, inch).text,
                    cg_kind_unit(CG_SHOW_BOOST, inch));
    for (size_t i = 1; i < answer->rings; i++)
        if (answer->ring[i].own)
            tell_verdict(report, answer, i);
}

static void tell_ranks(struct cg_report *report,
                       const struct cg_rings_answer *answer)
{
    bool inch = cg_report_inch(report);
    const struct cg_report_column columns[] = {
        {"ring", "Top ring, face", CG_SHOW_WORDS},
        {"verdict", "Verdict", CG_SHOW_WORDS},
        {"file_to", "File to", CG_SHOW_GAP_ASKED},
        {"stops_fitting", inch ? "Fits to, psi" : "Fits to, kPa",
         CG_SHOW_WORDS}};
    cg_report_section(report, "Ranked");
    cg_report_table(report, "rings",
                    "The best first, over all duties; file to: with the shop "
                    "rule. Fits to: a band, from the boost at which it "
                    "begins to fail to that at which it has.",
                    columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < answer->rings; i++) {
        const struct cg_ring_choice *ring = &answer->ring[i];
        cg_report_cell_words(report, "%zu. %s", i + 1, name_of(ring).text);
        cg_report_cell_words(report, "%s", cg_ring_verdict_text(ring->verdict));
        cg_report_cell(report, ring->file_to.file_to);
        cg_report_cell_words(report, "%s",
                             fits_to(ring, answer->reached, true, inch).text);
        cg_report_mark(report, ring->verdict == CG_RING_FITS    ? CG_MARK_GOOD
                               : ring->verdict == CG_RING_UNFIT ? CG_MARK_BAD
                                                                : CG_MARK_NONE);
    }
    cg_report_figure(report, "rings", "Boost up to which each ring fits",
                     "A bar a ring, in the order of the table, from no boost "
                     "to where it stops fitting, hatched to where it is unfit; "
                     "a line at this engine's boost.");
}

static void tell_reasons(struct cg_report *report,
                         const struct cg_rings_answer *answer)
{
    char why[CG_REASON];
    cg_report_section(report, "Why, ring by ring");
    cg_report_say(report,
                  "What stops it now, or first with more boost: the load "
                  "in this engine, and the band in which it fails.");
    for (size_t i = 0; i < answer->rings; i++) {
        cg_ring_reason_both(&answer->ring[i], cg_report_inch(report), why);
        cg_report_step(report, "%s: %s", name_of(&answer->ring[i]).text, why);
    }
}

static void tell_heat(struct cg_report *report, const struct cg_case *c,
                      const struct cg_rings_answer *answer)
{
    static const struct cg_report_column columns[] = {
        {"ring", "Top ring, face", CG_SHOW_WORDS},
        {"hardness", "Hardness", CG_SHOW_WORDS},
        {"coat", "Coat", CG_SHOW_KELVIN},
        {"ring_top", "Hot", CG_SHOW_TEMPERATURE},
        {"ring_low", "from", CG_SHOW_TEMPERATURE},
        {"ring_high", "to", CG_SHOW_TEMPERATURE},
        {"tension_left", "Left", CG_SHOW_WHOLE_SHARE}};
    char caption[320];
    snprintf(caption, sizeof caption,
             "Hardness class; what the coat adds to the ring's temperature; "
             "the ring's hottest mean; from where to where it loses its "
             "tension; what is left of it after %g h at the duty's hottest "
             "(Larson-Miller).",
             c->ring[CG_RING_TOP].service / 3600.0);
    cg_report_section(report, "Faces and tension");
    cg_report_table(report, "faces", caption, columns,
                    sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < answer->rings; i++) {
        const struct cg_ring_choice *ring = &answer->ring[i];
        const struct cg_band *hot = &ring->limit[CG_LIMIT_RING_HEAT];
        cg_report_cell_words(report, "%s, %s", ring->material->name,
                             ring->face->name);
        cg_report_cell_words(report, "%s",
                             cg_face_hardness_class(
                                 cg_face_hardness(ring->face, ring->material)));
        cg_report_cell(report, ring->coat_effect);
        cg_report_cell(report, ring->ring);
        cg_report_cell(report, hot->low);
        cg_report_cell(report, hot->high);
        cg_report_cell(report, ring->tension_left.low);
    }
}

static void tell_pistons(struct cg_report *report,
                         const struct cg_rings_answer *answer)
{
    static const struct cg_report_column columns[] = {
        {"alloy", "Alloy", CG_SHOW_WORDS},
        {"cold_skirt", "Model", CG_SHOW_GAP_ASKED},
        {"closure", "Closure", CG_SHOW_SMALL_LENGTH},
        {"trade_low", "Trade from", CG_SHOW_SMALL_LENGTH},
        {"trade_high", "to", CG_SHOW_SMALL_LENGTH},
        {"lies", "Model lies", CG_SHOW_WORDS}};
    cg_report_section(report, "Piston alloys");
    cg_report_table(report, "pistons",
                    "Cold skirt clearance by this model, with the same margin, "
                    "and what the trade fits (common practice, no source).",
                    columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < answer->alloys; i++) {
        const struct cg_alloy_choice *a = &answer->alloy[i];
        cg_report_cell_words(report, "%s%s", a->alloy->name,
                             a->own ? " (yours)" : "");
        cg_report_cell(report, a->skirt.cold);
        cg_report_cell(report, a->skirt.closure);
        cg_report_cell(report, a->skirt.trade.low);
        cg_report_cell(report, a->skirt.trade.high);
        cg_report_cell_words(report, "%s", cg_say_skirt_lies(&a->skirt));
    }
    cg_report_say(report, "%s", cg_say_no_skirts());
    cg_report_figure(report, "pistons", "Skirt clearance by piston alloy",
                     "For each alloy a bar of this model's clearance, and the "
                     "band that the trade fits.");
}

static void tell_engine(struct cg_report *report, const struct cg_case *c,
                        const double load[CG_RING_LIMITS])
{
    cg_report_section(report, "Engine and duty");
    cg_say_engine(report, c);
    cg_report_row(report, "peak_pressure", "Peak pressure",
                  cg_quantity(CG_SHOW_PEAK_PRESSURE, load[CG_LIMIT_PRESSURE]));
    if (c->combustion.ignition == CG_IGNITION_SPARK) {
        cg_report_row(report, "rise", "Pressure rise at most",
                      cg_quantity(CG_SHOW_RISE, load[CG_LIMIT_RISE]));
        cg_report_remark(report, "of the burn alone, no knock");
    }
    if (c->charge.charger == CG_CHARGER_NONE)
        cg_report_note(report, "this engine has no charger; higher boosts are "
                               "looked at as if it had a turbine.");
}

void cg_report_rings(struct cg_report *report, const struct cg_case *c,
                     const struct cg_rings_answer *answer)
{
    tell_first(report, answer);
    cg_report_first_part_ends(report);
    tell_ranks(report, answer);
    tell_reasons(report, answer);
    tell_heat(report, c, answer);
    tell_pistons(report, answer);
    tell_engine(report, c, answer->ring[0].load);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report, "Limits are bands, most of them common practice "
                          "without a source: see ring_materials.cfg and "
                          "ring_faces.cfg.");
    cg_report_say(report,
                  "Left out: %s; how face and bore run together; how well a "
                  "coat is made.",
                  c->combustion.ignition == CG_IGNITION_SPARK
                      ? "knock, which multiplies the pressure rise at once"
                      : "the pressure rise: faces live in diesels whose rise is past "
                        "their bands");
}
