#include "show.h"

#include <math.h>
#include <stdio.h>

#define INCH 25.4e-3
#define THOU 25.4e-6
#define POUND 0.45359237
#define HORSEPOWER 745.6998715822702 /* mechanical [W] */
#define PSI 6894.757293168361
#define BTU 1055.05585262 /* international table [J] */

static struct cg_text text_of(const char *format, double value)
{
    struct cg_text out;
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
    snprintf(out.text, sizeof out.text, format, value);
#pragma GCC diagnostic pop
    return out;
}

/* Small lengths as shown: to 1 um, or to a tenth of a thousandth. */
static double as_shown(double metres, bool inch)
{
    double digit = inch ? 0.1 * THOU : 1e-6;
    return digit * round(metres / digit);
}

double cg_shown_up(double metres, bool inch)
{
    double step = inch ? 0.5 * THOU : 1e-5;
    return step * ceil(metres / step - 1e-6);
}

static struct cg_text both(struct cg_text mm, struct cg_text in, bool inch)
{
    struct cg_text out;
    snprintf(out.text, sizeof out.text, "%.20s (%.20s)",
             inch ? in.text : mm.text, inch ? mm.text : in.text);
    return out;
}

struct cg_text cg_show_gap(double metres, bool inch)
{
    return both(text_of("%.3f mm", metres * 1e3),
                text_of("%.4f in", metres / INCH), inch);
}

struct cg_text cg_show_length_up(double metres, bool inch)
{
    double shown = cg_shown_up(metres, inch);
    return inch ? text_of("%.4f in", shown / INCH)
                : text_of("%.2f mm", shown * 1e3);
}

struct cg_text cg_show_gap_up(double metres, bool inch)
{
    return both(cg_show_length_up(metres, false),
                cg_show_length_up(metres, true), inch);
}

struct cg_text cg_show_rest_length(double gap, const double *part,
                                   size_t parts, bool inch)
{
    double rest = cg_shown_up(gap, inch);
    for (size_t i = 0; i < parts; i++)
        rest -= as_shown(part[i], inch);
    rest = as_shown(fmax(rest, 0.0), inch); /* none is none, not "-0" */
    return inch ? text_of("%.4f in", rest / INCH)
                : text_of("%.3f mm", rest * 1e3);
}

struct cg_text cg_show_rest(double gap, const double *part, size_t parts,
                            bool inch)
{
    return both(cg_show_rest_length(gap, part, parts, false),
                cg_show_rest_length(gap, part, parts, true), inch);
}

struct cg_text cg_show_length(double metres, bool inch)
{
    if (inch)
        return text_of(fabs(metres) < 5e-3 ? "%.4f in" : "%.3f in",
                       metres / INCH);
    return text_of(fabs(metres) < 5e-3 ? "%.3f mm" : "%.1f mm", metres * 1e3);
}

struct cg_text cg_show_temperature(double kelvin, bool inch)
{
    return inch ? text_of("%.0f F", (kelvin - 273.15) * 1.8 + 32.0)
                : text_of("%.0f C", kelvin - 273.15);
}

struct cg_text cg_show_pressure(double pascal, bool inch)
{
    return inch ? text_of("%.0f psi", pascal / PSI)
                : text_of("%.1f bar", pascal / 1e5);
}

struct cg_text cg_show_peak_pressure(double pascal, bool inch)
{
    return inch ? text_of("%.0f psi", pascal / PSI)
                : text_of("%.0f bar", pascal / 1e5);
}

struct cg_text cg_show_stress(double pascal, bool inch)
{
    return inch ? text_of("%.0f ksi", pascal / (1e3 * PSI))
                : text_of("%.0f MPa", pascal / 1e6);
}

struct cg_text cg_show_wall_pressure(double pascal, bool inch)
{
    return inch ? text_of("%.0f psi", pascal / PSI)
                : text_of("%.1f MPa", pascal / 1e6);
}

struct cg_text cg_show_boost(double pascal, bool inch)
{
    return inch ? text_of("%.1f psi", pascal / PSI)
                : text_of("%.0f kPa", pascal / 1e3);
}

struct cg_text cg_show_power(double watt, bool inch)
{
    return inch ? text_of("%.0f hp", watt / HORSEPOWER)
                : text_of("%.0f kW", watt / 1e3);
}

struct cg_text cg_show_flow(double kg_per_second, bool inch)
{
    return inch ? text_of("%.0f lb/h", kg_per_second * 3600.0 / POUND)
                : text_of("%.0f kg/h", kg_per_second * 3600.0);
}

struct cg_text cg_show_leak(double kg_per_second, bool inch)
{
    return inch ? text_of("%.3g lb/h", kg_per_second * 3600.0 / POUND)
                : text_of("%.3g g/s", kg_per_second * 1e3);
}

double cg_show_draught(double m3_per_second, bool inch)
{
    return m3_per_second * 60.0 * (inch ? 1.0 / (12.0 * 12.0 * 12.0) : 1e3) /
           (inch ? INCH * INCH * INCH : 1.0);
}

const char *cg_show_draught_unit(bool inch)
{
    return inch ? "cfm" : "L/min";
}

struct cg_text cg_show_force(double newton, bool inch)
{
    return inch ? text_of("%.0f lbf", newton / (POUND * 9.80665))
                : text_of("%.0f N", newton);
}

double cg_show_flux(double watt_per_m2, bool inch)
{
    return watt_per_m2 * (inch ? INCH * INCH / BTU : 1e-6);
}

const char *cg_show_flux_unit(bool inch)
{
    return inch ? "Btu/(s in2)" : "MW/m2";
}

double cg_show_heat(double joule, bool inch)
{
    return joule / (inch ? BTU : 1e3);
}

const char *cg_show_heat_unit(bool inch)
{
    return inch ? "Btu" : "kJ";
}
