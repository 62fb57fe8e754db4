#include "updated_case.h"

#include <string.h>

#include "config.h"
#include "course_refine.h"

enum { SETS = 128 }; /* more than the command line and a sweep give */

bool cg_updates_case(const char *set)
{
    static const char *const paths[] = {"combustion.heat_transfer",
                                        "combustion.heat_factor",
                                        "uncertainty.", "solver."};
    for (size_t i = 0; i < sizeof paths / sizeof paths[0]; i++) {
        size_t length = strlen(paths[i]);
        bool group = paths[i][length - 1] == '.';
        if (strncmp(set, paths[i], length) == 0 &&
            (group || set[length] == '=' || set[length] == '\0'))
            return true;
    }
    return false;
}

static enum cg_status read_one(const char *path, const char *const *set,
                               size_t sets, bool quiet, struct cg_case *c,
                               struct cg_evidence *evidence,
                               struct cg_error *error)
{
    return quiet ? cg_config_try_evidence(path, set, sets, c, evidence, error)
                 : cg_config_read_evidence(path, set, sets, c, evidence, error);
}

/* Reads the evidence again for the engine as the file alone says it. */
static enum cg_status read_measured(const char *path, const char *const *set,
                                    size_t sets, bool quiet,
                                    struct cg_updated_case *updated,
                                    struct cg_error *error)
{
    const char *kept[SETS];
    size_t count = 0;
    for (size_t i = 0; i < sets && count < SETS; i++)
        if (cg_updates_case(set[i]))
            kept[count++] = set[i];
    if (count == sets)
        return CG_OK;
    cg_evidence_free(&updated->evidence);
    enum cg_status status = read_one(path, kept, count, quiet,
                                     &updated->measured,
                                     &updated->evidence, error);
    if (status == CG_BAD_INPUT && !quiet)
        return cg_error_set(error, status,
                            "%s: evidence is of the engine as the file says "
                            "it, without --set; so read, it has errors",
                            path);
    return status;
}

/* The case as it is asked about, and that without the evidence, in the same
 * courses. */
static enum cg_status refine(struct cg_updated_case *updated,
                             struct cg_error *error)
{
    enum cg_status status = cg_course_refine(&updated->c, error);
    updated->prior.duty = updated->c.duty;
    updated->prior.survive = updated->c.survive;
    updated->prior.courses = updated->c.courses;
    return status;
}

enum cg_status cg_updated_case_read(const char *path, const char *const *set,
                                    size_t sets, bool quiet,
                                    struct cg_updated_case *updated,
                                    struct cg_error *error)
{
    struct cg_error trouble = {CG_OK, ""};
    memset(updated, 0, sizeof *updated);
    enum cg_status status = read_one(path, set, sets, quiet, &updated->c,
                                     &updated->evidence, error);
    updated->prior = updated->c;
    if (status != CG_OK)
        return status;
    if (updated->evidence.entries == 0)
        return refine(updated, error);
    status = read_measured(path, set, sets, quiet, updated, error);
    if (status != CG_OK)
        return status;
    status = cg_evidence_learn(&updated->evidence, &updated->learned, &trouble);
    if (status != CG_OK)
        return cg_error_set(error, status, "%.100s: %.400s", path,
                            trouble.text);
    cg_learned_apply(&updated->learned, &updated->c);
    return refine(updated, error);
}

void cg_updated_case_free(struct cg_updated_case *updated)
{
    cg_evidence_free(&updated->evidence);
    cg_case_free(&updated->measured);
}
