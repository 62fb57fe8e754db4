/* The lesson's steps from boost to the ring's temperature. */
#include "lesson_drawing.h"
#include "outside.h"
#include "report_lesson_parts.h"

static bool boosted(const struct cg_lesson_sheet *sheet)
{
    return sheet->lesson->own > 0;
}

static void tell_gas_law(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    struct cg_figure model = cg_lesson_figure(
        sheet->inch, "model", CG_LESSON_MASS, sheet->lesson->heat.air);
    cg_report_say(report,
                  "The gas law gives the mass of air in one cylinder: pressure "
                  "times volume, over gas constant and absolute temperature. "
                  "That goes times how well the cylinder fills.");
    cg_lesson_sums(report, CG_SUMS(&charge->area, &charge->swept,
                                   &charge->absolute, &charge->air));
    cg_report_say(report,
                  "The model takes %s a cycle. The temperature of the charge "
                  "is the model's%s%s.",
                  cg_figure_text(&model).text,
                  boosted(sheet) ? ", after compressor and cooler" : "",
                  sheet->c->combustion.ignition == CG_IGNITION_SPARK
                      ? ", with some of the fuel evaporated"
                      : "");
    const struct cg_performance *full = &sheet->lesson->answer.performance;
    if (full->nitrous_flow + full->water_flow + full->alcohol_flow > 0.0)
        cg_report_say(report,
                      "This engine takes in more than air and its fuel. The "
                      "sums here leave that out: nitrous and vapour take room "
                      "from the air, and nitrous brings oxygen, fuel and heat "
                      "of its own. The model's figures have it all.");
}

void cg_lesson_tell_boost(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet, bool second)
{
    cg_report_say(report, "The cylinder fills at the pressure in the manifold. "
                          "Boost comes on top of the air outside:");
    cg_lesson_sums(report,
                   CG_SUMS(&sheet->charge.manifold, &sheet->charge.times));
    if (boosted(sheet))
        cg_report_say(report,
                      "Nearly that many times the air goes in; pressed air is "
                      "warm, so it is a little less. As much more fuel burns "
                      "with it, in the same cylinder.");
    else
        cg_report_say(report, "This engine has no boost: the air outside fills "
                              "it. Step 7 supposes some.");
    if (second)
        tell_gas_law(report, sheet);
}

static void tell_crown_simply(struct cg_report *report,
                              const struct cg_lesson_burn *burn, bool boost)
{
    if (!boost) {
        cg_report_say(report,
                      "The heat of the flame goes through the crown of the "
                      "piston: at full load %s on average, by the model. More "
                      "fuel would send more.",
                      cg_figure_text(&burn->model_flux).text);
        return;
    }
    cg_report_say(report, "More fuel sends more heat through the crown of the "
                          "piston. By the model, at full load:");
    cg_lesson_sums(report, CG_SUMS(&burn->flux_times));
    cg_report_say(report, "The heat through the walls grows more slowly than "
                          "the air. It still has to go somewhere.");
}

void cg_lesson_tell_heat(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    if (!second) {
        tell_crown_simply(report, burn, boosted(sheet));
        cg_lesson_tell_knock(report, sheet);
        return;
    }
    cg_report_say(report, "This is the fuel for that air, and the heat in it:");
    cg_lesson_sums(report, CG_SUMS(&burn->need, &burn->fuel, &burn->energy));
    cg_report_say(report,
                  "By the model (%s) the walls take %.1f %% of it in all. "
                  "Through the crown, over the area of the bore, goes:",
                  sheet->c->combustion.heat_transfer,
                  100.0 * heat->wall_heat / heat->fuel_energy);
    cg_lesson_sums(report, CG_SUMS(&burn->crown, &burn->cycles, &burn->flux));
    cg_report_say(report, "The model has %s.%s",
                  cg_figure_text(&burn->model_flux).text,
                  boosted(sheet) ? " Against no boost:" : "");
    if (boosted(sheet)) {
        cg_lesson_sums(report, CG_SUMS(&burn->flux_times));
        cg_report_say(report,
                      "The heat transfer coefficient of the gas follows "
                      "pressure to a power below one (0.7 to 0.8 in the three "
                      "correlations). So heat grows more slowly than the air.");
    }
    cg_lesson_tell_knock(report, sheet);
}

static void tell_temperatures(struct cg_report *report,
                              const struct cg_lesson_heat *heat)
{
    cg_report_say(report, "Held at full load until nothing changes any more, "
                          "the model finds:");
    cg_report_row(report, "crown", "Crown",
                  cg_quantity(CG_SHOW_TEMPERATURE, heat->crown));
    cg_report_row(report, "groove", "Top groove",
                  cg_quantity(CG_SHOW_TEMPERATURE, heat->groove));
    cg_report_row(report, "ring", "Top ring",
                  cg_quantity(CG_SHOW_TEMPERATURE, heat->ring));
    cg_report_row(report, "bore_at_ring", "Bore where the ring runs",
                  cg_quantity(CG_SHOW_TEMPERATURE, heat->bore));
}

static void tell_resistances(struct cg_report *report,
                             const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    cg_report_say(report,
                  "From groove to bore the heat meets three resistances, one "
                  "after the other, as in a series circuit%s:",
                  sheet->inch ? " (in mm, watt and kelvin; only the fall is "
                                "in F)"
                              : "");
    cg_lesson_sums(report, CG_SUMS(&ladder->middle, &ladder->flank_area,
                                   &ladder->face_area));
    cg_lesson_sums(report, CG_SUMS(&ladder->flank, &ladder->inside,
                                   &ladder->film, &ladder->total));
    cg_report_say(report, "The larger the resistance, the larger its share of "
                          "the fall in temperature:");
    cg_lesson_sums(report,
                   CG_SUMS(&ladder->fall, &ladder->step, &ladder->ring));
    cg_report_say(report,
                  "The model's ring runs at %s: the model adds the heat of "
                  "friction and of the gas pressed in around the ring, and "
                  "cuts it into slices. The sum takes a "
                  "third of the ring's depth, because heat comes in all along "
                  "the flank. We go on with the model's temperature.",
                  cg_figure_text(&ladder->model_ring).text);
}

void cg_lesson_tell_ladder(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet, bool second)
{
    if (!second)
        cg_report_say(report,
                      "Heat runs from the crown down to the groove. The groove "
                      "heats the ring. The ring passes the heat on through a "
                      "film of oil to the bore, and the bore to the %s.",
                      cg_air_cooled(sheet->c) ? "air between its fins"
                                              : "coolant");
    tell_temperatures(report, &sheet->lesson->heat);
    cg_lesson_show(report, sheet, cg_lesson_draw_ring);
    if (second)
        tell_resistances(report, sheet);
    else
        cg_report_say(report, "The groove heats the ring and the bore cools "
                              "it: its temperature lies between the two.");
}
