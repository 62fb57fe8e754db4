/* Rings tried in the model: what the duty does to each. */
#include "ring_trial.h"

#include <math.h>
#include <string.h>

#include "relaxation.h"

struct cg_case cg_choice_case(const struct cg_case *c,
                              const struct cg_material *material,
                              const struct cg_face *face)
{
    struct cg_case with = *c;
    with.ring_material[CG_RING_TOP] = *material;
    with.ring_face[CG_RING_TOP] = *face;
    strcpy(with.ring[CG_RING_TOP].material, material->name);
    strcpy(with.ring[CG_RING_TOP].face, face->name);
    return with;
}

void cg_choice_load_add(const struct cg_case *c,
                        const struct cg_extremes *extremes,
                        const struct cg_limits *limits, bool own,
                        double load[CG_RING_LIMITS])
{
    load[CG_LIMIT_RING_HEAT] =
        fmax(load[CG_LIMIT_RING_HEAT], extremes->ring_top_max);
    load[CG_LIMIT_FACE_HEAT] =
        fmax(load[CG_LIMIT_FACE_HEAT], extremes->face_top_max);
    load[CG_LIMIT_PRESSURE] =
        fmax(load[CG_LIMIT_PRESSURE], limits->peak_pressure);
    /* The bands are of spark engines, whose rise tells how near knock is; a
     * diesel's is past most of them, and its faces live (common practice, no
     * source). */
    if (c->combustion.ignition == CG_IGNITION_SPARK)
        load[CG_LIMIT_RISE] = fmax(load[CG_LIMIT_RISE], limits->peak_rise);
    if (own)
        load[CG_LIMIT_TENSION] =
            1.0 - cg_relaxation_left(&c->ring_material[CG_RING_TOP],
                                     extremes->ring_top_max,
                                     c->ring[CG_RING_TOP].service)
                      .low;
}

/* The case's run on the gas side of `nominal`.  Caller frees. */
static enum cg_status vary(const struct cg_case *c,
                           const struct cg_duty_run *nominal,
                           struct cg_duty_run **run, struct cg_error *error)
{
    struct cg_duty_run *made;
    enum cg_status status = cg_duty_run_lay_out(c, &made, error);
    if (status != CG_OK)
        return status;
    status = cg_duty_run_vary(c, nominal, nominal, made, error);
    if (status != CG_OK) {
        cg_duty_run_free(made);
        return status;
    }
    *run = made;
    return CG_OK;
}

/* The candidate's duty on the gas side of `nominal`. */
static enum cg_status run_on(const struct cg_case *c,
                             const struct cg_duty_run *nominal, bool own,
                             double load[CG_RING_LIMITS])
{
    struct cg_duty_run *run;
    struct cg_extremes extremes;
    struct cg_limits limits;
    enum cg_status status = vary(c, nominal, &run, NULL);
    if (status != CG_OK)
        return status;
    status =
        cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes, NULL, NULL);
    if (status == CG_OK) {
        cg_limits_judge(c, run, &extremes, &limits);
        cg_choice_load_add(c, &extremes, &limits, own, load);
    }
    cg_duty_run_free(run);
    return status;
}

/* All candidates in one duty, the case's own, at its boost. */
static enum cg_status climb_duty(struct cg_choice_study *study, size_t at,
                                 const struct cg_case *c, bool own)
{
    struct cg_duty_run *nominal = NULL;
    enum cg_status status = cg_duty_run_create(c, &nominal, NULL);
    for (size_t i = 0; i < study->choices && status == CG_OK; i++) {
        struct cg_case with = cg_choice_case(c, study->choice[i].material,
                                             study->choice[i].face);
        status = run_on(&with, nominal, own, cg_choice_load(study, i, at));
    }
    cg_duty_run_free(nominal);
    return status;
}

/* All candidates at one boost, in every duty to survive. */
void cg_choice_climb(struct cg_choice_study *study, size_t at)
{
    struct cg_rung *rung = &study->rung[at];
    const struct cg_survive_case *survive = &study->c->survive;
    struct cg_case c = *study->c;
    if (rung->own)
        return;
    c.charge.boost = rung->boost;
    if (c.charge.charger == CG_CHARGER_NONE)
        c.charge.charger = CG_CHARGER_TURBINE;
    rung->status = climb_duty(study, at, &c, true);
    for (int i = 0; i < survive->duties && rung->status == CG_OK; i++) {
        c.duty = survive->duty[i];
        rung->status = climb_duty(study, at, &c, false);
    }
}

/* How much hotter the ring is for its coat [K]. */
static enum cg_status coat_effect(const struct cg_case *c,
                                  const struct cg_duty_run *coated,
                                  double *effect, struct cg_error *error)
{
    struct cg_case plain = *c;
    const struct cg_case *const cases[2] = {c, &plain};
    double ring[2];
    plain.ring_face[CG_RING_TOP].thickness = 0.0;
    *effect = 0.0;
    if (cg_face_resistance(&c->ring_face[CG_RING_TOP]) == 0.0)
        return CG_OK;
    /* Both by the same shorter way, so that what it errs by falls out. */
    for (int i = 0; i < 2; i++) {
        struct cg_duty_run *run;
        struct cg_extremes extremes;
        enum cg_status status = vary(cases[i], coated, &run, error);
        if (status != CG_OK)
            return status;
        status = cg_answer_extremes(cases[i], run, 0.0, NULL, NULL, &extremes,
                                    NULL, error);
        cg_duty_run_free(run);
        if (status != CG_OK)
            return status;
        ring[i] = extremes.ring_top_max;
    }
    *effect = ring[0] - ring[1];
    return CG_OK;
}

/* One candidate at the case's own boost, in full. */
enum cg_status cg_choice_try(struct cg_choice_study *study, size_t at,
                             struct cg_error *error)
{
    struct cg_ring_choice *choice = &study->choice[at];
    struct cg_case c = cg_choice_case(study->c, choice->material, choice->face);
    struct cg_duty_run *run;
    struct cg_answer answer;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, error);
    if (status == CG_OK)
        status = coat_effect(&c, run, &choice->coat_effect, error);
    if (status == CG_OK) {
        const struct cg_extremes *e = &answer.extremes;
        choice->cold_gap = cg_answer_needed(&answer)->cold_gap;
        choice->file_to = answer.file_to_top;
        strcpy(choice->hardest, answer.duty[answer.hardest].name);
        choice->no_gap = answer.verdict.beyond;
        choice->ring = e->ring_top_max;
        choice->tension_left = cg_relaxation_left(
            choice->material, e->ring_top_max, c.ring[CG_RING_TOP].service);
        for (size_t i = 0; i < answer.duties; i++)
            cg_choice_load_add(&c, &answer.duty[i].extremes, &answer.duty[i].limits,
                     i == 0,
                     cg_choice_load(study, at, cg_choice_own_rung(study)));
    }
    cg_duty_run_free(run);
    return status;
}
