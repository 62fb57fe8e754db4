/* How a page looks. */
#ifndef CG_PAGE_STYLE_H
#define CG_PAGE_STYLE_H

#include <stdio.h>

/* The style sheet, without < or & so that HTML and XML read it alike. */
const char *cg_page_style(void);

/* Writes what goes after it, for paper. */
void cg_page_style_print(FILE *out);

#endif
