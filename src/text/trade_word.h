/* What builders say, where coldgap has another word: taken as ours. */
#ifndef CG_TRADE_WORD_H
#define CG_TRADE_WORD_H

#include <stdbool.h>
#include <stddef.h>

/* coldgap's word for the value `word` of a setting ("rings.top.face",
 * "hard_chrome": "chromium") or of a material in that role ("ring", "steel":
 * "plain_steel"), or NULL.  Capitals do not matter, nor whether
 * blanks, hyphens or underscores part a word.  Cannot fail. */
const char *cg_trade_value(const char *what, const char *word);

/* Writes coldgap's key for another one of the same quantity ("gap_mm":
 * "cold_gap_mm").  False: there is none, or it is longer than `size`. */
bool cg_trade_key(const char *key, char *ours, size_t size);

/* The same, also where the figures would be others ("afr": "lambda"), or else
 * `key` itself, cut off at `size`: for hints.  Cannot fail. */
void cg_trade_word(const char *key, char *ours, size_t size);

/* Whether a word is `said`, or begins with it and "_", or with it as one part
 * of a path: capitals, blanks and hyphens as above.  Cannot fail. */
bool cg_trade_begins(const char *word, const char *said);

#endif
