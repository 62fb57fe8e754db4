/* Files that are written aside, as PATH.part, and renamed when they are whole,
 * so that a failure leaves nothing half-written under the final name.  A signal
 * that ends the program takes them away too; only a kill leaves them.
 *
 * A part is made anew and held (flock) until it is renamed or gone, so that no
 * two runs write one; the system lets go of it with the process.  What a killed
 * run left is held by nobody, and so makes room for the next. */
#ifndef CG_PART_FILE_H
#define CG_PART_FILE_H

#include <stdbool.h>
#include <stdio.h>

#include "status.h"

enum { CG_PART_FILE_PATH = 4096 };

struct cg_part_file {
    FILE *file;
    int lock;  /* holds the part a moment longer than the file is open */
    bool made; /* the folder, which goes again when nothing comes of it */
    char part[CG_PART_FILE_PATH], final[CG_PART_FILE_PATH];
};

/* Creates folder `dir` if it is missing (its parent must exist), and opens
 * DIR/NAME.part.  CG_FILE with the reason: also where another run writes it, or
 * cg_part_file_may does not allow part or name. */
enum cg_status cg_part_file_open(const char *dir, const char *name,
                                 struct cg_part_file *part_file,
                                 struct cg_error *error);

/* The same of a whole path; without a folder it is the one the run stands in. */
enum cg_status cg_part_file_open_at(const char *path,
                                    struct cg_part_file *part_file,
                                    struct cg_error *error);

/* Closes and, if all was well written and `status` is CG_OK, renames;
 * otherwise removes the part.  Returns `status`, or CG_FILE with the reason. */
enum cg_status cg_part_file_close(struct cg_part_file *part_file,
                                  enum cg_status status,
                                  struct cg_error *error);

/* Whether DIR/NAME and its part may be written: each is not there or a plain
 * file (else CG_FILE) that this run is not made from (else CG_BAD_INPUT). */
enum cg_status cg_part_file_may(const char *dir, const char *name,
                                struct cg_error *error);

/* Puts what a killed run left aside in the place of DIR/NAME, if `goes_on`,
 * which gets both, says so.  CG_FILE: as cg_part_file_open. */
enum cg_status cg_part_file_rescue(const char *dir, const char *name,
                                   bool (*goes_on)(FILE *left,
                                                   const char *final),
                                   struct cg_error *error);

/* Creates a folder if it is missing; *made: it was.  CG_FILE with the reason.
 */
enum cg_status cg_part_file_folder(const char *dir, bool *made,
                                   struct cg_error *error);

/* Whether an open file or folder is what stands at `path` now; a link there
 * counts for itself. */
bool cg_part_file_is_at(int file, const char *path);

/* CG_FILE: "PATH: could not VERB: " and the system's reason. */
enum cg_status cg_part_file_trouble(const char *path, const char *verb,
                                    struct cg_error *error);

#endif
