/* Reads and computes a build, as `find` does. */
#ifndef CG_BUILDS_FIND_H
#define CG_BUILDS_FIND_H

#include "builds.h"

/* Reads it, updated by its evidence; `name` is kept as shown, the caller's.
 * Errors: as cg_updated_case_read.  Always end with cg_build_free. */
enum cg_status cg_build_get(const char *path, const char *name,
                            const char *const *set, size_t sets,
                            struct cg_build *build, struct cg_error *error);
void cg_build_free(struct cg_build *build);

/* The answer of `find` for a case; with `second` that for the second gap too.
 * Errors: as cg_duty_run_create, cg_answer_find and cg_answer_second. */
enum cg_status cg_build_answer(const struct cg_case *c, bool second,
                               struct cg_answer *answer,
                               struct cg_error *error);

/* The answer, without the evidence too, second gap and fuel.  Errors: as
 * cg_answer_find, cg_answer_second and cg_finish_need. */
enum cg_status cg_build_find(struct cg_build *build, struct cg_error *error);

/* Both must have been found.  What the old build's evidence taught is carried
 * to the new one.  Errors: as cg_answer_find. */
enum cg_status cg_builds_find(const struct cg_build *then,
                              const struct cg_build *now,
                              struct cg_builds *builds, struct cg_error *error);

#endif
