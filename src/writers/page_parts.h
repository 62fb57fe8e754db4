/* What a page is inside: for page.c, page_figure.c and page_table.c alone. */
#ifndef CG_PAGE_PARTS_H
#define CG_PAGE_PARTS_H

#include <stdbool.h>
#include <stdio.h>

#include "page.h"

enum { CG_PAGE_TEXT = 8192 }; /* of one paragraph */

struct cg_page {
    struct cg_part_file part_file;
    FILE *file; /* the aside's */
    struct cg_drawing *drawing;
    bool in_section;
    bool cautioned;
    bool told;  /* that there are no pictures, and why */
    char heading[256]; /* the section's */
    size_t sections, figures, tables;
};

#endif
