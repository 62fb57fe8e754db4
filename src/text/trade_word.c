#include "trade_word.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

/* Of a key: another name for the same quantity, or one of the same matter in
 * other figures, to which it leads by a hint alone. */
#define KEY "key"
#define LIKE "like"
#define CHARGER "charge.charger"
#define SECOND "charge.second_charger"
#define FUEL "fuel.name"
#define MEDIUM "cooling.medium"
#define FACE "rings.top.face"
#define RING "ring"
#define BORE "bore"

/* `where` is the path of a setting, the role of a material, KEY or LIKE. */
static const struct {
    const char *where, *said, *ours;
} words[] = {
    {KEY, "clearance", "skirt_clearance"},
    {KEY, "coat", "face"},
    {KEY, "coating", "face"},
    {KEY, "end_gap", "cold_gap"},
    {KEY, "gap", "cold_gap"},
    {KEY, "oil_squirters", "oil_jet"},
    {KEY, "rpm", "speed_rpm"},
    {LIKE, "afr", "lambda"},
    {LIKE, "shot", "power"},
    {LIKE, "timing", "burn50"},
    {CHARGER, "blower", "belt"},
    {CHARGER, "na", "none"},
    {CHARGER, "naturally_aspirated", "none"},
    {CHARGER, "supercharged", "belt"},
    {CHARGER, "supercharger", "belt"},
    {CHARGER, "turbo", "turbine"},
    {CHARGER, "turbocharged", "turbine"},
    {CHARGER, "turbocharger", "turbine"},
    {MEDIUM, "air_cooled", "air"},
    {MEDIUM, "glycol", "coolant"},
    {MEDIUM, "liquid", "coolant"},
    {MEDIUM, "water", "coolant"},
    {MEDIUM, "water_cooled", "coolant"},
    {SECOND, "blower", "belt"},
    {SECOND, "supercharger", "belt"},
    {SECOND, "turbo", "turbine"},
    {SECOND, "turbocharger", "turbine"},
    {FUEL, "diesel", "diesel"}, /* in capitals */
    {FUEL, "e85", "e85"},       /* likewise */
    {FUEL, "derv", "diesel"},
    {FUEL, "gas", "gasoline"},
    {FUEL, "gas_oil", "diesel"},
    {FUEL, "isooctane", "iso_octane"},
    {FUEL, "petrol", "gasoline"},
    {FUEL, "pump_gas", "gasoline"},
    {FACE, "chrome", "chromium"},
    {FACE, "chrome_plated", "chromium"},
    {FACE, "crn", "vapour_crn"},
    {FACE, "gas_nitrided", "nitrided"},
    {FACE, "hard_chrome", "chromium"},
    {FACE, "moly", "sprayed_molybdenum"},
    {FACE, "molybdenum", "sprayed_molybdenum"},
    {FACE, "none", "uncoated"},
    {FACE, "plasma_moly", "sprayed_molybdenum"},
    {FACE, "pvd_crn", "vapour_crn"},
    {FACE, "pvd_tin", "vapour_tin"},
    {FACE, "tin", "vapour_tin"},
    {FACE, "vapor_crn", "vapour_crn"},
    {FACE, "vapor_tin", "vapour_tin"},
    {RING, "cast_iron", "grey_iron_ring"},
    {RING, "ductile", "ductile_iron_ring"},
    {RING, "ductile_iron", "ductile_iron_ring"},
    {RING, "gray_iron", "grey_iron_ring"},
    {RING, "grey_iron", "grey_iron_ring"},
    {RING, "iron", "grey_iron_ring"},
    {RING, "nodular_iron", "ductile_iron_ring"},
    {RING, "sg_iron", "ductile_iron_ring"},
    {RING, "stainless", "nitrided_stainless"},
    {RING, "steel", "plain_steel"},
    {BORE, "cast_iron", "grey_iron"},
    {BORE, "compacted_graphite", "cgi"},
    {BORE, "ductile", "ductile_iron"},
    {BORE, "gray_iron", "grey_iron"},
    {BORE, "iron", "grey_iron"},
    {BORE, "nodular_iron", "ductile_iron"},
    {BORE, "sg_iron", "ductile_iron"},
};

enum { COUNT = sizeof words / sizeof words[0] };

/* How many letters `word` begins with `said`; capitals do not matter, and
 * blanks and hyphens are as good as "_".  0: it begins otherwise. */
static size_t begins(const char *word, const char *said)
{
    size_t i = 0;
    for (; said[i] != '\0'; i++) {
        int letter = tolower((unsigned char)word[i]);
        if (letter == ' ' || letter == '-')
            letter = '_';
        if (letter != said[i])
            return 0;
    }
    return i;
}

bool cg_trade_begins(const char *word, const char *said)
{
    size_t length = begins(word, said);
    return length > 0 && strchr("_- .", word[length]) != NULL;
}

/* A key keeps its unit: "gap_mm" is "gap" and "_mm". */
static const char *find_key(const char *key, const char *where,
                            const char **unit)
{
    for (size_t i = 0; i < COUNT; i++) {
        size_t said = begins(key, words[i].said);
        if (said > 0 && strcmp(words[i].where, where) == 0 &&
            (key[said] == '\0' || key[said] == '_')) {
            *unit = key + said;
            return words[i].ours;
        }
    }
    return NULL;
}

bool cg_trade_key(const char *key, char *ours, size_t size)
{
    const char *unit, *name = find_key(key, KEY, &unit);
    if (name == NULL)
        return false;
    int length = snprintf(ours, size, "%s%s", name, unit);
    return length > 0 && (size_t)length < size;
}

void cg_trade_word(const char *key, char *ours, size_t size)
{
    const char *unit, *name = find_key(key, LIKE, &unit);
    if (name == NULL)
        name = find_key(key, KEY, &unit);
    if (name != NULL)
        snprintf(ours, size, "%s%s", name, unit);
    else
        snprintf(ours, size, "%s", key);
}

const char *cg_trade_value(const char *what, const char *word)
{
    for (size_t i = 0; i < COUNT; i++) {
        size_t said = begins(word, words[i].said);
        if (said > 0 && word[said] == '\0' && strcmp(words[i].where, what) == 0)
            return words[i].ours;
    }
    return NULL;
}
