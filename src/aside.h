/* Files that are written aside, as PATH.part, and renamed when they are whole,
 * so that a failure leaves nothing half-written under the final name.  A signal
 * that ends the program takes them away too; only a kill leaves them. */
#ifndef CG_ASIDE_H
#define CG_ASIDE_H

#include <stdio.h>

#include "status.h"

enum { CG_ASIDE_PATH = 4096 };

struct cg_aside {
    FILE *file;
    char part[CG_ASIDE_PATH], final[CG_ASIDE_PATH];
};

/* Creates folder `dir` if it is missing (its parent must exist), and opens
 * DIR/NAME.part.  CG_FILE with the reason. */
enum cg_status cg_aside_open(const char *dir, const char *name,
                             struct cg_aside *aside, struct cg_error *error);

/* Closes and, if all was well written and `status` is CG_OK, renames;
 * otherwise removes the part.  Returns `status`, or CG_FILE with the reason. */
enum cg_status cg_aside_close(struct cg_aside *aside, enum cg_status status,
                              struct cg_error *error);

/* CG_FILE: "PATH: could not VERB: " and the system's reason. */
enum cg_status cg_aside_trouble(const char *path, const char *verb,
                                struct cg_error *error);

#endif
