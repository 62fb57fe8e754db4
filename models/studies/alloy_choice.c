#include "alloy_choice.h"

#include <math.h>
#include <string.h>

struct cg_case cg_alloy_choice_case(const struct cg_case *c,
                                    const struct cg_material *alloy)
{
    struct cg_case with = *c;
    const struct cg_band *trade = &alloy->skirt_per_bore;
    with.piston_material = *alloy;
    strcpy(with.piston.alloy, alloy->name);
    if (!isnan(trade->low))
        with.piston.skirt_clearance =
            0.5 * (trade->low + trade->high) * c->engine.bore;
    return with;
}

enum cg_status cg_alloy_choice_run(const struct cg_case *c,
                                   const struct cg_material *alloy,
                                   struct cg_alloy_choice *choice,
                                   struct cg_error *error)
{
    struct cg_case with = cg_alloy_choice_case(c, alloy);
    struct cg_duty_run *run;
    struct cg_answer answer;
    enum cg_status status = cg_duty_run_create(&with, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(&with, run, 0.0, NULL, NULL, &answer, error);
    cg_duty_run_free(run);
    if (status != CG_OK)
        return status;
    *choice = (struct cg_alloy_choice){
        .alloy = alloy,
        .own = strcmp(alloy->name, c->piston.alloy) == 0,
        .cold_gap = cg_answer_needed(&answer)->cold_gap,
        .crown = answer.extremes.crown_max,
        .groove = answer.extremes.groove_top_max,
        .skirt_at = answer.extremes.skirt.temperature,
        .skirt = answer.skirt,
        .clearance = answer.extremes.clearance};
    return CG_OK;
}
