/* The lesson's steps from boost to the ring's temperature. */
#include <stdio.h>

#include "report_lesson_parts.h"
#include "show.h"

static bool boosted(const struct cg_lesson_sheet *sheet)
{
    return sheet->lesson->own > 0;
}

void cg_lesson_boost_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    fprintf(out,
            "The cylinder fills at the manifold's pressure.  Boost comes on "
            "top of the air\noutside:\n\n");
    cg_hand_print(out, &charge->manifold);
    cg_hand_print(out, &charge->times);
    if (boosted(sheet))
        fprintf(out,
                "\nSo much more air goes in (a little less: pressed air is "
                "warm), and as much more\nfuel burns with it, in the same "
                "cylinder.\n");
    else
        fprintf(out,
                "\nThis engine has no boost: the air outside fills it.  Step 7 "
                "supposes some.\n");
}

void cg_lesson_boost_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    struct cg_figure model = cg_lesson_figure(
        sheet->inch, "model", CG_LESSON_MASS, sheet->lesson->heat.air);
    cg_lesson_boost_first(out, sheet);
    fprintf(out,
            "\nThe charge of one cylinder follows the gas law: pressure x "
            "volume over gas constant\nand absolute temperature is its mass, "
            "times how well the cylinder fills.\n\n");
    cg_hand_print(out, &charge->area);
    cg_hand_print(out, &charge->swept);
    cg_hand_print(out, &charge->absolute);
    cg_hand_print(out, &charge->air);
    fprintf(out,
            "\nThe model takes %s a cycle.  The charge's temperature is the "
            "model's: %s.\n",
            cg_lesson_say(&model).text,
            boosted(sheet) ? "after\ncompressor and cooler, some of the fuel "
                             "evaporated"
                           : "some\nof the fuel has evaporated");
}

void cg_lesson_heat_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    if (!boosted(sheet)) {
        fprintf(out,
                "Heat of the flame goes through the piston's crown: at full "
                "load %s\nin the mean, by the model.  More fuel "
                "would send more.\n",
                cg_lesson_say(&burn->model_flux).text);
        return;
    }
    fprintf(out,
            "More fuel sends more heat through the piston's crown.  By the "
            "model, at full load:\n\n");
    cg_hand_print(out, &burn->flux_times);
    fprintf(out,
            "\nHeat through the walls grows more slowly than the air, since it "
            "follows pressure to\na power below one.  It still has to go "
            "somewhere.\n");
}

void cg_lesson_heat_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    fprintf(out, "Fuel for that air, and the heat in it:\n\n");
    cg_hand_print(out, &burn->need);
    cg_hand_print(out, &burn->fuel);
    cg_hand_print(out, &burn->energy);
    fprintf(out,
            "\nThe walls take %.1f %% of it in all by the model (%s); through "
            "the crown,\nover the bore's area, goes\n\n",
            100.0 * heat->wall_heat / heat->fuel_energy,
            sheet->c->combustion.heat_transfer);
    cg_hand_print(out, &burn->crown);
    cg_hand_print(out, &burn->cycles);
    cg_hand_print(out, &burn->flux);
    fprintf(out, "\nThe model has %s.\n",
            cg_lesson_say(&burn->model_flux).text);
    if (!boosted(sheet))
        return;
    fprintf(out, "Against no boost:\n\n");
    cg_hand_print(out, &burn->flux_times);
    fprintf(out,
            "\nThe coefficient of the gas follows pressure to a power below "
            "one (0.7 to 0.8 in\nthe three correlations), so heat grows more "
            "slowly than the air.\n");
}

static void print_temperatures(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    fprintf(
        out, "  crown %s, top groove %s, top ring %s, bore where it runs %s\n",
        cg_lesson_say(&ladder->crown).text, cg_lesson_say(&ladder->groove).text,
        cg_lesson_say(&ladder->model_ring).text,
        cg_lesson_say(&ladder->bore).text);
}

void cg_lesson_ladder_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    fprintf(out,
            "Heat runs from the crown down to the groove.  The groove heats "
            "the ring, the ring\npasses it through a film of oil to the bore, "
            "and the bore to the coolant.  Held\nat full load until nothing "
            "changes any more, the model finds:\n\n");
    print_temperatures(out, sheet);
    fprintf(
        out,
        "\nThe groove warms the ring and the bore cools it: the ring stands "
        "between.\n");
}

void cg_lesson_ladder_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    fprintf(out, "Held at full load until settled, the model finds:\n\n");
    print_temperatures(out, sheet);
    fprintf(out,
            "\nBetween groove and bore heat meets three resistances, in "
            "series as in a circuit%s:\n\n",
            sheet->inch ? "\n(in mm, watt and kelvin; only the fall in F)"
                        : "");
    cg_hand_print(out, &ladder->middle);
    cg_hand_print(out, &ladder->flank_area);
    cg_hand_print(out, &ladder->face_area);
    fprintf(out, "\n");
    cg_hand_print(out, &ladder->flank);
    cg_hand_print(out, &ladder->inside);
    cg_hand_print(out, &ladder->film);
    cg_hand_print(out, &ladder->total);
    fprintf(out,
            "\nThe larger a resistance, the larger its share of the fall:\n\n");
    cg_hand_print(out, &ladder->fall);
    cg_hand_print(out, &ladder->step);
    cg_hand_print(out, &ladder->ring);
    fprintf(out,
            "\nThe model's ring stands at %s: it adds the heat of friction "
            "and cuts the ring\ninto slices.  A third of the depth, since heat "
            "comes in all along the flank.  We\ngo on with the model's.\n",
            cg_lesson_say(&ladder->model_ring).text);
}
