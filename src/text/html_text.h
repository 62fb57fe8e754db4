/* Text as HTML and XML both read it. */
#ifndef CG_HTML_TEXT_H
#define CG_HTML_TEXT_H

#include <stdio.h>

/* Writes `text` escaped, fit for content and for attributes in double quotes:
 * no byte of it can begin a tag, an entity or end an attribute.  What would act
 * (plain_text.h), but for newline and tab, comes out as "?". */
void cg_html_put(FILE *file, const char *text);

#endif
