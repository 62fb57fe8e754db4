/* The lesson's steps from boost to the ring's temperature. */
#include <stdio.h>

#include "report_lesson_parts.h"
#include "show.h"

static bool boosted(const struct cg_lesson_sheet *sheet)
{
    return sheet->lesson->own > 0;
}

void cg_lesson_boost_first(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    printf("The cylinder fills at the manifold's pressure.  Boost comes on "
           "top of the air\noutside:\n\n");
    cg_hand_print(&charge->manifold);
    cg_hand_print(&charge->times);
    if (boosted(sheet))
        printf("\nSo much more air goes in (a little less: pressed air is "
               "warm), and as much more\nfuel burns with it, in the same "
               "cylinder.\n");
    else
        printf("\nThis engine has no boost: the air outside fills it.  Step 7 "
               "supposes some.\n");
}

void cg_lesson_boost_second(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    struct cg_figure model = cg_lesson_figure(
        sheet->inch, "model", CG_LESSON_MASS, sheet->lesson->heat.air);
    cg_lesson_boost_first(sheet);
    printf("\nThe charge of one cylinder follows the gas law: pressure x "
           "volume over gas constant\nand absolute temperature is its mass, "
           "times how well the cylinder fills.\n\n");
    cg_hand_print(&charge->area);
    cg_hand_print(&charge->swept);
    cg_hand_print(&charge->absolute);
    cg_hand_print(&charge->air);
    printf("\nThe model takes %s a cycle.  The charge's temperature is the "
           "model's: after\ncompressor and cooler, some of the fuel "
           "evaporated.\n",
           cg_lesson_say(&model).text);
}

void cg_lesson_heat_first(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    if (!boosted(sheet)) {
        printf("Heat of the flame goes through the piston's crown: at full "
               "load %s\nin the mean, by the model.  More fuel "
               "would send more.\n",
               cg_lesson_say(&burn->model_flux).text);
        return;
    }
    printf("More fuel sends more heat through the piston's crown.  By the "
           "model, at full load:\n\n");
    cg_hand_print(&burn->flux_times);
    printf("\nHeat through the walls grows more slowly than the air, since it "
           "follows pressure to\na power below one.  It still has to go "
           "somewhere.\n");
}

void cg_lesson_heat_second(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    printf("Fuel for that air, and the heat in it:\n\n");
    cg_hand_print(&burn->need);
    cg_hand_print(&burn->fuel);
    cg_hand_print(&burn->energy);
    printf("\nThe walls take %.1f %% of it in all by the model (%s); through "
           "the crown,\nover the bore's area, goes\n\n",
           100.0 * heat->wall_heat / heat->fuel_energy,
           sheet->c->combustion.heat_transfer);
    cg_hand_print(&burn->crown);
    cg_hand_print(&burn->cycles);
    cg_hand_print(&burn->flux);
    printf("\nThe model has %s.\n", cg_lesson_say(&burn->model_flux).text);
    if (!boosted(sheet))
        return;
    printf("Against no boost:\n\n");
    cg_hand_print(&burn->flux_times);
    printf("\nThe coefficient of the gas follows pressure to a power below "
           "one (0.7 to 0.8 in\nthe three correlations), so heat grows more "
           "slowly than the air.\n");
}

static void print_temperatures(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    printf("  crown %s, top groove %s, top ring %s, bore where it runs %s\n",
           cg_lesson_say(&ladder->crown).text,
           cg_lesson_say(&ladder->groove).text,
           cg_lesson_say(&ladder->model_ring).text,
           cg_lesson_say(&ladder->bore).text);
}

void cg_lesson_ladder_first(const struct cg_lesson_sheet *sheet)
{
    printf("Heat runs from the crown down to the groove.  The groove heats "
           "the ring, the ring\npasses it through a film of oil to the bore, "
           "and the bore to the coolant.  Held\nat full load until nothing "
           "changes any more, the model finds:\n\n");
    print_temperatures(sheet);
    printf("\nThe groove warms the ring and the bore cools it: the ring stands "
           "between.\n");
}

void cg_lesson_ladder_second(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    printf("Held at full load until settled, the model finds:\n\n");
    print_temperatures(sheet);
    printf("\nBetween groove and bore heat meets three resistances, in "
           "series as in a circuit%s:\n\n",
           sheet->inch ? "\n(in mm, watt and kelvin; only the fall in F)" : "");
    cg_hand_print(&ladder->middle);
    cg_hand_print(&ladder->flank_area);
    cg_hand_print(&ladder->face_area);
    printf("\n");
    cg_hand_print(&ladder->flank);
    cg_hand_print(&ladder->inside);
    cg_hand_print(&ladder->film);
    cg_hand_print(&ladder->total);
    printf("\nThe larger a resistance, the larger its share of the fall:\n\n");
    cg_hand_print(&ladder->fall);
    cg_hand_print(&ladder->step);
    cg_hand_print(&ladder->ring);
    printf("\nThe model's ring stands at %s: it adds the heat of friction "
           "and cuts the ring\ninto slices.  A third of the depth, since heat "
           "comes in all along the flank.  We\ngo on with the model's.\n",
           cg_lesson_say(&ladder->model_ring).text);
}
