#include "cautions.h"

#include "wrap.h"

#define ESTIMATE "The figures are an estimate, not a warranty."
#define MAKERS                                                                 \
    "Where the ring or piston maker gives a larger minimum gap, file to that."

const char *cg_cautions_short(void)
{
    return ESTIMATE " " MAKERS;
}

const char *const *cg_cautions_list(void)
{
    static const char *const list[] = {
        ESTIMATE,
        MAKERS,
        ("Measure the gap in the honed bore it will run in, the ring square "
         "to the bore, the torque plate on and torqued."),
        "Wear eye and dust protection when filing and honing.",
        "Local codes and qualified practice come first.",
        NULL};
    return list;
}

void cg_cautions_print(FILE *out)
{
    fputs("Cautions\n", out);
    for (const char *const *line = cg_cautions_list(); *line != NULL; line++) {
        fputs("  ", out);
        cg_wrap(out, *line, 2, 2);
    }
}
