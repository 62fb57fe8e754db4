/* What every screen, table and page must say about its own limits. */
#ifndef CG_CAUTIONS_H
#define CG_CAUTIONS_H

/* One line, no newline: for the head of a table. */
const char *cg_cautions_short(void);

/* A few lines, each ended by a newline: for screens. */
const char *cg_cautions_text(void);

/* The same sentences one by one, ended by NULL: for pages. */
const char *const *cg_cautions_list(void);

#endif
