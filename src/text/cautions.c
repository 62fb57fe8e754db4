#include "cautions.h"

#include <stddef.h>

const char *cg_cautions_short(void)
{
    return "An estimate, not a warranty; where the ring or piston maker's "
           "minimum gap is larger, it wins.";
}

const char *cg_cautions_text(void)
{
    return "Cautions\n"
           "  The figures are an estimate, not a warranty.\n"
           "  Where the ring or piston maker's minimum gap is larger, it "
           "wins.\n"
           "  Measure the gap in the honed bore it will run in, the ring "
           "square to the\n"
           "  bore, the torque plate on and torqued.\n"
           "  Wear eye and dust protection when filing and honing.\n"
           "  Local codes and qualified practice come first.\n";
}

/* tests/program/test_page.c holds it to the text above. */
const char *const *cg_cautions_list(void)
{
    static const char *const list[] = {
        "The figures are an estimate, not a warranty.",
        "Where the ring or piston maker's minimum gap is larger, it wins.",
        ("Measure the gap in the honed bore it will run in, the ring square "
         "to the bore, the torque plate on and torqued."),
        "Wear eye and dust protection when filing and honing.",
        "Local codes and qualified practice come first.",
        NULL};
    return list;
}
