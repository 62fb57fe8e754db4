/* Reads text files: a whole one into memory, or a large one line by line. */
#ifndef CG_TEXT_FILE_H
#define CG_TEXT_FILE_H

#include <stddef.h>
#include <stdio.h>

#include "status.h"

enum { CG_TEXT_LINE = 8192 };

/* Opens a regular file to be read; the caller closes it.  Never waits: a pipe
 * or a device is read only by the names of what the program was started with
 * open, /dev/stdin and /dev/fd/N.  NULL with CG_FILE and the reason in *error,
 * errno as the system left it (ENOENT: there is none). */
FILE *cg_text_open(const char *path, struct cg_error *error);

/* *text receives the file's content, ended by a zero; the caller frees it.
 * CG_FILE with the system's reason when it cannot be read, CG_BAD_INPUT when
 * it is no text (a zero byte in it, or larger than 16 MB) or one file too many
 * (inputs.h), CG_NO_MEMORY. */
enum cg_status cg_text_read(const char *path, char **text,
                            struct cg_error *error);

/* Takes one line, without its ending (LF or CR LF), counted from 1.  What it
 * returns ends the reading unless it is CG_OK. */
typedef enum cg_status (*cg_text_take)(void *context, char *line,
                                       size_t number, struct cg_error *error);

/* Hands every line to `take`, in fixed memory however long the file is.
 * CG_FILE with the system's reason, CG_BAD_INPUT for a zero byte, a line of
 * CG_TEXT_LINE letters or more, a file beyond 256 MB or one too many, and what
 * `take` returns. */
enum cg_status cg_text_lines(const char *path, cg_text_take take,
                             void *context, struct cg_error *error);

#endif
