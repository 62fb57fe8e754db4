/* Numbers as a builder reads them, in the units asked for. */
#ifndef CG_SHOW_H
#define CG_SHOW_H

#include <stdbool.h>
#include <stddef.h>

#include "quantity.h"

/* Small lengths in both units, the asked one first: "0.252 mm (0.0099 in)". */
struct cg_text cg_show_gap(double metres, bool inch);
/* A gap that must not come out smaller, in both units, each rounded up to its own
 * step, 0.01 mm and half a thousandth: "0.46 mm (0.0185 in)".  Every gap that is
 * asked for, by coldgap or by a rule, is shown so. */
struct cg_text cg_show_gap_up(double metres, bool inch);
/* A gap that was given as it is, one that is asked for rounded up. */
struct cg_text cg_show_gap_of(double metres, bool given, bool inch);
/* One that is asked for in one unit: "0.46 mm" or "0.0185 in". */
struct cg_text cg_show_length_up(double metres, bool inch);
/* Likewise, in metres. */
double cg_shown_up(double metres, bool inch);
/* What the parts, as cg_show_gap shows them, lack of a gap as cg_show_gap_up
 * shows it, so that a sum on the screen adds up; in both units, and in one. */
struct cg_text cg_show_rest(double gap, const double *part, size_t parts,
                            bool inch);
struct cg_text cg_show_rest_length(double gap, const double *part,
                                   size_t parts, bool inch);
/* One unit only: "0.52 mm" or "0.0205 in"; "86.0 mm" or "3.386 in". */
struct cg_text cg_show_length(double metres, bool inch);
struct cg_text cg_show_temperature(double kelvin, bool inch);
struct cg_text cg_show_boost(double pascal, bool inch); /* kPa or psi */
/* On metal: MPa, or ksi and psi. */
struct cg_text cg_show_stress(double pascal, bool inch);
struct cg_text cg_show_wall_pressure(double pascal, bool inch);
struct cg_text cg_show_peak_pressure(double pascal, bool inch); /* of gas */
/* Gas past the rings: g/s or lb/h. */
struct cg_text cg_show_leak(double kg_per_second, bool inch);

#endif
