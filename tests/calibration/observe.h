/* What the model shows of a fact: y and its slopes by the constants. */
#ifndef CG_OBSERVE_H
#define CG_OBSERVE_H

#include "case.h"
#include "facts.h"

/* Which law of gas heat and of ring film. */
struct law {
    const char *gas, *film;
};

/* A fact on one metal of the ring: near the scores `at` of the constants
 *   y = value + slope . d + bend . d d / 2,   d = u - at  */
struct straight {
    double value;
    double slope[CONSTANTS], bend[CONSTANTS];
    double size;     /* what the engine's scatter is a share of */
    double nuisance; /* standard deviation of y by all other inputs */
};

/* A fact's cases, read once for a law: as built, and as changed. */
struct sight {
    const struct fact *fact;
    size_t metals;
    struct cg_case built[METALS], changed[METALS];
};

/* Ends with a message where a case cannot be read. */
void sight_read(const struct facts *facts, const struct fact *fact,
                const struct law *law, struct sight *sight);

/* `with_nuisance`: sets it, else keeps that of before.  Ends with a message
 * where the model fails. */
void sight_straighten(const struct facts *facts, const struct sight *sight,
                      size_t metal, const double *u, bool with_nuisance,
                      struct straight *straight);

/* y in full, at these scores. */
double sight_value(const struct facts *facts, const struct sight *sight,
                   size_t metal, const double *u);

/* Multiplies a constant in both cases, for checks with a wrong one. */
void sight_spoil(struct sight *sight, const char *input, double factor);

double straight_at(const struct straight *straight, size_t constants,
                   const double *at, const double *u);

#endif
