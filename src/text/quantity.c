#include "quantity.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "constants.h"

#define CUBIC_FOOT (1728.0 * CG_INCH * CG_INCH * CG_INCH)

/* How a kind is shown in one system: shown = value / size - origin. */
struct manner {
    const char *format, *unit;
    double size, origin;
    double step; /* rounded up to multiples of it [SI]; 0: to the digits */
};

struct kind {
    const char *si;
    struct manner metric, inch;
    bool both; /* screens show both at once */
};

#define SAME(format, unit, size)                                             \
    {format, unit, size, 0, 0}, {format, unit, size, 0, 0}

static const struct kind kinds[CG_KINDS] = {
    [CG_SHOW_WORDS] = {"", SAME("%g", "", 1), false},
    [CG_SHOW_NUMBER] = {"1", SAME("%.4g", "", 1), false},
    [CG_SHOW_COUNT] = {"1", SAME("%.0f", "", 1), false},
    [CG_SHOW_SHARE] = {"1", SAME("%.1f", "%", 0.01), false},
    [CG_SHOW_WHOLE_SHARE] = {"1", SAME("%.0f", "%", 0.01), false},
    [CG_SHOW_SMALL_SHARE] = {"1", SAME("%.2g", "%", 0.01), false},
    [CG_SHOW_GAP_ASKED] = {"m",
                      {"%.2f", "mm", 1e-3, 0, 1e-5},
                      {"%.4f", "in", CG_INCH, 0, 0.5e-3 * CG_INCH},
                      true},
    [CG_SHOW_GAP] = {"m",
                {"%.3f", "mm", 1e-3, 0, 0},
                {"%.4f", "in", CG_INCH, 0, 0},
                true},
    [CG_SHOW_SMALL_LENGTH] = {"m",
                              {"%.3f", "mm", 1e-3, 0, 0},
                              {"%.4f", "in", CG_INCH, 0, 0},
                              false},
    [CG_SHOW_LENGTH] = {"m",
                   {"%.1f", "mm", 1e-3, 0, 0},
                   {"%.3f", "in", CG_INCH, 0, 0},
                   false},
    [CG_SHOW_FILM] = {"m",
                 {"%.2g", "um", 1e-6, 0, 0},
                 {"%.0f", "uin", 1e-6 * CG_INCH, 0, 0},
                 false},
    [CG_SHOW_ROUGHNESS] = {"m",
                 {"%.3f", "um", 1e-6, 0, 0},
                 {"%.1f", "uin", 1e-6 * CG_INCH, 0, 0},
                 true},
    [CG_SHOW_OIL] = {"m",
                 {"%.4f", "mm3/cm2", 1e-5, 0, 0},
                 {"%.1f", "uin deep", 1e-6 * CG_INCH, 0, 0},
                 true},
    [CG_SHOW_TEMPERATURE] = {"K",
                        {"%.0f", "C", 1, CG_ZERO_CELSIUS, 0},
                        {"%.0f", "F", 1 / 1.8, CG_ZERO_CELSIUS * 1.8 - 32, 0},
                        false},
    [CG_SHOW_KELVIN] = {"K",
                   {"%.1f", "K", 1, 0, 0},
                   {"%.1f", "F", 1 / 1.8, 0, 0},
                   false},
    [CG_SHOW_PRESSURE] = {"Pa",
                     {"%.1f", "bar", 1e5, 0, 0},
                     {"%.0f", "psi", CG_PSI, 0, 0},
                     false},
    [CG_SHOW_PEAK_PRESSURE] = {"Pa",
                          {"%.0f", "bar", 1e5, 0, 0},
                          {"%.0f", "psi", CG_PSI, 0, 0},
                          false},
    [CG_SHOW_RISE] = {"Pa/deg",
                 {"%.1f", "bar/deg", 1e5, 0, 0},
                 {"%.0f", "psi/deg", CG_PSI, 0, 0},
                 false},
    [CG_SHOW_STRESS] = {"Pa",
                   {"%.0f", "MPa", 1e6, 0, 0},
                   {"%.0f", "ksi", 1e3 * CG_PSI, 0, 0},
                   false},
    [CG_SHOW_WALL_PRESSURE] = {"Pa",
                          {"%.1f", "MPa", 1e6, 0, 0},
                          {"%.0f", "psi", CG_PSI, 0, 0},
                          false},
    [CG_SHOW_BOOST] = {"Pa",
                  {"%.0f", "kPa", 1e3, 0, 0},
                  {"%.1f", "psi", CG_PSI, 0, 0},
                  false},
    [CG_SHOW_POWER] = {"W",
                  {"%.0f", "kW", 1e3, 0, 0},
                  {"%.0f", "hp", CG_HORSEPOWER, 0, 0},
                  false},
    [CG_SHOW_SMALL_POWER] = {"W",
                        {"%.3g", "kW", 1e3, 0, 0},
                        {"%.3g", "hp", CG_HORSEPOWER, 0, 0},
                        false},
    [CG_SHOW_ROUGH_POWER] = {"W",
                        {"%.2g", "kW", 1e3, 0, 0},
                        {"%.2g", "hp", CG_HORSEPOWER, 0, 0},
                        false},
    [CG_SHOW_FLOW] = {"kg/s",
                 {"%.0f", "kg/h", 1 / 3600.0, 0, 0},
                 {"%.0f", "lb/h", CG_POUND / 3600.0, 0, 0},
                 false},
    [CG_SHOW_LEAK] = {"kg/s",
                 {"%.3g", "g/s", 1e-3, 0, 0},
                 {"%.3g", "lb/h", CG_POUND / 3600.0, 0, 0},
                 false},
    [CG_SHOW_ROUGH_LEAK] = {"kg/s",
                 {"%.2g", "g/s", 1e-3, 0, 0},
                 {"%.2g", "lb/h", CG_POUND / 3600.0, 0, 0},
                 false},
    [CG_SHOW_DRAUGHT] = {"m3/s",
                    {"%.3g", "L/min", 1e-3 / 60.0, 0, 0},
                    {"%.3g", "cfm", CUBIC_FOOT / 60.0, 0, 0},
                    false},
    [CG_SHOW_DRAUGHT_SHARE] = {"m3/J",
                    {"%.2g", "L/min/kW", 1e-6 / 60.0, 0, 0},
                    {"%.2g", "cfm/hp", CUBIC_FOOT / 60.0 / CG_HORSEPOWER, 0, 0},
                    false},
    [CG_SHOW_FORCE] = {"N",
                  {"%.0f", "N", 1, 0, 0},
                  {"%.0f", "lbf", CG_POUND * 9.80665, 0, 0},
                  false},
    [CG_SHOW_FLUX] = {"W/m2",
                 {"%.2f", "MW/m2", 1e6, 0, 0},
                 {"%.2f", "Btu/(s in2)", CG_BTU / (CG_INCH * CG_INCH), 0, 0},
                 false},
    [CG_SHOW_PEAK_FLUX] = {"W/m2",
                 {"%.1f", "MW/m2", 1e6, 0, 0},
                 {"%.1f", "Btu/(s in2)", CG_BTU / (CG_INCH * CG_INCH), 0, 0},
                 false},
    [CG_SHOW_HEAT] = {"J",
                 {"%+.1f", "kJ", 1e3, 0, 0},
                 {"%+.1f", "Btu", CG_BTU, 0, 0},
                 false},
    [CG_SHOW_SPEED] = {"1/s", SAME("%.0f", "rpm", 1 / 60.0), false},
    [CG_SHOW_TIME] = {"s", SAME("%.1f", "s", 1), false},
    [CG_SHOW_ANGLE] = {"deg", SAME("%.0f", "deg", 1), false},
    [CG_SHOW_SMALL_ANGLE] = {"deg", SAME("%.2f", "deg", 1), false},
};

static const struct manner *manner_of(enum cg_kind kind, bool inch)
{
    return inch ? &kinds[kind].inch : &kinds[kind].metric;
}

struct cg_quantity cg_quantity(enum cg_kind kind, double value)
{
    return (struct cg_quantity){kind, value};
}

/* Up to a whole number of the kind's steps, where it has one. */
static double round_up(const struct manner *manner, double value)
{
    return manner->step > 0.0
               ? manner->step * ceil(value / manner->step - 1e-6)
               : value;
}

double cg_quantity_number(struct cg_quantity quantity, bool inch)
{
    const struct manner *manner = manner_of(quantity.kind, inch);
    return quantity.value / manner->size - manner->origin;
}

struct cg_text cg_quantity_bare(struct cg_quantity quantity, bool inch)
{
    const struct manner *manner = manner_of(quantity.kind, inch);
    struct cg_text out = {"-"};
    if (isnan(quantity.value))
        return out;
    quantity.value = round_up(manner, quantity.value);
    double number = cg_quantity_number(quantity, inch);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
    snprintf(out.text, sizeof out.text, manner->format, number);
    if (strtod(out.text, NULL) == 0.0) /* not "-0" */
        snprintf(out.text, sizeof out.text, manner->format, 0.0);
#pragma GCC diagnostic pop
    return out;
}

double cg_quantity_shown(struct cg_quantity quantity, bool inch)
{
    const struct manner *manner = manner_of(quantity.kind, inch);
    if (isnan(quantity.value))
        return quantity.value;
    double number = strtod(cg_quantity_bare(quantity, inch).text, NULL);
    return (number + manner->origin) * manner->size;
}

struct cg_text cg_quantity_one(struct cg_quantity quantity, bool inch)
{
    struct cg_text bare = cg_quantity_bare(quantity, inch), out;
    const char *unit = cg_kind_unit(quantity.kind, inch);
    if (isnan(quantity.value) || *unit == '\0')
        return bare;
    snprintf(out.text, sizeof out.text, "%.28s %.18s", bare.text, unit);
    return out;
}

struct cg_text cg_quantity_text(struct cg_quantity quantity, bool inch)
{
    struct cg_text first = cg_quantity_one(quantity, inch), out;
    if (!kinds[quantity.kind].both || isnan(quantity.value))
        return first;
    snprintf(out.text, sizeof out.text, "%.20s (%.20s)", first.text,
             cg_quantity_one(quantity, !inch).text);
    return out;
}

const char *cg_kind_unit(enum cg_kind kind, bool inch)
{
    return manner_of(kind, inch)->unit;
}

const char *cg_kind_si(enum cg_kind kind)
{
    return kinds[kind].si;
}

bool cg_kind_converts(enum cg_kind kind)
{
    return kinds[kind].metric.unit != kinds[kind].inch.unit &&
           kinds[kind].metric.size != kinds[kind].inch.size;
}
