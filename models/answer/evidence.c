#include "evidence.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evidence_work.h"
#include "uncertain.h"

/* Spreads: common practice, no source. */
static const struct cg_evidence_way ways[] = {
    {"thermocouple", 5.0, true, "reads as it runs"},
    {"thermal_plug", 10.0, false, "a plug that softens, read afterwards"},
    {"hardness", 15.0, false, "hardness lost by the part itself"},
};

const struct cg_evidence_way *cg_evidence_ways(size_t *count)
{
    *count = sizeof ways / sizeof ways[0];
    return ways;
}

const char *cg_evidence_name(enum cg_evidence_what what)
{
    static const char *const names[] = {"crown",       "groove_top",
                                        "ring_top",    "ring_second",
                                        "liner",       "exhaust_probe",
                                        "coolant_share", "ends"};
    return names[what];
}

bool cg_evidence_is_steady(enum cg_evidence_what what)
{
    return what == CG_EVIDENCE_PROBE || what == CG_EVIDENCE_COOLANT;
}

size_t cg_evidence_others(const struct cg_evidence *evidence)
{
    size_t others = 0;
    for (size_t i = 0; i < evidence->entries; i++)
        others += evidence->entry[i].engine > 0;
    return others;
}

void cg_evidence_free(struct cg_evidence *evidence)
{
    free(evidence->run);
    memset(evidence, 0, sizeof *evidence);
}

/* Inputs in their three kinds. */
static void choose_inputs(struct cg_evidence_work *work)
{
    const struct cg_evidence *evidence = work->evidence;
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    for (int kind = 0; kind < 3; kind++) {
        for (size_t i = 0; i < count; i++) {
            int own = all[i].direct ? 2 : cg_uncertain_is_condition(&all[i]);
            bool moves = false;
            for (size_t r = 0; r < evidence->runs; r++)
                moves = moves ||
                        cg_uncertain_spread(&all[i], &evidence->run[r]) > 0.0;
            if (own == kind && moves)
                work->row[work->inputs++] = i;
        }
        if (kind == 0)
            work->shared = work->inputs;
        if (kind == 1)
            work->moving = work->inputs;
    }
}

enum cg_status cg_evidence_learn(const struct cg_evidence *evidence,
                                 struct cg_learned *learned,
                                 struct cg_error *error)
{
    struct cg_learned fresh = {.entries = evidence->entries};
    struct cg_evidence_work *work = NULL;
    enum cg_status status = CG_OK;
    if (evidence->entries == 0)
        goto out;
    work = calloc(1, sizeof *work);
    if (work == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    work->evidence = evidence;
    choose_inputs(work);
    if (work->shared == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "evidence: no input has a spread in group "
                              "uncertainty, so that none can be learned");
    if (status == CG_OK)
        status = cg_input_law_fill(&evidence->run[0], work->row, work->inputs,
                                   &work->law, error);
    if (status == CG_OK)
        status = cg_evidence_fit(work, &fresh, error);
    for (size_t r = 0; r < CG_EVIDENCE_RUNS; r++)
        cg_duty_run_free(work->run[r]);
    free(work);
out:
    if (status == CG_OK)
        *learned = fresh;
    return status;
}
