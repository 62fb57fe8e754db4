#include "cautions.h"

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
