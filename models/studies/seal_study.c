#include "seal_study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* The answer, or as much of it as given gaps leave to be asked. */
static enum cg_status find_gaps(const struct cg_case *c,
                                struct cg_duty_run *run,
                                struct cg_seal_study *study,
                                struct cg_error *error)
{
    struct cg_answer *answer = &study->answer;
    enum cg_status status;
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        study->given[k] = !isnan(c->ring[k].cold_gap);
    study->whole = !(study->given[0] && study->given[1]);
    if (study->whole) {
        status = cg_answer_find(c, run, 0.0, NULL, NULL, answer, error);
    } else {
        status = cg_answer_extremes(c, run, 0.0, NULL, NULL, &answer->extremes,
                                    &answer->ledger, error);
        if (status == CG_OK)
            cg_answer_add_up(c, 0.0, answer);
    }
    if (status == CG_OK)
        status = cg_answer_second(c, run, answer, error);
    if (status != CG_OK)
        return status;
    study->gap[0] = answer->verdict.gap;
    study->gap[1] = answer->second_verdict.gap;
    return CG_OK;
}

/* At rated speed: a wider top gap first, so that the record left behind is
 * that of the gap itself. */
static enum cg_status look_at_rated(struct cg_seal_study *study,
                                    struct cg_error *error)
{
    struct cg_seal_answer wider;
    const double *gap = study->gap;
    enum cg_status wide = cg_seal_solve(study->rated, gap[0] + CG_SEAL_MORE_GAP,
                                        gap[1], &wider, NULL);
    enum cg_status status =
        cg_seal_solve(study->rated, gap[0], gap[1], &study->at_rated, error);
    if (status != CG_OK)
        return status;
    study->power_loss = study->blow_by_more = NAN;
    if (wide != CG_OK)
        return CG_OK;
    study->power_loss = cg_seal_power(study->rated, &wider) -
                        cg_seal_power(study->rated, &study->at_rated);
    study->blow_by_more = wider.blow_by - study->at_rated.blow_by;
    return CG_OK;
}

/* A side of the study without which the rest still stands: blow_by is NaN if
 * its rings do not settle. */
static enum cg_status look_aside(const struct cg_seal_study *study,
                                 struct cg_seal *seal,
                                 struct cg_seal_answer *answer,
                                 struct cg_error *error)
{
    enum cg_status status =
        cg_seal_solve(seal, study->gap[0], study->gap[1], answer, error);
    if (status == CG_NUMERICAL) {
        memset(answer, 0, sizeof *answer);
        answer->blow_by = NAN;
        return CG_OK;
    }
    return status;
}

/* The rest stands without it too. */
static enum cg_status look_at_friction(const struct cg_duty_run *run,
                                       struct cg_seal_study *study,
                                       struct cg_error *error)
{
    enum cg_status status = cg_seal_friction_find(
        study->rated, run, run->full_load, &study->friction, error);
    if (status != CG_NUMERICAL)
        return status;
    study->friction.power[0] = study->friction.power[1] = NAN;
    return CG_OK;
}

static enum cg_status look(const struct cg_case *c, struct cg_duty_run *run,
                           struct cg_seal_study *study, struct cg_error *error)
{
    enum cg_status status = find_gaps(c, run, study, error);
    if (status == CG_OK)
        status = cg_seal_create(c, run, run->full_load, &study->rated, error);
    if (status == CG_OK)
        status = look_at_rated(study, error);
    if (status == CG_OK)
        status = look_at_friction(run, study, error);
    if (status == CG_OK)
        status = cg_seal_create(c, run, run->full_load, &study->other, error);
    if (status != CG_OK)
        return status;
    study->other_ports =
        c->seal.ports == CG_PORTS_NONE ? CG_PORTS_CROWN : CG_PORTS_NONE;
    cg_seal_ports(study->other, study->other_ports);
    status = look_aside(study, study->other, &study->at_other, error);
    size_t hardest = cg_second_gap_point(run);
    if (status != CG_OK || hardest == run->full_load)
        return status;
    status = cg_seal_create(c, run, hardest, &study->hardest, error);
    if (status == CG_OK)
        status = look_aside(study, study->hardest, &study->at_hardest, error);
    return status;
}

enum cg_status cg_seal_study_create(const struct cg_case *c,
                                    struct cg_duty_run *run,
                                    struct cg_seal_study **study,
                                    struct cg_error *error)
{
    *study = calloc(1, sizeof **study);
    if (*study == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    (*study)->c = c;
    return look(c, run, *study, error);
}

void cg_seal_study_free(struct cg_seal_study *study)
{
    if (study == NULL)
        return;
    cg_seal_free(study->rated);
    cg_seal_free(study->other);
    cg_seal_free(study->hardest);
    free(study);
}
