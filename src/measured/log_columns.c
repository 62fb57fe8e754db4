#include "log_columns.h"

#include <stdio.h>
#include <string.h>

#include "evidence.h"
#include "fuel.h"

#define KELVIN(celsius) ((celsius) + 273.15)

/* What the model may run by, and wider where a sensor shows more than that:
 * what lies outside is a wrong unit or a broken wire.  The time a straight line
 * may go: a pull is over in some seconds, a body of water or oil takes minutes.
 * Common practice, no source. */
static const struct {
    const char *name;
    enum cg_dimension dimension;
    double gap; /* [s] */
    struct cg_log_band band;
} quantities[CG_LOGGED] = {
    [CG_LOGGED_TIME] = {"time", CG_TIME, 2.0, {-1e9, 1e9}},
    [CG_LOGGED_SPEED] = {"speed", CG_ROTATION, 2.0, {0.0, 0.0}},
    [CG_LOGGED_BOOST] = {"boost", CG_PRESSURE, 2.0, {-1e5, 6e5}},
    [CG_LOGGED_MANIFOLD] = {"manifold", CG_PRESSURE, 2.0, {1e3, 8e5}},
    [CG_LOGGED_LOAD] = {"load", CG_SHARE, 2.0, {-0.1, CG_COURSE_MOST_LOAD}},
    [CG_LOGGED_LAMBDA] = {"lambda", CG_PLAIN, 2.0, {0.4, 40.0}},
    [CG_LOGGED_RATIO] = {"air_fuel_ratio", CG_PLAIN, 2.0, {0.4, 40.0}},
    [CG_LOGGED_BURN50] = {"burn50", CG_ANGLE, 2.0, {-30.0, 100.0}},
    [CG_LOGGED_COOLANT] = {"coolant",
                           CG_TEMPERATURE,
                           60.0,
                           {KELVIN(-40.0), KELVIN(140.0)}},
    [CG_LOGGED_OIL] = {"oil",
                       CG_TEMPERATURE,
                       60.0,
                       {KELVIN(-40.0), CG_COURSE_HOTTEST}},
    [CG_LOGGED_AIR] = {"air",
                       CG_TEMPERATURE,
                       60.0,
                       {KELVIN(-40.0), CG_COURSE_HOTTEST}},
    [CG_LOGGED_NITROUS] = {"nitrous", CG_SHARE, 2.0, {-0.1, 1.1}},
    [CG_LOGGED_FOUND] = {"",
                         CG_TEMPERATURE,
                         60.0,
                         {CG_EVIDENCE_COLDEST, CG_EVIDENCE_HOTTEST_GAS}},
};

/* The unit with which a key writes that quantity, or NULL. */
static const struct cg_unit *unit_of(const char *key, int quantity)
{
    const char *name = quantities[quantity].name;
    size_t length = strlen(name);
    if (strncmp(key, name, length) != 0)
        return NULL;
    if (key[length] == '\0')
        return cg_unit_find(quantities[quantity].dimension, "");
    return key[length] == '_'
               ? cg_unit_find(quantities[quantity].dimension, key + length + 1)
               : NULL;
}

bool cg_log_key(const char *key, enum cg_logged *quantity,
                const struct cg_unit **unit)
{
    for (int q = 0; q < CG_LOGGED_FOUND; q++) {
        *unit = unit_of(key, q);
        *quantity = (enum cg_logged)q;
        if (*unit != NULL)
            return true;
    }
    return false;
}

size_t cg_log_keys(char key[CG_LOGGED][CG_NAME_LENGTH])
{
    size_t units;
    const struct cg_unit *unit = cg_units(&units);
    for (int q = 0; q < CG_LOGGED_FOUND; q++) {
        size_t u = 0;
        while (unit[u].dimension != quantities[q].dimension)
            u++;
        snprintf(key[q], CG_NAME_LENGTH, "%s%s%s", quantities[q].name,
                 unit[u].suffix[0] != '\0' ? "_" : "", unit[u].suffix);
    }
    return CG_LOGGED_FOUND;
}

struct cg_log_band cg_log_band_of(const struct cg_case *c,
                                  enum cg_logged quantity)
{
    struct cg_log_band band = quantities[quantity].band;
    if (quantity == CG_LOGGED_SPEED)
        band.high = 1.5 * c->engine.speed;
    if (quantity == CG_LOGGED_RATIO) {
        const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
        double one = fuel != NULL ? cg_fuel_stoichiometric(fuel) : 1.0;
        band.low *= one;
        band.high *= one;
    }
    return band;
}

double cg_log_gap(enum cg_logged quantity)
{
    return quantities[quantity].gap;
}
