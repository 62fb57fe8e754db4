#include "show.h"

#include <math.h>
#include <stdio.h>

static struct cg_text one(enum cg_kind kind, double value, bool inch)
{
    return cg_quantity_one(cg_quantity(kind, value), inch);
}

double cg_shown_up(double metres, bool inch)
{
    return cg_quantity_shown(cg_quantity(CG_SHOW_GAP_ASKED, metres), inch);
}

struct cg_text cg_show_gap(double metres, bool inch)
{
    return cg_quantity_text(cg_quantity(CG_SHOW_GAP, metres), inch);
}

struct cg_text cg_show_gap_up(double metres, bool inch)
{
    return cg_quantity_text(cg_quantity(CG_SHOW_GAP_ASKED, metres), inch);
}

struct cg_text cg_show_gap_of(double metres, bool given, bool inch)
{
    return given ? cg_show_gap(metres, inch) : cg_show_gap_up(metres, inch);
}

struct cg_text cg_show_length_up(double metres, bool inch)
{
    return one(CG_SHOW_GAP_ASKED, metres, inch);
}

/* What the parts as shown lack of the gap as shown. */
static double rest_of(double gap, const double *part, size_t parts, bool inch)
{
    double rest = cg_shown_up(gap, inch);
    for (size_t i = 0; i < parts; i++)
        rest -= cg_quantity_shown(cg_quantity(CG_SHOW_GAP, part[i]), inch);
    /* none is none, not "-0" */
    return cg_quantity_shown(cg_quantity(CG_SHOW_GAP, fmax(rest, 0.0)), inch);
}

struct cg_text cg_show_rest_length(double gap, const double *part,
                                   size_t parts, bool inch)
{
    return one(CG_SHOW_SMALL_LENGTH, rest_of(gap, part, parts, inch), inch);
}

struct cg_text cg_show_rest(double gap, const double *part, size_t parts,
                            bool inch)
{
    struct cg_text out;
    snprintf(out.text, sizeof out.text, "%.20s (%.20s)",
             cg_show_rest_length(gap, part, parts, inch).text,
             cg_show_rest_length(gap, part, parts, !inch).text);
    return out;
}

struct cg_text cg_show_length(double metres, bool inch)
{
    return one(fabs(metres) < 5e-3 ? CG_SHOW_SMALL_LENGTH : CG_SHOW_LENGTH,
               metres, inch);
}

struct cg_text cg_show_temperature(double kelvin, bool inch)
{
    return one(CG_SHOW_TEMPERATURE, kelvin, inch);
}

struct cg_text cg_show_stress(double pascal, bool inch)
{
    return one(CG_SHOW_STRESS, pascal, inch);
}

struct cg_text cg_show_wall_pressure(double pascal, bool inch)
{
    return one(CG_SHOW_WALL_PRESSURE, pascal, inch);
}

struct cg_text cg_show_peak_pressure(double pascal, bool inch)
{
    return one(CG_SHOW_PEAK_PRESSURE, pascal, inch);
}

struct cg_text cg_show_boost(double pascal, bool inch)
{
    return one(CG_SHOW_BOOST, pascal, inch);
}

struct cg_text cg_show_leak(double kg_per_second, bool inch)
{
    return one(CG_SHOW_LEAK, kg_per_second, inch);
}

