/* Units at the edges: the suffix a key or a table column carries, and its
 * factor to SI.  Inside, every value is SI and kelvin; crank angles are the
 * one exception and stay in degrees.
 */
#ifndef CG_UNIT_H
#define CG_UNIT_H

#include <stddef.h>

enum cg_dimension {
    CG_PLAIN,       /* a pure number, no suffix */
    CG_SHARE,       /* a share, given in per cent */
    CG_LENGTH,
    CG_PRESSURE,
    CG_TEMPERATURE, /* a point on the scale */
    CG_DIFFERENCE,  /* a temperature difference */
    CG_ROTATION,    /* inside: revolutions per second */
    CG_ANGLE,       /* inside: degrees */
    CG_TIME,
    CG_COEFFICIENT, /* heat transfer coefficient */
    CG_AIRSPEED,    /* of a stream of air */
    CG_FLOW,        /* mass flow */
    CG_POWER
};

struct cg_unit {
    enum cg_dimension dimension;
    const char *suffix;   /* "mm" of bore_mm; "" for a plain number */
    double scale, offset; /* SI = scale * value + offset */
};

/* All units; *count receives their number. */
const struct cg_unit *cg_units(size_t *count);

/* The unit of that suffix in that dimension, or NULL. */
const struct cg_unit *cg_unit_find(enum cg_dimension dimension,
                                   const char *suffix);

double cg_unit_to_si(const struct cg_unit *unit, double value);
double cg_unit_from_si(const struct cg_unit *unit, double si);

#endif
