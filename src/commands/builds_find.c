#include "builds_find.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "builds_table.h"

enum cg_status cg_build_get(const char *path, const char *name,
                            const char *const *set, size_t sets,
                            struct cg_build *build, struct cg_error *error)
{
    memset(build, 0, sizeof *build);
    build->name = name;
    return cg_updated_case_read(path, set, sets, false, &build->updated, error);
}

void cg_build_free(struct cg_build *build)
{
    cg_updated_case_free(&build->updated);
    cg_case_free(&build->updated.c);
}

enum cg_status cg_build_answer(const struct cg_case *c, bool second,
                               struct cg_answer *answer, struct cg_error *error)
{
    struct cg_duty_run *run;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(c, run, 0.0, NULL, NULL, answer, error);
    if (status == CG_OK && second)
        status = cg_answer_second(c, run, answer, error);
    cg_duty_run_free(run);
    return status;
}

enum cg_status cg_build_find(struct cg_build *build, struct cg_error *error)
{
    const struct cg_updated_case *updated = &build->updated;
    enum cg_status status = CG_OK;
    if (updated->learned.entries > 0)
        status =
            cg_build_answer(&updated->prior, false, &build->without, error);
    if (status == CG_OK)
        status = cg_build_answer(&updated->c, true, &build->answer, error);
    if (status == CG_OK)
        status = cg_finish_need(&updated->prior, &build->finish, error);
    return status;
}

/* The new build by the model as the old one's evidence moved it. */
static enum cg_status carry(const struct cg_build *then,
                            const struct cg_build *now, double *closure,
                            struct cg_error *error)
{
    struct cg_case *c = malloc(sizeof *c);
    struct cg_answer *answer = malloc(sizeof *answer);
    enum cg_status status = CG_OK;
    if (c == NULL || answer == NULL) {
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    } else {
        *c = now->updated.prior;
        cg_learned_apply(&then->updated.learned, c);
        status = cg_build_answer(c, false, answer, error);
    }
    if (status == CG_OK)
        *closure = cg_answer_most_closure(answer);
    free(c);
    free(answer);
    return status;
}

/* What reads the same in both is told as no change. */
static void drop_unseen(struct cg_builds *builds)
{
    struct cg_build_changes *changes = &builds->changes;
    size_t kept = 0;
    for (size_t i = 0; i < changes->count; i++) {
        struct cg_build_value then = cg_build_then(builds, i, false);
        struct cg_build_value now = cg_build_now(builds, i, false);
        if (strcmp(then.text, now.text) == 0)
            continue;
        changes->setting[kept] = changes->setting[i];
        changes->follows[kept++] = changes->follows[i];
    }
    changes->count = kept;
}

enum cg_status cg_builds_find(const struct cg_build *then,
                              const struct cg_build *now,
                              struct cg_builds *builds, struct cg_error *error)
{
    memset(builds, 0, sizeof *builds);
    builds->then = then;
    builds->now = now;
    builds->closure = NAN;
    cg_build_compare(&then->updated.prior, &now->updated.prior,
                     &builds->changes);
    drop_unseen(builds);
    if (then->updated.learned.entries == 0)
        return CG_OK;
    return carry(then, now, &builds->closure, error);
}
