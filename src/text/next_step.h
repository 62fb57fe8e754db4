/* What a reader of a screen may do next, in a line. */
#ifndef CG_NEXT_STEP_H
#define CG_NEXT_STEP_H

/* After tables were written: how to draw those of folder `out`.  Prints to
 * stdout; nothing if the picture scripts are not there. */
void cg_next_step_pictures(const char *out);

#endif
