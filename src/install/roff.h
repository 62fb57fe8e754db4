/* Text for a manual page: man(7) macros as groff and mandoc read them. */
#ifndef CG_ROFF_H
#define CG_ROFF_H

/* The text as it must look, whatever signs are in it; newlines are kept. */
void cg_roff_text(const char *text);

void cg_roff_section(const char *title);

/* A tagged paragraph: the tag in bold, its argument (NULL: none) in italics;
 * its text follows. */
void cg_roff_tag(const char *tag, const char *argument);

/* An item of a list without numbers; lines are filled. */
void cg_roff_item(const char *text);

/* Lines as they stand, indented. */
void cg_roff_lines(const char *text);

#endif
