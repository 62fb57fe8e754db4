/* Reads a case from a libconfig file: the only user of libconfig.
 *
 * Every trouble is one line "file:line: error: setting: what is wrong, what
 * is allowed"; all of them are collected, and printed to stderr by the
 * caller's sink, before the call fails with CG_BAD_INPUT. */
#ifndef CG_CONFIG_H
#define CG_CONFIG_H

#include <stddef.h>

#include "case.h"
#include "status.h"

/* Reads `path`, applies the `sets` overrides "PATH=VALUE" in order (checked
 * like the file, named "--set" instead of file:line), loads a named duty and
 * all named materials, fills defaults and checks bands and consistency.
 * CG_BAD_INPUT: error->text holds all the lines' summary ("3 errors in
 * x.cfg"), the lines themselves having been printed to stderr.  CG_FILE: the
 * file cannot be read. */
enum cg_status cg_config_read(const char *path, const char *const *set,
                              size_t sets, struct cg_case *c,
                              struct cg_error *error);

#endif
