/* The lesson's two drawings, to scale of the engine at hand: the top ring in
 * its groove, and its gap seen from above, cold and hot. */
#ifndef CG_LESSON_DRAWING_H
#define CG_LESSON_DRAWING_H

#include "lesson_sheet.h"
#include "status.h"

struct cg_lesson_drawing {
    const char *name, *title; /* of file and figure */
    char words[512];          /* what it shows */
    char *svg;                /* the caller frees; NULL: out of memory */
};

/* Cold lengths of ring, groove, land and bore, to scale; temperatures settled
 * at full load. */
void cg_lesson_draw_ring(const struct cg_lesson_sheet *sheet,
                         struct cg_lesson_drawing *out);

/* The gap to file to cold, hot by the middle estimate of the duty, and with the
 * whole allowance used up: whatever gap the config gives, since one that is too
 * small is nothing to copy. */
void cg_lesson_draw_gap(const struct cg_lesson_sheet *sheet,
                        struct cg_lesson_drawing *out);

/* Their files in a folder. */
#define CG_LESSON_DRAWINGS "lesson_ring.svg lesson_gap.svg"

/* Writes them.  CG_FILE with the reason; CG_NO_MEMORY. */
enum cg_status cg_lesson_drawings_write(const char *dir,
                                        const struct cg_lesson_sheet *sheet,
                                        struct cg_error *error);

#endif
