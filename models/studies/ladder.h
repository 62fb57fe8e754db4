/* The ladder: what must change at which boost.
 *
 * Each part of an engine is followed over boost, from none upwards, to where it
 * stops being good enough, by the very functions that the other studies judge
 * it with (answer.h, limits of duty_limits.h, ring_choice.h, bore_finish.h,
 * seal.h), over all duties that the case lists.  Then the parts that stop below
 * the target are changed, one after the other, by the least that will do, and
 * the ladder is climbed again.  What is marginal at the case's own boost
 * already is changed where it does not stand the target, and else left.
 *
 * A part has two scores at a boost, at most 0 while all is well: by the lower
 * one it fits, by the upper one it stands.  Between where the two turn positive
 * it is marginal.  What stands a boost is to have stood all lower ones, so the
 * first crossing counts.  It is looked for in steps of CG_LADDER_STEP, and
 * where a score has turned down at its highest in between; then refined by
 * Brent's method (gsl_root_fsolver_brent).  All parts share what is worked out
 * at a boost.
 *
 * Only what is on the shelf is offered, and the settings of the case itself.
 */
#ifndef CG_LADDER_H
#define CG_LADDER_H

#include <stdbool.h>
#include <stddef.h>

#include "answer.h"
#include "ring_choice.h"
#include "setting.h"

#define CG_LADDER_STEP 25e3      /* of the first look [Pa] */
#define CG_LADDER_TOLERANCE 500. /* of a boost at which a part stops [Pa] */
#define CG_LADDER_MOST CG_CHOICE_MOST /* highest target, gauge [Pa] */
#define CG_LADDER_FURTHER 25e3        /* looked at beyond the target [Pa] */

/* Air at the valve that the trade calls warm and hot [K]: common practice, no
 * source. */
#define CG_CHARGE_WARM 333.15
#define CG_CHARGE_HOT 353.15

enum cg_ladder_part {
    CG_LADDER_TOP_GAP,
    CG_LADDER_SECOND_GAP,
    CG_LADDER_RING_FACE,  /* peak pressure, pressure rise, face temperature */
    CG_LADDER_RING_METAL, /* its heat, tension lost */
    CG_LADDER_SEATING,    /* the top ring leaves its seat too soon */
    CG_LADDER_FINISH,     /* oil held against oil needed */
    CG_LADDER_PISTON,     /* crown and top groove */
    CG_LADDER_SKIRT,      /* bears too hard, hot */
    CG_LADDER_LANDS,      /* no clearance left, hot */
    CG_LADDER_BORE_OIL,   /* bore surface where the top ring turns */
    CG_LADDER_COOLANT,    /* boils */
    CG_LADDER_SPARK,      /* as late as it may be; then knock */
    CG_LADDER_PRESSURE,   /* of a diesel's cylinder */
    CG_LADDER_CHARGE,     /* temperature of the air */
    CG_LADDER_PARTS
};

/* "top_gap"; never NULL. */
const char *cg_ladder_word(enum cg_ladder_part part);

/* Boosts at which a part stops [Pa], gauge; NaN: it does not, up to the end. */
struct cg_ladder_stop {
    double fits;   /* from here on marginal, or no more */
    double stands; /* from here on no more */
    int why;       /* by the kind of part: enum cg_past of the piston, the
                      coolant, the spark and the pressure, enum cg_ring_limit of rings;
                      else 0 */
};

/* What the parts cost at one boost, rated speed, full load, whole engine. */
struct cg_ladder_cost {
    double leak;     /* past the rings [kg/s]; NaN: they do not settle */
    double friction; /* of the compression rings [W]; NaN likewise */
    double brake;    /* power [W] */
};

/* A change of one setting.  A plain value; `setting` is of the table of
 * settings, which lasts. */
struct cg_ladder_change {
    enum cg_ladder_part part; /* for the sake of which */
    const struct cg_setting *setting;
    double was, now; /* [SI]; NaN: not given, or a name */
    char was_name[CG_NAME_LENGTH], now_name[CG_NAME_LENGTH];
    double from;     /* boost at which the part stops without it [Pa] */
    int why;         /* then, as in cg_ladder_stop */
    bool follows;    /* it would not, but for the other changes */
    double holds_to; /* boost at which it stops with all changes [Pa]; NaN: not
                        up to the end */
    bool fits;       /* false: marginal at the target still */
    int step;        /* those of one step were made together */
    struct cg_ladder_cost price; /* of the step, more or less than before; NaN:
                                    not known */
};

/* One boost looked at, for a picture. */
struct cg_ladder_point {
    double boost;         /* [Pa] */
    double need, file_to; /* of the top ring, unrounded [m] */
    double rule;          /* the shop rule [m] */
};

enum { CG_LADDER_CHANGES = 128, CG_LADDER_POINTS = 512 };

/* A climb from no boost to the end. */
struct cg_ladder_climb {
    struct cg_ladder_stop stop[CG_LADDER_PARTS];
    struct cg_ladder_point point[CG_LADDER_POINTS]; /* rising */
    size_t points;
    struct cg_answer answer;     /* at the target */
    struct cg_ladder_cost cost;  /* there */
    double oil_held, oil_needed; /* there [m3/m2] */
    double unseat_deg;           /* there */
};

/* What there is to choose from; belongs to the caller. */
struct cg_ladder_shelf {
    const struct cg_material *ring, *alloy;
    const struct cg_face *face;
    size_t rings, alloys, faces;
};

/* Counts answers, and tells of each; `told` NULL: nobody. */
struct cg_ladder_count {
    size_t answers;
    void (*told)(void *context, size_t answers);
    void *context;
};

struct cg_ladder {
    double target, end;     /* boosts [Pa] */
    double own;             /* the case's [Pa] */
    struct cg_case asked;   /* at the target */
    struct cg_case changed; /* with the changes, at the target */
    struct cg_ladder_climb before, after;
    struct cg_ladder_change change[CG_LADDER_CHANGES]; /* in the order in which
                                                          they are needed */
    size_t changes;
    bool stands;                /* the target, with the changes */
    bool open[CG_LADDER_PARTS]; /* nothing offered makes the part fit there */
};

/* Climbs for a checked case and that target [Pa], 0 to CG_LADDER_MOST.  A case
 * without charger is given a turbine where the target is above 0.  Caller
 * frees. CG_BAD_INPUT for a target out of range; CG_NUMERICAL where a boost up
 * to the target cannot be computed; else as cg_answer_find. */
enum cg_status cg_ladder_create(const struct cg_case *c, double target,
                                const struct cg_ladder_shelf *shelf,
                                struct cg_ladder_count *count,
                                struct cg_ladder **ladder,
                                struct cg_error *error);
/* Accepts NULL. */
void cg_ladder_free(struct cg_ladder *ladder);

/* Whether the engine has the part: a spark, or a diesel's pressure; one that
 * air cools has no coolant.  Cannot fail. */
bool cg_ladder_has(const struct cg_ladder *ladder, enum cg_ladder_part part);

/* Makes all changes of the ladder, and its target, in another case of that
 * engine: as it was before evidence moved it.  Cannot fail. */
void cg_ladder_make(const struct cg_ladder *ladder, struct cg_case *c);

/* Whether the part is marginal at the case's own boost already and still stands
 * the target: what the engine lives with is no reason for a change.  Cannot
 * fail. */
bool cg_ladder_lived_with(const struct cg_ladder *ladder,
                          enum cg_ladder_part part);

/* The parts in order of the boost at which they stop fitting; those that do not
 * stop come last, in the order of the list.  Cannot fail. */
void cg_ladder_order(const struct cg_ladder_climb *climb,
                     enum cg_ladder_part order[CG_LADDER_PARTS]);

#endif
