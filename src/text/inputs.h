/* The files a run is made from: none of them may be written over.  One run is
 * one process, so they are kept here, by device and file number: a link or
 * another way to write the name is the same file. */
#ifndef CG_INPUTS_H
#define CG_INPUTS_H

#include <stdbool.h>
#include <stdio.h>
#include <sys/stat.h>

enum { CG_INPUT_FILES = 1024 };

/* From here on every file read is noted, until the end: before there are
 * threads, as a sweep's read the same files again. */
void cg_inputs_begin(void);
void cg_inputs_end(void);

/* Notes an open file, once; false when there are CG_INPUT_FILES already. */
bool cg_inputs_add(FILE *file);

/* Whether a file is one of those noted. */
bool cg_inputs_has(const struct stat *about);

#endif
