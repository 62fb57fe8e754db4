/* The uncertain inputs: which, how wide, and what they move.  One row each; a
 * new one is a field in cg_uncertainty_case, its settings row, and a row in
 * uncertain.c. */
#ifndef CG_UNCERTAIN_H
#define CG_UNCERTAIN_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"

enum { CG_UNCERTAIN_FIELDS = 3 };

struct cg_uncertain {
    const char *name;   /* as in the settings: "flank" */
    const char *doc;
    bool relative;      /* the spread multiplies, else it adds */
    bool gas_side;      /* the cycle must be run anew */
    bool direct;        /* moves no field: adds `direct_gain` times the spread
                           to the closure itself */
    double direct_gain; /* [m of closure per m]; relative: per closure [1] */
    size_t spread;      /* offset of the standard deviation in the case */
    size_t field[CG_UNCERTAIN_FIELDS]; /* offsets moved, 0-terminated */
};

const struct cg_uncertain *cg_uncertains(size_t *count);

/* What it is in this case: `doc`, or the diesel's word.  Cannot fail. */
const char *cg_uncertain_doc(const struct cg_uncertain *input,
                             const struct cg_case *c);

/* One standard deviation of the input in this case: relative or SI; 0 of one
 * that moves nothing in it. */
double cg_uncertain_spread(const struct cg_uncertain *input,
                           const struct cg_case *c);

/* True of what the engine has not: fins where coolant cools, coolant where air
 * does, a spark's inputs in a diesel.  Answers do not list it. */
bool cg_uncertain_foreign(const struct cg_uncertain *input,
                          const struct cg_case *c);

/* Whether the engine has the input of that name.  Cannot fail. */
bool cg_uncertain_of(const struct cg_case *c, const char *name);

/* What one standard deviation of a direct input adds to a closure [m].  Cannot
 * fail. */
double cg_uncertain_added(const struct cg_uncertain *input,
                          const struct cg_case *c, double closure);

/* True of a condition of the run (boost held, temperatures of coolant, oil and
 * air), false of what the engine itself is. */
bool cg_uncertain_is_condition(const struct cg_uncertain *input);

/* Moves the input by `sigmas` standard deviations.  Relative ones move as
 * exp(sigmas * spread), so that they stay positive (lognormal).  What a
 * duty gives of its own (coolant, oil, air, mixture, burn) moves too. */
void cg_uncertain_move(const struct cg_uncertain *input, double sigmas,
                       struct cg_case *c);

#endif
