/* Units and digits of the lesson's figures, metric or inch. */
#ifndef CG_LESSON_UNITS_H
#define CG_LESSON_UNITS_H

#include <stdbool.h>

#include "by_hand.h"

enum cg_lesson_quantity {
    CG_LESSON_LENGTH,      /* mm, in */
    CG_LESSON_GROWTH,      /* mm, in; one digit finer */
    CG_LESSON_TEMPERATURE, /* C, F */
    CG_LESSON_RISE,        /* C, F: a difference */
    CG_LESSON_ABSOLUTE,    /* K, R */
    CG_LESSON_EXPANSION,   /* millionths for each C, F */
    CG_LESSON_STRAIN,      /* millionths */
    CG_LESSON_PRESSURE,    /* kPa, psi */
    CG_LESSON_STRESS,      /* MPa, ksi */
    CG_LESSON_CONTACT,     /* pressure on the bore: MPa, psi */
    CG_LESSON_STIFFNESS,   /* modulus times wall: kN/mm, kip/thou */
    CG_LESSON_MASS,        /* g, oz */
    CG_LESSON_FLOW,        /* g/s, oz/s */
    CG_LESSON_GAS,         /* gas constant of these units */
    CG_LESSON_VOLUME,      /* L, in3 */
    CG_LESSON_AREA,        /* mm2, in2 */
    CG_LESSON_ENERGY,      /* kJ, Btu */
    CG_LESSON_HEATING,     /* kJ/g, Btu/oz */
    CG_LESSON_FLUX,        /* W/mm2, Btu/(s in2) */
    CG_LESSON_POWER        /* kW, hp */
};

/* A figure from its SI value (a modulus is a CG_LESSON_STRESS). */
struct cg_figure cg_lesson_figure(bool inch, const char *name,
                                  enum cg_lesson_quantity quantity, double si);

/* A line whose result is that quantity; the formula must give its unit. */
struct cg_hand cg_lesson_work(bool inch, const char *name,
                              enum cg_lesson_quantity quantity,
                              const char *operators,
                              const struct cg_figure *figures);

#endif
