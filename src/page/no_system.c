#define _POSIX_C_SOURCE 200809L /* strdup */
/* What the page has no system for: no file is written or held, no other program
 * is run, no signal comes.  In place of child.c, hold.c, open_parts.c,
 * part_file.c and stack_space.c of src/text, drawing.c of src/writers and
 * command_sweep.c. */
#include "drawing.h"
#include "hold.h"
#include "no_system.h"
#include "options.h"
#include "part_file.h"
#include "stack_space.h"

#include <string.h>

#define NOT_HERE "the page writes no file; the program for the shell does"

char *realpath(const char *path, char *resolved)
{
    return resolved == NULL ? strdup(path) : strcpy(resolved, path);
}

/* Only a page that is written is drawn for. */
void cg_drawing_begin(const char *out, struct cg_drawing *drawing)
{
    (void)out;
    *drawing = (struct cg_drawing){.trouble = NOT_HERE};
}

void cg_drawing_end(struct cg_drawing *drawing)
{
    (void)drawing;
}

void cg_drawing_make(struct cg_drawing *drawing, const char *name, char **svg)
{
    (void)drawing, (void)name;
    *svg = NULL;
}

/* The room is set where the page is built (wasi.cmake). */
bool cg_stack_enough(void)
{
    return true;
}

enum cg_status cg_stack_make(struct cg_error *error)
{
    (void)error;
    return CG_OK;
}

enum cg_status cg_hold_begin(const char *dir, bool shared, struct cg_hold *hold,
                             struct cg_error *error)
{
    (void)dir, (void)shared;
    hold->folder = -1;
    return cg_error_set(error, CG_FILE, NOT_HERE);
}

void cg_hold_end(struct cg_hold *hold)
{
    (void)hold;
}

enum cg_status cg_part_file_open(const char *dir, const char *name,
                                 struct cg_part_file *part_file,
                                 struct cg_error *error)
{
    (void)dir, (void)name;
    part_file->file = NULL;
    return cg_error_set(error, CG_FILE, NOT_HERE);
}

enum cg_status cg_part_file_open_at(const char *path,
                                    struct cg_part_file *part_file,
                                    struct cg_error *error)
{
    return cg_part_file_open("", path, part_file, error);
}

enum cg_status cg_part_file_close(struct cg_part_file *part_file,
                                  enum cg_status status, struct cg_error *error)
{
    (void)part_file, (void)error;
    return status;
}

enum cg_status cg_part_file_may(const char *dir, const char *name,
                                struct cg_error *error)
{
    (void)dir, (void)name;
    return cg_error_set(error, CG_FILE, NOT_HERE);
}

enum cg_status cg_part_file_rescue(const char *dir, const char *name,
                                   bool (*goes_on)(FILE *left,
                                                   const char *final),
                                   struct cg_error *error)
{
    (void)goes_on;
    return cg_part_file_may(dir, name, error);
}

enum cg_status cg_part_file_folder(const char *dir, bool *made,
                                   struct cg_error *error)
{
    *made = false;
    return cg_part_file_may(dir, "", error);
}

bool cg_part_file_is_at(int file, const char *path)
{
    (void)file, (void)path;
    return false;
}

enum cg_status cg_part_file_trouble(const char *path, const char *verb,
                                    struct cg_error *error)
{
    (void)path, (void)verb;
    return cg_error_set(error, CG_FILE, NOT_HERE);
}

enum cg_status cg_command_sweep(const struct cg_options *options,
                                struct cg_error *error)
{
    (void)options;
    return cg_error_set(error, CG_FILE, "sweep: " NOT_HERE);
}
