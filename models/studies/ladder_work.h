/* Private to ladder.c and ladder_mend.c: a ladder under way. */
#ifndef CG_LADDER_WORK_H
#define CG_LADDER_WORK_H

#include "ladder_look.h"

/* So often it is climbed again to see what the changes have brought. */
enum { CG_LADDER_ROUNDS = 3 };

struct cg_ladder_work {
    struct cg_ladder *ladder;
    const struct cg_ladder_shelf *shelf;
    struct cg_look_book *book;       /* of ladder->changed */
    double hardest[CG_LADDER_PARTS]; /* by the last climb, the boost up to the
                                        target that is hardest on it [Pa] */
    struct cg_error *error;
};

/* The look at the target in the case as it is changed so far.  Errors: as
 * cg_look_at. */
enum cg_status cg_ladder_look_at(struct cg_ladder_work *work,
                                 enum cg_look_depth depth,
                                 const struct cg_look **look);

/* Whether a part stops before the target.  Cannot fail. */
bool cg_ladder_stops(const struct cg_ladder *ladder,
                     const struct cg_ladder_stop *stop);

/* Mends what the last climb has shown to stop; *mended: anything was; *step
 * counts.  Errors: as cg_look_at. */
enum cg_status cg_ladder_mend(struct cg_ladder_work *work,
                              const struct cg_ladder_climb *last, int *step,
                              bool *mended);

#endif
