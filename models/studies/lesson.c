#include "lesson.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "growth.h"
#include "lesson_parts.h"

#define SUPPOSED_BOOST 60e3 /* of an engine without boost [Pa] */

/* The same case at another boost. */
static struct cg_case at_boost(const struct cg_case *c, double boost)
{
    struct cg_case at = *c;
    at.charge.boost = boost;
    if (boost != c->charge.boost)
        at.survive.duties = 0; /* shown for the duty asked for */
    if (boost > 0.0 && at.charge.charger == CG_CHARGER_NONE)
        at.charge.charger = CG_CHARGER_TURBINE;
    return at;
}

/* What the duty's observer needs. */
struct instants {
    const struct cg_case *c;
    const struct cg_thermal *thermal;
    double interval; /* [s] */
    size_t kept;
    struct cg_lesson_instant *instant;
    double *workspace; /* as cg_lesson_growth_at */
};

static enum cg_status keep_instant(void *context,
                                   const struct cg_instant *instant,
                                   struct cg_error *error)
{
    struct instants *seen = context;
    (void)error;
    if (!instant->table || seen->kept == CG_LESSON_INSTANTS)
        return CG_OK;
    struct cg_lesson_instant *kept = &seen->instant[seen->kept++];
    kept->time = instant->time;
    kept->speed = instant->speed;
    kept->load = instant->load;
    cg_lesson_growth_at(seen->c, seen->thermal, instant->temperature,
                        seen->workspace, &kept->growth);
    return CG_OK;
}

/* The duty once more, looked at in equal steps up to its tightest instant. */
static enum cg_status find_instants(const struct cg_case *c,
                                    struct cg_duty_run *run, double *workspace,
                                    struct cg_lesson *lesson,
                                    struct cg_error *error)
{
    double tightest = lesson->answer.extremes.time;
    double until = tightest > 0.0 ? tightest : run->duration;
    struct instants seen = {.c = c,
                            .thermal = run->thermal,
                            .interval = until / (CG_LESSON_INSTANTS - 1),
                            .instant = lesson->instant,
                            .workspace = workspace};
    enum cg_status status =
        cg_duty_run_go(c, run, seen.interval, keep_instant, &seen, NULL, error);
    if (status == CG_OK && seen.kept < CG_LESSON_INSTANTS)
        return cg_error_set(error, CG_NUMERICAL,
                            "the duty's instants for the lesson were not met");
    return status;
}

/* One boost: the whole answer, and the settled state; for the config's own
 * boost the heat, the wall and the duty too. */
static enum cg_status find_boost(const struct cg_case *c, bool own,
                                 struct cg_lesson_boost *boost,
                                 struct cg_lesson *lesson,
                                 struct cg_error *error)
{
    struct cg_duty_run *run;
    struct cg_answer answer;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    double *workspace =
        malloc(cg_lesson_workspace(run->thermal) * sizeof *workspace);
    status = workspace == NULL
                 ? cg_error_set(error, CG_NO_MEMORY, "out of memory")
                 : cg_answer_find(c, run, 0.0, NULL, NULL, &answer, error);
    if (status != CG_OK)
        goto out;

    const struct cg_operating_point *full = &run->point[run->full_load];
    cg_lesson_growth_at(c, run->thermal, full->settled, workspace,
                        &boost->growth);
    boost->crown_flux = answer.performance.mean_flux;
    boost->duty_closure = answer.top.closure;
    boost->cold_gap = answer.top.cold_gap;
    if (!own)
        goto out;
    lesson->answer = answer;
    cg_lesson_wall_at(c, run->thermal, full->settled, boost->growth.depth,
                      &lesson->wall);
    status = cg_lesson_heat_of(c, run, workspace, &lesson->heat, error);
    if (status == CG_OK)
        status = find_instants(c, run, workspace, lesson, error);
out:
    free(workspace);
    cg_duty_run_free(run);
    return status;
}

enum cg_status cg_lesson_find(const struct cg_case *c, struct cg_lesson *lesson,
                              struct cg_error *error)
{
    bool boosted = c->charge.boost > 0.0;
    double most = boosted ? c->charge.boost : SUPPOSED_BOOST;
    memset(lesson, 0, sizeof *lesson);
    lesson->own = boosted ? CG_LESSON_BOOSTS - 1 : 0;
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++) {
        struct cg_lesson_boost *boost = &lesson->boost[i];
        boost->boost = most * ((double)i / (CG_LESSON_BOOSTS - 1));
        struct cg_case at = at_boost(c, boost->boost);
        enum cg_status status =
            find_boost(&at, i == lesson->own, boost, lesson, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}
