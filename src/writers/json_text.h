/* Texts and numbers as JSON has them (RFC 8259). */
#ifndef CG_JSON_TEXT_H
#define CG_JSON_TEXT_H

#include <stdio.h>

/* A string in quotes: quotes, backslashes and line ends escaped; what is not
 * shown as it is anywhere (plain_text.h) is U+FFFD.  Look at the file's error
 * flag. */
void cg_json_string(FILE *out, const char *text);

/* A number with as many digits as it takes to read back the same; null for NaN and
 * infinities, which JSON does not have. */
void cg_json_number(FILE *out, double value);

#endif
