/* The case a command works on: read, and updated by the evidence in its file.
 *
 * The file says how the engine was when it was measured; --set and --vary ask
 * about another: what was learned is carried over to it.  Only settings of the
 * model itself (combustion.heat_transfer and heat_factor, uncertainty, solver)
 * hold for the learning too. */
#ifndef CG_UPDATED_CASE_H
#define CG_UPDATED_CASE_H

#include <stdbool.h>

#include "evidence.h"

struct cg_updated_case {
    struct cg_case c;        /* as asked for, updated */
    struct cg_case prior; /* the same without the evidence */
    struct cg_case measured; /* its engine, where --set asks about another */
    struct cg_evidence evidence; /* no entries: none was given */
    struct cg_learned learned;
};

/* Reads, learns, applies and runs courses as finely as they need
 * (course_refine.h); with `quiet` as cg_config_try does.  Errors: as
 * cg_config_read and cg_course_refine, and cg_evidence_learn with the config's
 * name before.  Always
 * free it afterwards, and with cg_case_free the case `c` itself, which others
 * may go on with. */
enum cg_status cg_updated_case_read(const char *path, const char *const *set,
                              size_t sets, bool quiet,
                              struct cg_updated_case *updated,
                              struct cg_error *error);
void cg_updated_case_free(struct cg_updated_case *updated);

/* True if a setting, "PATH=VALUE" or "PATH", changes what is learned. */
bool cg_updates_case(const char *set);

#endif
