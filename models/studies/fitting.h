/* Fitting rings by hand: what to take off each measured gap.
 *
 * The answer holds for engine.bore.  In a bore D of the same engine, heated
 * alike, the closure is a strain times the circumference and so grows with D:
 *   need(D) = (closure + spread) D / engine.bore + minimum_hot_gap
 * Heat that changes with the bore is left out; over CG_FIT_BORE_BAND the whole
 * model, run again for the other bore, differs by less than 3 um.
 *
 * A ring is as long as it is: carried from a bore D1 to a bore D2 its gap
 * changes by pi (D2 - D1) (geometry; no outside source needed).
 */
#ifndef CG_FITTING_H
#define CG_FITTING_H

#include <stdbool.h>

#include "answer.h"

enum { CG_FIT_CYLINDERS = 24, CG_FIT_RINGS = 2 }; /* top and second ring */

/* A measured bore within this share of engine.bore is the engine of the
 * config; one further off is another engine, to be run on its own (common
 * practice, no source: oversizes go in steps of about this much). */
#define CG_FIT_BORE_BAND 0.01

/* What was measured, cold.  NaN: not measured. */
struct cg_gauged_cylinder {
    bool listed;              /* whether anything was said of it */
    double bore;              /* [m] */
    double gap[CG_FIT_RINGS]; /* [m] */
    int measured_in;          /* number of the cylinder whose bore the gaps were
                                 measured in; 0: its own */
};

struct cg_gauged {
    int cylinders;
    struct cg_gauged_cylinder cylinder[CG_FIT_CYLINDERS];
};

enum cg_fit_state {
    CG_FIT_UNKNOWN,   /* gap not measured */
    CG_FIT_TOO_SMALL, /* not safe: less than the need */
    CG_FIT_FILE,      /* safe by the model, but less than to file to */
    CG_FIT_FITS,
    CG_FIT_TOO_WIDE,
    CG_FIT_STATES
};

/* What the answer asks of a ring in a bore of engine.bore [m]. */
struct cg_fit_asked {
    double closure, spread, minimum_hot_gap; /* they add up to the need */
    double at_least; /* what to file to for another reason than closing
                        (shop rule, maker, gas), a multiple of the step, or 0 */
    double too_wide; /* margin.wide_factor times the larger of need and
                        at_least */
};

struct cg_fit {
    enum cg_fit_state state;
    double measured;       /* [m], as it was measured; NaN */
    double gap;            /* [m], in its own bore; NaN */
    double need;           /* [m], safe against closing in this bore */
    double asked;          /* [m], as cg_fit_asks */
    double steps;          /* filing steps to take off, whole [1]; NaN */
    double take_off, then; /* [m], steps times the step; the gap after; NaN */
};

struct cg_fitted_cylinder {
    double bore;  /* [m]; engine.bore where none was measured */
    double opens; /* [m], a ring here against the smallest bore; NaN */
    struct cg_fit ring[CG_FIT_RINGS];
};

struct cg_fitting {
    int cylinders;
    int smallest, largest; /* indices of the bores measured; -1: none */
    double step;           /* margin.filing_step [m] */
    struct cg_fit_asked asked[CG_FIT_RINGS];
    struct cg_fitted_cylinder cylinder[CG_FIT_CYLINDERS];
    int count[CG_FIT_STATES]; /* rings in each state */
};

/* "too_small", "file", "fits", "too_wide", "not_measured". */
const char *cg_fit_word(enum cg_fit_state state);

/* What the answer asks of both rings.  Cannot fail. */
void cg_fit_ask(const struct cg_case *c, const struct cg_answer *answer,
                struct cg_fit_asked asked[CG_FIT_RINGS]);

/* "top", "second". */
const char *cg_fit_ring_word(int ring);

/* What a ring's gap grows by, carried from one bore to another [m]. */
double cg_fit_carry(double from_bore, double to_bore);

/* The gap that is safe in a bore `ratio` times engine.bore [m], never below
 * zero. */
double cg_fit_need(const struct cg_fit_asked *asked, double ratio);

/* The gap to file to there [m]: the larger of at_least and the need, this rounded
 * up to filing steps. */
double cg_fit_asks(const struct cg_fit_asked *asked, double ratio, double step);

/* Judges one gap [m] (NaN: not measured) in a bore `ratio` times engine.bore;
 * fills all but `measured`.  step [m] > 0.  Cannot fail. */
void cg_fit_ring(const struct cg_fit_asked *asked, double ratio, double step,
                 double gap, struct cg_fit *fit);

/* The whole engine.  gauged->cylinders is c->engine.cylinders, bores within
 * CG_FIT_BORE_BAND; where measured_in names another cylinder, both bores are
 * measured.  Cannot fail. */
void cg_fitting_find(const struct cg_case *c, const struct cg_answer *answer,
                     const struct cg_gauged *gauged,
                     struct cg_fitting *fitting);

#endif
