#include "cautions.h"

#include <stdbool.h>

#include "wrap.h"

#define ESTIMATE "The figures are an estimate, not a warranty."
#define MAKERS                                                                 \
    "Where the ring or piston maker gives a larger minimum gap, file to that."

const char *cg_cautions_short(void)
{
    return ESTIMATE " " MAKERS;
}

static bool with_nitrous;

void cg_cautions_take_nitrous(void)
{
    with_nitrous = true;
}

const char *cg_cautions_nitrous(void)
{
    return with_nitrous
               ? "Nitrous melts pistons where fuel, spark or bottle are not as "
                 "set here: jets and timing are proven on the engine, small "
                 "ones first."
               : NULL;
}

const char *const *cg_cautions_list(void)
{
    static const char *list[] = {
        ESTIMATE,
        MAKERS,
        ("Measure the gap in the honed bore it will run in, the ring square "
         "to the bore, the torque plate on and torqued."),
        "Wear eye and dust protection when filing and honing.",
        "Local codes and qualified practice come first.",
        NULL, /* the one of nitrous */
        NULL};
    list[sizeof list / sizeof list[0] - 2] = cg_cautions_nitrous();
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
