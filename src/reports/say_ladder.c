#include "say_ladder.h"

#include "report_past.h"
#include "rings_answer.h"

static const struct {
    const char *name, *why;
} parts[CG_LADDER_PARTS] = {
    [CG_LADDER_TOP_GAP] = {"Top ring gap", "less than to file to"},
    [CG_LADDER_SECOND_GAP] = {"Second ring gap", "less than to file to"},
    [CG_LADDER_RING_FACE] = {"Ring face", ""},
    [CG_LADDER_RING_METAL] = {"Ring metal", ""},
    [CG_LADDER_SEATING] = {"Ring seating",
                           "the top ring leaves its seat early"},
    [CG_LADDER_FINISH] = {"Bore finish", "too little oil held for the fuel"},
    [CG_LADDER_PISTON] = {"Piston", ""},
    [CG_LADDER_SKIRT] = {"Skirt clearance", "bears too hard when hot"},
    [CG_LADDER_LANDS] = {"Land clearance", "none left when hot"},
    [CG_LADDER_BORE_OIL] = {"Oil on the bore", "too hot where the ring turns"},
    [CG_LADDER_COOLANT] = {"Coolant", ""},
    [CG_LADDER_SPARK] = {"Spark and knock", "spark as late as anyone sets it"},
    [CG_LADDER_PRESSURE] = {"Cylinder pressure", ""},
    [CG_LADDER_CHARGE] = {"Charge air", "warm at the valve"},
};

const char *cg_say_part(enum cg_ladder_part part)
{
    return parts[part].name;
}

const char *cg_say_stops(enum cg_ladder_part part, int why)
{
    switch (part) {
    case CG_LADDER_RING_FACE:
    case CG_LADDER_RING_METAL:
        return cg_ring_limit_name((enum cg_ring_limit)why);
    case CG_LADDER_SPARK:
        if (why == CG_PAST_LIMITS)
            break;
        return cg_say_past_word((enum cg_past)why);
    case CG_LADDER_PISTON:
    case CG_LADDER_PRESSURE:
    case CG_LADDER_COOLANT:
        return cg_say_past_word((enum cg_past)why);
    default:
        break;
    }
    return parts[part].why;
}
