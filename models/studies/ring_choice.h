/* The choice of a top ring: every material and face that goes on it, run
 * through the whole model for one engine and duty, held against its limits and
 * ranked.
 *
 * Limits are bands.  How far a load has come into its band is its use,
 *   use = (load - low) / (high - low)      below 0 fits, from 1 on unfit
 * and of the uses of a candidate the largest decides.  Over boost the use is
 * taken at its largest so far, since an engine on its way to a boost passes
 * all lower ones; it runs straight between the boosts looked at, CG_CHOICE_STEP
 * apart, which finds a crossing within 1 kPa (tested).
 *
 * A ring is held against what the hardest of all duties to survive does to it;
 * but tension is lost at the hottest of the duty asked for.
 *
 * At the case's own boost a candidate is solved in full, with its cold gap and
 * margin; at the others, and there alone, the cycle is that of the case's own
 * ring, since a ring moves the walls that the cycle sees by next to nothing.
 *
 * Boosts and candidates are items of work, independent of each other: run them
 * in any order and on any thread, then end.
 *
 * Left out: knock, which multiplies the pressure rise; how face and bore run
 * together; how a coat is made.
 */
#ifndef CG_RING_CHOICE_H
#define CG_RING_CHOICE_H

#include <stddef.h>

#include "answer.h"

enum cg_ring_limit {
    CG_LIMIT_RING_HEAT, /* mean ring temperature, its hot-tension limit [K] */
    CG_LIMIT_TENSION,   /* tension lost over the time in service [1] */
    CG_LIMIT_FACE_HEAT, /* face temperature [K] */
    CG_LIMIT_PRESSURE,  /* peak cylinder pressure [Pa] */
    CG_LIMIT_RISE,      /* largest pressure rise [Pa/deg] */
    CG_RING_LIMITS
};

enum cg_ring_verdict { CG_RING_FITS, CG_RING_MARGINAL, CG_RING_UNFIT };

/* Tension lost at which a ring begins and has ceased to fail [1]: common
 * practice, no source. */
#define CG_TENSION_LOST_LOW 0.10
#define CG_TENSION_LOST_HIGH 0.20

#define CG_CHOICE_MOST 600e3 /* highest boost looked at, gauge [Pa] */
#define CG_CHOICE_STEP 25e3  /* [Pa] */

/* One candidate. */
struct cg_ring_choice {
    const struct cg_material *material;
    const struct cg_face *face;
    bool own;            /* the case's own ring */
    double cold_gap;     /* needed at the case's boost, rounded [m] */
    struct cg_ring_advice file_to; /* there */
    char hardest[CG_NAME_LENGTH];  /* duty that it is needed in */
    bool no_gap;         /* that is wider than a case may give: unfit */
    double ring;         /* hottest mean temperature [K] */
    double coat_effect;  /* what the coat adds to the ring's hottest mean [K] */
    struct cg_band tension_left; /* [1] */
    double load[CG_RING_LIMITS]; /* at the case's boost */
    struct cg_band limit[CG_RING_LIMITS];
    double use[CG_RING_LIMITS];  /* at the case's boost, or a lower one */
    enum cg_ring_limit worst;    /* of the largest use */
    enum cg_ring_verdict verdict;
    double stops_fitting, unfit_from; /* boost [Pa]; `reached` of the study: not
                                         up to there */
    enum cg_ring_limit first;    /* the limit that stops it first;
                                    CG_RING_LIMITS: none up to there */
};

struct cg_choice_study;

/* All faces on all materials they go on; the arrays and the case stay the
 * caller's and must outlive the study.  CG_BAD_INPUT when there is none,
 * CG_NO_MEMORY.  A case without charger is looked at as if it had a turbine. */
enum cg_status cg_choice_begin(const struct cg_case *c,
                               const struct cg_material *materials,
                               size_t material_count,
                               const struct cg_face *faces, size_t face_count,
                               struct cg_choice_study **study,
                               struct cg_error *error);
/* Accepts NULL. */
void cg_choice_free(struct cg_choice_study *study);

/* How many items of work there are, and one of them.  What fails is kept, and
 * told by cg_choice_end. */
size_t cg_choice_items(const struct cg_choice_study *study);
void cg_choice_run(struct cg_choice_study *study, size_t item);

/* Adds up and ranks: verdict, then boost at which it stops fitting, then cold
 * gap, then the order of the files.  *choices belongs to the study.  *reached:
 * the highest boost that could be computed [Pa].  CG_NO_MEMORY at any boost;
 * others as cg_answer_find when the case's own could not be. */
enum cg_status cg_choice_end(struct cg_choice_study *study,
                             const struct cg_ring_choice **choices,
                             size_t *count, double *reached,
                             struct cg_error *error);

/* The boost [Pa] at which a use, straight between its points, first comes to
 * `level`; NaN: it does not.  boost rising [points].  Cannot fail. */
double cg_choice_crossing(const double *boost, const double *use,
                          size_t points, double level);

/* The case with that top ring.  Cannot fail. */
struct cg_case cg_choice_case(const struct cg_case *c,
                              const struct cg_material *material,
                              const struct cg_face *face);

/* Takes in what one duty does to the top ring, all 0 to begin with: tension is
 * lost over the time in service at the hottest of the duty asked for, `own`.
 * Cannot fail. */
void cg_choice_load_add(const struct cg_case *c,
                        const struct cg_extremes *extremes,
                        const struct cg_limits *limits, bool own,
                        double load[CG_RING_LIMITS]);

/* The bands of a ring, and a load's use of one.  Neither can fail. */
void cg_choice_limits(const struct cg_material *material,
                      const struct cg_face *face,
                      struct cg_band limit[CG_RING_LIMITS]);
double cg_choice_use(const struct cg_band *limit, double load);

/* "fits", "marginal", "unfit"; never NULL. */
const char *cg_ring_verdict_text(enum cg_ring_verdict verdict);

#endif
