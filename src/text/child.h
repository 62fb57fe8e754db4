/* Another program, run to its end without a shell. */
#ifndef CG_CHILD_H
#define CG_CHILD_H

#include <stdbool.h>
#include <stddef.h>

/* Writes the full path of a program in PATH; folders in it that are not named
 * from the root are passed over.  False when it is in none. */
bool cg_child_find(const char *name, char *path, size_t size);

/* Runs words[0], a full path, with the words after it (ended by NULL; exec
 * takes them without const, and does not write to them) in `folder`: nothing
 * to read, what it says thrown away, text in UTF-8, ended after
 * CG_CHILD_SECONDS.  Its exit status, or -1 when it did not come to one. */
enum { CG_CHILD_SECONDS = 60 };
int cg_child_run(const char *folder, char *const *words);

#endif
