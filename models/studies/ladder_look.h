/* Private to ladder*.c: one case looked at over boost.
 *
 * What is worked out at a boost is kept, and all parts are scored from it.  It
 * is worked out as deep as is asked for: what is breathed and burned alone; a
 * nominal run of each duty; the whole answer.
 */
#ifndef CG_LADDER_LOOK_H
#define CG_LADDER_LOOK_H

#include "bore_finish.h"
#include "ladder.h"

enum cg_look_depth { CG_LOOK_NONE, CG_LOOK_CHARGE, CG_LOOK_HEAT, CG_LOOK_GAPS };

struct cg_look {
    double boost; /* [Pa] */
    enum cg_look_depth depth;
    double score[CG_LADDER_PARTS][2]; /* to fit, to stand [1] */
    int why[CG_LADDER_PARTS];
    struct cg_finish_verdict finish;
    double load[CG_RING_LIMITS];
    struct cg_skirt_growth skirt; /* own duty */
    double land_least;            /* own duty, hot [m] */
    struct cg_ladder_point point;
    double second;     /* second gap to file to, unrounded [m] */
    double unseat_deg; /* of the top ring, at the hardest point */
    struct cg_ladder_cost cost;
};

enum { CG_LOOKS = CG_LADDER_POINTS };

struct cg_look_book {
    struct cg_case c;
    struct cg_core core; /* of the case's own stones, simulated */
    bool bends;
    struct cg_look look[CG_LOOKS]; /* boosts rising */
    size_t looks;
    double keep;             /* the boost whose answer and cost are kept [Pa] */
    struct cg_answer answer; /* there, once looked at so deep */
    struct cg_ladder_count *count;
};

/* An empty book of that case, whose answer at the boost `keep` is kept; caller
 * frees.  `like` (NULL allowed): a book of like stones, whose finish is taken
 * over.  CG_NO_MEMORY, and as cg_surface_measure. */
enum cg_status cg_look_begin(const struct cg_case *c, double keep,
                             const struct cg_look_book *like,
                             struct cg_ladder_count *count,
                             struct cg_look_book **book,
                             struct cg_error *error);

/* The look at a boost, at least as deep as that; *look is valid until the next
 * call.  CG_NUMERICAL for one more than CG_LOOKS, and where a score is no number;
 * else as cg_answer_find. */
enum cg_status cg_look_at(struct cg_look_book *book, double boost,
                          enum cg_look_depth depth, const struct cg_look **look,
                          struct cg_error *error);

/* How deep a part's scores lie. */
enum cg_look_depth cg_look_depth_of(enum cg_ladder_part part);

/* First crossings of all parts from no boost to `end` [Pa], which is lowered to
 * the highest boost that can be computed, not below `must`.  Errors: as
 * cg_look_at. */
enum cg_status cg_look_climb(struct cg_look_book *book, double must,
                             double *end,
                             struct cg_ladder_stop stop[CG_LADDER_PARTS],
                             struct cg_error *error);

#endif
