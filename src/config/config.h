/* Reads a case from a libconfig file: the only user of libconfig.
 *
 * Every trouble is one line "file:line: error: setting: what is wrong, what
 * is allowed"; all of them are collected and printed to stderr before the call
 * fails with CG_BAD_INPUT. */
#ifndef CG_CONFIG_H
#define CG_CONFIG_H

#include <stddef.h>

#include "case.h"
#include "evidence.h"
#include "material_library.h"
#include "status.h"

/* Reads `path` and applies the overrides "PATH=VALUE" in order (checked like
 * the file, told as "--set PATH: error: ..."; of one key given again the last
 * holds, in another unit it is trouble); loads a named duty and all named
 * materials, fills defaults, checks bands and whether all fits together.
 * CG_BAD_INPUT: the lines have been printed to stderr, error->text counts them
 * ("3 errors in x.cfg").  CG_FILE: the file or a shipped one cannot be read.
 * *c changes only on CG_OK; cg_case_free frees what its duties point to. */
enum cg_status cg_config_read(const char *path, const char *const *set,
                              size_t sets, struct cg_case *c,
                              struct cg_error *error);

/* The same in silence, for one point of many: nothing is printed, and the text
 * of CG_BAD_INPUT is the first of the lines.  `shipped`: the shipped materials,
 * read before, or NULL: they are read. */
struct cg_metals;
enum cg_status cg_config_try(const char *path, const char *const *set,
                             size_t sets, const struct cg_metals *shipped,
                             struct cg_case *c, struct cg_error *error);

/* The shipped materials and ring faces alone, for many cg_config_try.  Free with
 * cg_metals_free, whatever the status.  Errors: as cg_config_read, in silence. */
enum cg_status cg_config_shipped(struct cg_metals *shipped,
                                 struct cg_error *error);

/* Both, with the evidence in the file (NULL: checked, not kept); its runs are
 * of the case with the overrides in it.  The caller frees it. */
enum cg_status cg_config_read_evidence(const char *path,
                                       const char *const *set, size_t sets,
                                       struct cg_case *c,
                                       struct cg_evidence *evidence,
                                       struct cg_error *error);
enum cg_status cg_config_try_evidence(const char *path,
                                      const char *const *set, size_t sets,
                                      struct cg_case *c,
                                      struct cg_evidence *evidence,
                                      struct cg_error *error);

/* All ring materials, piston alloys and ring faces known to the config or
 * shipped; free with cg_material_library_free.  Errors: as cg_config_read. */
enum cg_status cg_config_read_library(const char *path, const char *const *set,
                                      size_t sets,
                                      struct cg_material_library *library,
                                      struct cg_error *error);

#endif
