#include "ring_choice.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ring_trial.h"

double *cg_choice_load(const struct cg_choice_study *study, size_t choice,
                       size_t rung)
{
    return study->load + (choice * study->rungs + rung) * CG_RING_LIMITS;
}

size_t cg_choice_own_rung(const struct cg_choice_study *study)
{
    size_t at = 0;
    while (!study->rung[at].own)
        at++;
    return at;
}

const char *cg_ring_verdict_text(enum cg_ring_verdict verdict)
{
    switch (verdict) {
    case CG_RING_FITS:
        return "fits";
    case CG_RING_MARGINAL:
        return "marginal";
    case CG_RING_UNFIT:
        return "unfit";
    }
    return "";
}

void cg_choice_limits(const struct cg_material *material,
                      const struct cg_face *face,
                      struct cg_band limit[CG_RING_LIMITS])
{
    limit[CG_LIMIT_RING_HEAT] =
        (struct cg_band){material->hot_limit, material->hot_limit_high};
    limit[CG_LIMIT_TENSION] =
        (struct cg_band){CG_TENSION_LOST_LOW, CG_TENSION_LOST_HIGH};
    limit[CG_LIMIT_FACE_HEAT] = face->temperature;
    limit[CG_LIMIT_PRESSURE] = face->peak_pressure;
    limit[CG_LIMIT_RISE] = face->peak_rise;
}

static void add_choice(const struct cg_case *c,
                       const struct cg_material *material,
                       const struct cg_face *face,
                       struct cg_choice_study *study)
{
    struct cg_ring_choice *choice = &study->choice[study->choices++];
    *choice = (struct cg_ring_choice){
        .material = material,
        .face = face,
        .own = strcmp(material->name, c->ring[CG_RING_TOP].material) == 0 &&
               strcmp(face->name, c->ring_face[CG_RING_TOP].name) == 0,
    };
    cg_choice_limits(material, face, choice->limit);
}

/* Steps of CG_CHOICE_STEP, and the case's own boost among them. */
static void add_rungs(const struct cg_case *c, struct cg_choice_study *study)
{
    double own = c->charge.boost;
    bool placed = false;
    for (double boost = 0.0; boost <= CG_CHOICE_MOST + 1.0;
         boost += CG_CHOICE_STEP) {
        bool same = fabs(boost - own) < 1.0;
        if (!placed && own < boost && !same) {
            study->rung[study->rungs++] = (struct cg_rung){own, true, CG_OK};
            placed = true;
        }
        placed = placed || same;
        study->rung[study->rungs++] =
            (struct cg_rung){same ? own : boost, same, CG_OK};
    }
    if (!placed)
        study->rung[study->rungs++] = (struct cg_rung){own, true, CG_OK};
}

static enum cg_status allocate(size_t most, struct cg_choice_study *study,
                               struct cg_error *error)
{
    size_t rungs = (size_t)(CG_CHOICE_MOST / CG_CHOICE_STEP) + 3;
    study->choice = calloc(most, sizeof *study->choice);
    study->rung = calloc(rungs, sizeof *study->rung);
    study->load = calloc(most * rungs * CG_RING_LIMITS, sizeof *study->load);
    study->status = calloc(most, sizeof *study->status);
    study->error = calloc(most, sizeof *study->error);
    if (study->choice == NULL || study->rung == NULL || study->load == NULL ||
        study->status == NULL || study->error == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    return CG_OK;
}

enum cg_status cg_choice_begin(const struct cg_case *c,
                               const struct cg_material *materials,
                               size_t material_count,
                               const struct cg_face *faces, size_t face_count,
                               struct cg_choice_study **study,
                               struct cg_error *error)
{
    struct cg_choice_study *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->c = c;
    enum cg_status status =
        allocate(material_count * face_count + 1, made, error);
    for (size_t m = 0; m < material_count && status == CG_OK; m++)
        for (size_t f = 0; f < face_count; f++)
            if (cg_face_goes_on(&faces[f], &materials[m]))
                add_choice(c, &materials[m], &faces[f], made);
    if (status == CG_OK && made->choices == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "rings: no face goes on any ring material");
    if (status != CG_OK) {
        cg_choice_free(made);
        return status;
    }
    add_rungs(c, made);
    *study = made;
    return CG_OK;
}

void cg_choice_free(struct cg_choice_study *study)
{
    if (study == NULL)
        return;
    free(study->choice);
    free(study->rung);
    free(study->load);
    free(study->status);
    free(study->error);
    free(study);
}

size_t cg_choice_items(const struct cg_choice_study *study)
{
    return study->rungs + study->choices;
}

void cg_choice_run(struct cg_choice_study *study, size_t item)
{
    /* Candidates first: each is the longer work. */
    if (item < study->choices)
        study->status[item] = cg_choice_try(study, item, &study->error[item]);
    else
        cg_choice_climb(study, item - study->choices);
}

double cg_choice_crossing(const double *boost, const double *use, size_t points,
                          double level)
{
    for (size_t i = 0; i < points; i++) {
        if (use[i] < level)
            continue;
        if (i == 0)
            return boost[0];
        return boost[i - 1] + (boost[i] - boost[i - 1]) * (level - use[i - 1]) /
                                  (use[i] - use[i - 1]);
    }
    return NAN;
}

double cg_choice_use(const struct cg_band *limit, double load)
{
    return (load - limit->low) / (limit->high - limit->low);
}

/* Keeps the lower of two crossings, and whose it is. */
static void keep_first(double crossing, enum cg_ring_limit limit,
                       double *lowest, enum cg_ring_limit *first)
{
    if (!(crossing < *lowest))
        return;
    *lowest = crossing;
    if (first != NULL)
        *first = limit;
}

/* Verdict and crossings of one candidate over the first `rungs` boosts. */
static void judge(const struct cg_choice_study *study, size_t at, size_t rungs,
                  double *boost, double *use)
{
    struct cg_ring_choice *choice = &study->choice[at];
    size_t own = cg_choice_own_rung(study);
    double stops = INFINITY, unfit = INFINITY;
    assert(own < rungs);
    for (size_t i = 0; i < rungs; i++)
        boost[i] = study->rung[i].boost;
    choice->worst = CG_LIMIT_RING_HEAT;
    choice->first = CG_RING_LIMITS;
    for (int k = 0; k < CG_RING_LIMITS; k++) {
        enum cg_ring_limit limit = (enum cg_ring_limit)k;
        double most = -INFINITY;
        for (size_t i = 0; i < rungs; i++)
            use[i] = cg_choice_use(&choice->limit[k],
                                   cg_choice_load(study, at, i)[k]);
        for (size_t i = 0; i <= own; i++)
            most = fmax(most, use[i]);
        choice->load[k] = cg_choice_load(study, at, own)[k];
        choice->use[k] = most;
        if (most > choice->use[choice->worst])
            choice->worst = limit;
        keep_first(cg_choice_crossing(boost, use, rungs, 0.0), limit, &stops,
                   &choice->first);
        keep_first(cg_choice_crossing(boost, use, rungs, 1.0), limit, &unfit,
                   NULL);
    }
    double worst = choice->use[choice->worst], end = boost[rungs - 1];
    choice->verdict = choice->no_gap || worst >= 1.0 ? CG_RING_UNFIT
                      : worst < 0.0                  ? CG_RING_FITS
                                                     : CG_RING_MARGINAL;
    choice->stops_fitting = fmin(stops, end);
    choice->unfit_from = fmin(unfit, end);
}

static int better_first(const void *a, const void *b)
{
    const struct cg_ring_choice *x = a, *y = b;
    if (x->verdict != y->verdict)
        return x->verdict < y->verdict ? -1 : 1;
    if (x->stops_fitting != y->stops_fitting)
        return x->stops_fitting > y->stops_fitting ? -1 : 1;
    if (x->cold_gap != y->cold_gap)
        return x->cold_gap < y->cold_gap ? -1 : 1;
    /* The order of the files, whatever the sort does with equals. */
    if (x->material != y->material)
        return x->material < y->material ? -1 : 1;
    return (x->face > y->face) - (x->face < y->face);
}

enum cg_status cg_choice_end(struct cg_choice_study *study,
                             const struct cg_ring_choice **choices,
                             size_t *count, double *reached,
                             struct cg_error *error)
{
    size_t rungs = 0, own = cg_choice_own_rung(study);
    for (size_t i = 0; i < study->choices; i++)
        if (study->status[i] != CG_OK)
            return cg_error_set(error, study->status[i], "%.400s",
                                study->error[i].text);
    while (rungs < study->rungs && study->rung[rungs].status == CG_OK)
        rungs++;
    /* A boost without memory is no boost that the engine cannot reach. */
    if (rungs <= own || (rungs < study->rungs &&
                         study->rung[rungs].status == CG_NO_MEMORY))
        return cg_error_set(error, study->rung[rungs].status,
                            "rings: a boost of %.0f kPa could not be computed",
                            study->rung[rungs].boost / 1e3);
    double *workspace = malloc(2 * rungs * sizeof *workspace);
    if (workspace == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t i = 0; i < study->choices; i++)
        judge(study, i, rungs, workspace, workspace + rungs);
    free(workspace);
    qsort(study->choice, study->choices, sizeof study->choice[0], better_first);
    *choices = study->choice;
    *count = study->choices;
    *reached = study->rung[rungs - 1].boost;
    return CG_OK;
}
