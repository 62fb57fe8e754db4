/* Words broken into lines for a terminal. */
#ifndef CG_WRAP_H
#define CG_WRAP_H

#include <stdio.h>

enum { CG_SCREEN_WIDTH = 80 };

/* Prints the words of `text`, each line up to CG_SCREEN_WIDTH columns: the
 * first begins at column `from`, where something stands before it already, the
 * others after `indent` blanks.  Ends with a newline.  Counts characters of
 * UTF-8.  Cannot fail; look at the file's error flag. */
void cg_wrap(FILE *out, const char *text, int from, int indent);

/* Likewise "TEXT, MORE", from `indent` on. */
void cg_wrap_pair(FILE *out, const char *text, const char *more, int indent);

/* Characters of UTF-8 in a text. */
int cg_text_width(const char *text);

#endif
