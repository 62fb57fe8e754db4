/* The full grid of a sweep: the axes given by --vary, and the overrides of any
 * of its points.  The last axis runs fastest. */
#ifndef CG_GRID_H
#define CG_GRID_H

#include <stddef.h>

#include "status.h"

enum { CG_AXES = 8, CG_SET_LENGTH = 192 };

struct cg_axis {
    char path[128];  /* "charge.boost_kPa" */
    size_t count;
    char **value;    /* [count] as text: numbers or names */
};

struct cg_grid {
    size_t axes, points;
    struct cg_axis axis[CG_AXES];
};

/* Reads "PATH=FROM:TO:STEP" (TO included when a whole number of steps leads
 * there) or "PATH=a,b,c", one for each axis.  CG_BAD_INPUT names the option
 * and what is allowed; CG_NO_MEMORY.  Free with cg_grid_free either way. */
enum cg_status cg_grid_read(const char *const *vary, size_t count,
                            struct cg_grid *grid, struct cg_error *error);
void cg_grid_free(struct cg_grid *grid);

/* Text of the value of an axis at a point. */
const char *cg_grid_value(const struct cg_grid *grid, size_t point,
                          size_t axis);

/* The point's overrides "PATH=VALUE", one for each axis. */
void cg_grid_sets(const struct cg_grid *grid, size_t point,
                  char set[CG_AXES][CG_SET_LENGTH]);

#endif
