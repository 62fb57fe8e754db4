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
    printf("The cylinder fills at the manifold's pressure.  Boost comes on top "
           "of the air outside:\n\n");
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
    struct cg_figure model =
        cg_lesson_figure(sheet->inch, "model", CG_LESSON_MASS,
                         sheet->lesson->heat.air);
    cg_lesson_boost_first(sheet);
    printf("\nOne cylinder's charge is an ideal gas, mass = pressure x volume "
           "over gas constant\nand absolute temperature, times how well the "
           "cylinder fills:\n\n");
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
        printf("Heat of the flame goes through the piston's crown, at full "
               "load %s of it\nin the mean, by the model.  More fuel "
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
    printf("\nHow much of it the walls take is the model's (%s): %.1f %% in "
           "all, and through\nthe crown, over the bore's area:\n\n",
           sheet->c->combustion.heat_transfer,
           100.0 * heat->wall_heat / heat->fuel_energy);
    cg_hand_print(&burn->crown);
    cg_hand_print(&burn->cycles);
    cg_hand_print(&burn->flux);
    printf("\nThe model has %s.\n",
           cg_lesson_say(&burn->model_flux).text);
    if (!boosted(sheet))
        return;
    printf("Against no boost:\n\n");
    cg_hand_print(&burn->flux_times);
    printf("\nThe gas side's coefficient follows pressure to a power below one "
           "(0.7 to 0.8 in the\nthree correlations), so heat grows more "
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
    printf("Heat runs from the crown down to the groove.  The groove heats the "
           "ring, the ring\npasses it through a film of oil to the bore, and "
           "the bore to the coolant.  Held at\nfull load until nothing changes "
           "any more, the model finds:\n\n");
    print_temperatures(sheet);
    printf("\nThe groove warms the ring and the bore cools it: the ring stands "
           "between.\n");
}

void cg_lesson_ladder_second(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    printf("Held at full load until settled, the model finds:\n\n");
    print_temperatures(sheet);
    printf("\nBetween groove and bore heat meets three resistances, in series "
           "as in a circuit%s:\n\n",
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
    printf("\nThe model's ring stands at %s: it adds the heat of friction and "
           "cuts the ring\ninto slices.  A third of the depth is what a flank "
           "heated all along leaves inside.\nWe go on with the model's.\n",
           cg_lesson_say(&ladder->model_ring).text);
}
