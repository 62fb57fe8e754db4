/* Reads a whole text file into memory. */
#ifndef CG_TEXT_FILE_H
#define CG_TEXT_FILE_H

#include "status.h"

/* *text receives the file's content, ended by a zero; the caller frees it.
 * CG_FILE with the system's reason when it cannot be read, CG_BAD_INPUT when
 * it is no text (a zero byte in it, or larger than 16 MB), CG_NO_MEMORY. */
enum cg_status cg_text_read(const char *path, char **text,
                            struct cg_error *error);

#endif
