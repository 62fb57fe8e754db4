/* Pictures for a page: gnuplot, run on the scripts in plots/ in a folder of
 * this run's own, away from the user's.
 *
 * Nothing of the user's goes into a command or a script: inside the folder the
 * tables are `tables` and the scripts `plots`, whatever they are called
 * outside; gnuplot is started without a shell and ended after a minute. */
#ifndef CG_DRAWING_H
#define CG_DRAWING_H

#include <stdbool.h>

#include "status.h"

enum { CG_DRAWING_PATH = 4096 };

struct cg_drawing {
    char folder[CG_DRAWING_PATH]; /* removed at the end; "": none */
    char tables[CG_DRAWING_PATH]; /* where the tables of the pictures are, or
                                     are to be written; "": nowhere */
    char trouble[256]; /* why there are no pictures at all; "": none */
    char failed[128];  /* why the last one was not drawn */
};

/* `out`: the folder of the tables, which must exist; NULL: the drawing has one.
 * Cannot fail: what stands in the way is in `trouble`. */
void cg_drawing_begin(const char *out, struct cg_drawing *drawing);
void cg_drawing_end(struct cg_drawing *drawing);

/* Draws plots/NAME.gp.  *svg receives the text of the drawing, which the caller
 * frees; NULL when there is none, and `trouble` or `failed` says why. */
void cg_drawing_make(struct cg_drawing *drawing, const char *name, char **svg);

#endif
