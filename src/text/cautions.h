/* What every screen, table and page must say about its own limits. */
#ifndef CG_CAUTIONS_H
#define CG_CAUTIONS_H

#include <stdio.h>

/* Sentence by sentence, ended by NULL. */
const char *const *cg_cautions_list(void);

/* The first of them on one line, no newline: for the head of a table. */
const char *cg_cautions_short(void);

/* All of them under a heading, a screen wide.  Cannot fail; look at the file's
 * error flag. */
void cg_cautions_print(FILE *out);

#endif
