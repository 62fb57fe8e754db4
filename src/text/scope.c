#include "scope.h"

#include <string.h>

#include "trade_word.h"

#define ALLOWED "allowed: a four-stroke engine, cooled by coolant or air"
#define DIESEL                                                                 \
    "a diesel is fired by compression, allowed: combustion.ignition = "        \
    "\"compression\""
#define OILS "of diesel fuels allowed: \"diesel\""
#define IGNITION                                                               \
    "ignition is a setting of combustion, allowed there: spark, compression"
#define NITROUS                                                                \
    "nitrous is no such thing here, allowed: nitrous.flow_g_s or "             \
    "nitrous.power_kW, and nitrous = 1.0 in a segment of the duty"
#define CHARGERS                                                               \
    "more than two chargers are not modelled, allowed: charge.charger and "    \
    "charge.second_charger behind it"
#define COOLED "write cooling.medium, allowed: coolant, air"
#define OIL "cooling by oil is not modelled, allowed: coolant, or air past fins"
#define SPRAYED                                                                \
    "a spray on the fins is not modelled, allowed: air alone, "                \
    "cooling.air_speed_m_s and cooling.fins_W_m2K"
#define FLAPS                                                                  \
    "flaps in the cooling air are not modelled, allowed: "                     \
    "cooling.air_speed_m_s with them open, and cooling.air_drive"
#define STROKES                                                                \
    "a two-stroke is not modelled, " ALLOWED "; for one leave the setting out"

const char *cg_scope(void)
{
    return "For four-stroke engines alone, diesels among them, cooled by "
           "coolant or, other than diesels, by air: no two-stroke. Two "
           "chargers in a row and, other than in diesels, nitrous and sprayed "
           "water and methanol are in it where the config has them.";
}

/* Words of a path in its parts, or of a value; a unit may follow a key. */
struct refusal {
    const char *where; /* a group, "" for any; of a value the setting */
    const char *said, *why;
};

static const struct refusal keys[] = {
    {"charge", "nitrous", NITROUS},
    {"fuel", "nitrous", NITROUS},
    {"", "n2o", NITROUS},
    {"", "nos", NITROUS},
    {"charge", "third_charger", CHARGERS},
    {"", "diesel", DIESEL},
    {"", "two_stroke", STROKES},
    {"", "ignition", IGNITION},
    {"", "air_cooled", COOLED},
    {"engine", "strokes", STROKES},
    {"engine", "stroke_count", STROKES},
    {"engine", "cycle", STROKES},
    {"engine", "cooling", COOLED},
    {"cooling", "type", COOLED},
    {"cooling", "spray", SPRAYED},
    {"cooling", "fan", "write cooling.air_drive, allowed: stream, fan"},
    {"cooling", "flap", FLAPS},
    {"cooling", "flaps", FLAPS},
    {"cooling", "cowl_flap", FLAPS},
    {"cooling", "cowl_flaps", FLAPS},
};

static const struct refusal values[] = {
    {"fuel.name", "biodiesel", OILS},
    {"fuel.name", "heating_oil", OILS},
    {"fuel.name", "hvo", OILS},
    {"fuel.name", "nitrous", NITROUS},
    {"fuel.name", "n2o", NITROUS},
    {"fuel.name", "nos", NITROUS},
    {"cooling.medium", "oil", OIL},
    {"charge.charger", "nitrous", NITROUS},
    {"charge.charger", "n2o", NITROUS},
    {"charge.charger", "nos", NITROUS},
};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

/* Whether the first part of a path is that group. */
static bool in_group(const char *path, const char *group)
{
    size_t length = strlen(group);
    return length == 0 ||
           (strncmp(path, group, length) == 0 && path[length] == '.');
}

/* Whether any part of the path begins so. */
static bool mentions(const char *path, const char *said)
{
    for (; path != NULL; path = strchr(path, '.')) {
        path += *path == '.';
        if (cg_trade_begins(path, said))
            return true;
    }
    return false;
}

const char *cg_scope_refuses_key(const char *path)
{
    for (size_t i = 0; i < COUNT(keys); i++)
        if (in_group(path, keys[i].where) && mentions(path, keys[i].said))
            return keys[i].why;
    return NULL;
}

const char *cg_scope_refuses_value(const char *path, const char *word)
{
    for (size_t i = 0; i < COUNT(values); i++)
        if (strcmp(path, values[i].where) == 0 &&
            cg_trade_begins(word, values[i].said))
            return values[i].why;
    return NULL;
}
