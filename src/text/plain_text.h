/* Text from outside, a file's or the command line's, as it is shown on screens,
 * in tables, on pages and in error lines: a "?" stands for whatever would act
 * instead of being read. */
#ifndef CG_PLAIN_TEXT_H
#define CG_PLAIN_TEXT_H

#include <stdbool.h>
#include <stddef.h>

/* A path of the system, and quotes around it. */
enum { CG_PLAIN_LENGTH = 5120 };

struct cg_plain {
    char text[CG_PLAIN_LENGTH];
};

/* Bytes of what stands at `at`, not its end; *shown: whether it is shown as it
 * is.  Not shown are control characters (C0, DEL, C1; a line's end and a tab
 * too), the separators of lines and paragraphs, the turns of the reading
 * direction (Bidi_Control of the Unicode Standard) and what has no width or
 * shape, no characters (U+FFFE, FFFF), and a byte that begins no letter of UTF-8 (RFC 3629, sec. 4: no
 * overlong forms, no surrogates, none above U+10FFFF). */
size_t cg_plain_step(const char *at, bool *shown);

/* Whether all of it is shown as it is. */
bool cg_plain_is(const char *text);

/* Puts a "?" for each that is not, in place. */
void cg_plain_make(char *text);

/* The same of a copy; a longer one ends in "...". */
struct cg_plain cg_plain(const char *text);

/* The copy as one word of a command that a reader may type: in quotes where a
 * shell would take it for anything else than a word, and not for an option. */
struct cg_plain cg_plain_word(const char *text);

#endif
