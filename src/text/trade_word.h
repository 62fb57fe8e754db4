/* What the trade says, where coldgap has another word: so that an unknown word
 * is met with the right one first. */
#ifndef CG_TRADE_WORD_H
#define CG_TRADE_WORD_H

#include <stddef.h>

/* Writes coldgap's word for `word` ("chrome": "chromium"; "gap_mm":
 * "cold_gap_mm"), or else `word` itself, cut off at `size`.  Capitals do not
 * matter.  Cannot fail. */
void cg_trade_word(const char *word, char *ours, size_t size);

/* Writes " (here chromium)" for such a word, or nothing.  Cannot fail. */
void cg_trade_hint(const char *word, char *hint, size_t size);

#endif
