/* How a page looks. */
#ifndef CG_PAGE_STYLE_H
#define CG_PAGE_STYLE_H

/* The style sheet, without < or & so that HTML and XML read it alike. */
const char *cg_page_style(void);

/* What goes after it, for paper. */
const char *cg_page_style_print(void);

#endif
