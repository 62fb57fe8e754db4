/* Limits of metal, fuel and coolant in a duty.  Past one of them the gap is not
 * the trouble: the answer is "not safe", whatever the gap.
 *
 * Judged by the middle estimate.  What nearly every engine that lives passes
 * for some seconds is no verdict: 300 C at the crown, and the heat at which the
 * top groove's alloy softens, are passed for as long as they take to soften the
 * alloy as much as 100 h at the limit itself would (cg_softening_time): 57 h at
 * 6 K over 260 C, 26 min at 64 K, 10 s at 140 K.  All the time over the limit
 * counts as if it were at the hottest.  Knock below rated speed is allowed
 * CG_KNOCK_SECONDS.  The others allow no time.
 */
#ifndef CG_DUTY_LIMITS_H
#define CG_DUTY_LIMITS_H

#include <stdbool.h>

#include "case.h"
#include "duty_run.h"

enum cg_past {
    CG_PAST_MELTS,   /* crown: an aluminium alloy begins to melt [K] */
    CG_PAST_CROWN,   /* crown: too hot for too long [K] */
    CG_PAST_GROOVE,  /* top groove: likewise, by the alloy's hot limit [K] */
    CG_PAST_FACE,    /* top ring's face: where nobody fits it any more [K] */
    CG_PAST_GRIPS,   /* top groove: heat takes all of its side clearance, of
                        what is there cold [1] */
    CG_PAST_KNOCK,   /* knock predicted, and the duty declares none [1] */
    CG_PAST_PRESSURE, /* compression: of the cylinder, at its peak [Pa] */
    CG_PAST_COOLANT, /* coolant hotter than it boils at [K] */
    CG_PAST_FLUX,    /* into the coolant: film boiling [W/m2] */
    CG_PAST_LIMITS
};

/* Surface limit of aluminium crowns: J. B. Heywood (1988), sec. 12.1 [K].  An
 * alloy whose own hot limit lies above is none of these. */
#define CG_CROWN_LIMIT 573.15

/* Surface limit of the bore, for its oil: the same section [K].  A note, no
 * verdict. */
#define CG_BORE_LIMIT 453.15

/* Where usual piston alloys begin to melt: 505 C, their eutectics with copper;
 * 4032 and 2618 at 532 and 549 C; from memory [K]. */
#define CG_ALUMINIUM_MELTS 778.15

/* Of a diesel's cylinder: the most that heavy engines are made for, common
 * practice, no source [Pa]. */
#define CG_CYLINDER_MOST 250e5

/* Critical flux of saturated water in a pool at one atmosphere, 1.1 MW/m2:
 * N. Zuber, "Hydrodynamic aspects of boiling heat transfer", AECU-4439 (1959),
 * from memory [W/m2].  A pump's flow raises it, glycol lowers it. */
#define CG_CRITICAL_FLUX 1.1e6

/* A duty has full boost the moment it asks for it, where an engine is still on
 * its way there; what knocks no longer than that way takes is a note, and the
 * boost is to be held back (common practice, no source) [s]. */
#define CG_KNOCK_SECONDS 5.0

struct cg_limit_seen {
    double reached, limit;   /* [as the kind says] */
    double seconds, allowed; /* past `limit`: in the duty, and allowed [s] */
    bool past;
};

struct cg_limits {
    struct cg_limit_seen of[CG_PAST_LIMITS];
    double knock_speed, knock_load;  /* where it is nearest [rev/s] [1] */
    double peak_pressure, peak_rise; /* the cylinder's largest [Pa] [Pa/deg] */
};

struct cg_extremes;

/* What its crown is held against [K].  Cannot fail. */
double cg_crown_limit(const struct cg_case *c);

/* Judges the case's own duty; `extremes` are those of `run`, which must be of
 * the same case.  Cannot fail. */
void cg_limits_judge(const struct cg_case *c, const struct cg_duty_run *run,
                     const struct cg_extremes *extremes,
                     struct cg_limits *limits);

/* The first limit that is past; CG_PAST_LIMITS: none.  Cannot fail. */
enum cg_past cg_limits_first(const struct cg_limits *limits);

#endif
