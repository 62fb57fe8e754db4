/* Nearest word: for "unknown name, the nearest is ..." lines. */
#ifndef CG_NEAREST_H
#define CG_NEAREST_H

#include <stdbool.h>
#include <stddef.h>

/* Edits (insert, delete, replace, swap of neighbours) between two words:
 * optimal string alignment.  Only the first 63 letters count; a letter in the
 * other case counts as a full edit.  Cannot fail. */
size_t cg_edit_distance(const char *a, const char *b);

/* Index of the name nearest to `word`, or to what the trade means by it;
 * the first of equals; count >= 1. */
size_t cg_nearest(const char *word, const char *const *names, size_t count);

/* Whether `name` may be meant by `word`: at most one edit in three letters. */
bool cg_near(const char *word, const char *name);

/* Writes "the nearest is NAME" where one is near, or else "allowed: " and all
 * of them, cut off at `size`; count >= 1.  Cannot fail. */
void cg_nearest_hint(const char *word, const char *const *names, size_t count,
                     char *hint, size_t size);

/* Writes all names parted by ", ", the nearest to `word` first and the others
 * in their order, cut off at `size`.  Cannot fail. */
void cg_nearest_list(const char *word, const char *const *names, size_t count,
                     char *list, size_t size);

#endif
