/* What every screen, table and page must say about its own limits. */
#ifndef CG_CAUTIONS_H
#define CG_CAUTIONS_H

#include <stdio.h>

/* Sentence by sentence, ended by NULL. */
const char *const *cg_cautions_list(void);

/* This run is of an engine with nitrous on in a duty: from here on its own
 * caution stands with the others. */
void cg_cautions_take_nitrous(void);

/* The one of nitrous, or NULL: for the head of a table. */
const char *cg_cautions_nitrous(void);

/* The first of them on one line, no newline: for the head of a table. */
const char *cg_cautions_short(void);

/* All of them under a heading, a screen wide.  Cannot fail; look at the file's
 * error flag. */
void cg_cautions_print(FILE *out);

#endif
