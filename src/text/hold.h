/* A folder is written by one run at a time: it is held (flock) for the whole
 * run, and the system lets go of it with the process.  The blocks of a job
 * array write files of their own, each held by itself (part_file.h), and so
 * share it. */
#ifndef CG_HOLD_H
#define CG_HOLD_H

#include <stdbool.h>

#include "part_file.h"
#include "status.h"

struct cg_hold {
    int folder; /* open; -1: nothing is held */
    bool made;  /* it was missing, and goes again if nothing comes into it;
                   not where it is shared */
    char path[CG_PART_FILE_PATH];
};

/* Creates `dir` if it is missing (its parent must exist) and holds it, alone or
 * shared with others who share it.  CG_FILE with the reason: also when another
 * run holds it. */
enum cg_status cg_hold_begin(const char *dir, bool shared, struct cg_hold *hold,
                             struct cg_error *error);

/* Lets go of it; of nothing too. */
void cg_hold_end(struct cg_hold *hold);

#endif
