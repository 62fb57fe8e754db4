/* Evidence that cannot be true is refused, and says which entry is at odds. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>

#include <gsl/gsl_cdf.h>

#include "constants.h"
#include "evidence_work.h"
#include "uncertain.h"

enum { ENTRY_TEXT = 96 };

/* A pair explains a contradiction when it is worse than either alone by this
 * many standard deviations. */
#define PAIR_WORSE 1.0

/* Refused before anything is fitted: so far off that the fit would leave what
 * the model can compute. */
#define FAR_OFF 6.0

/* What is being looked at. */
struct look {
    const struct cg_evidence *evidence;
    const struct cg_posterior_model *model;
    const struct cg_posterior *posterior;
    struct cg_error *error;
};

static void write_entry(const struct cg_evidence *evidence, size_t i,
                        char text[ENTRY_TEXT])
{
    const struct cg_evidence_entry *entry = &evidence->entry[i];
    char line[24] = "";
    if (entry->line > 0)
        snprintf(line, sizeof line, ", line %u", entry->line);
    if (entry->what == CG_EVIDENCE_ENDS)
        snprintf(text, ENTRY_TEXT, "evidence[%zu] (ends %s at %.3g mm%s)", i,
                 entry->touched ? "touched" : "did not touch",
                 entry->cold_gap * 1e3, line);
    else if (entry->what == CG_EVIDENCE_COOLANT)
        snprintf(text, ENTRY_TEXT, "evidence[%zu] (%s %.3g %%%s)", i,
                 cg_evidence_name(entry->what), entry->share * 100.0, line);
    else
        snprintf(text, ENTRY_TEXT, "evidence[%zu] (%s %.4g C%s)", i,
                 cg_evidence_name(entry->what),
                 entry->temperature - CG_ZERO_CELSIUS, line);
}

/* Deviation of entry `one` from the prior with all others (`other` as large
 * as the number of entries: all; SIZE_MAX: none; else that one alone). */
static enum cg_status deviation(const struct look *look, size_t one,
                                size_t other, double *off)
{
    bool given[CG_EVIDENCE];
    for (size_t i = 0; i < CG_EVIDENCE; i++)
        given[i] = other == look->evidence->entries || i == other;
    return cg_posterior_deviation(look->model, look->posterior, one, given, off,
                                  look->error);
}

/* The entry farthest off the rest, and how far. */
static enum cg_status find_worst(const struct look *look, size_t *worst,
                                 double *most)
{
    *worst = 0;
    *most = 0.0;
    for (size_t i = 0; i < look->evidence->entries; i++) {
        double off = 0.0;
        enum cg_status status =
            deviation(look, i, look->evidence->entries, &off);
        if (status != CG_OK)
            return status;
        /* By more than rounding, so that the first of equals is named. */
        if (fabs(off) > *most * (1.0 + 1e-6)) {
            *most = fabs(off);
            *worst = i;
        }
    }
    return CG_OK;
}

/* Says who is at odds with whom: another entry, the model, or the rest. */
static enum cg_status refuse(const struct look *look, size_t worst, double most)
{
    const struct cg_evidence *evidence = look->evidence;
    char one[ENTRY_TEXT], two[ENTRY_TEXT];
    double alone = 0.0, off = 0.0, pair = 0.0;
    size_t other = worst;
    enum cg_status status = deviation(look, worst, SIZE_MAX, &alone);
    for (size_t i = 0; i < evidence->entries && status == CG_OK; i++) {
        if (i == worst)
            continue;
        status = deviation(look, worst, i, &off);
        if (fabs(off) > fabs(pair)) {
            pair = off;
            other = i;
        }
    }
    if (status != CG_OK)
        return status;
    write_entry(evidence, worst < other ? worst : other, one);
    write_entry(evidence, worst < other ? other : worst, two);
    if (fabs(pair) > fabs(alone) + PAIR_WORSE)
        return cg_error_set(look->error, CG_BAD_INPUT,
                            "%s and %s contradict each other: %.1f standard "
                            "deviations apart; check both, or widen their "
                            "spreads",
                            one, two, fabs(pair));
    write_entry(evidence, worst, one);
    if (fabs(alone) > 0.7 * most)
        return cg_error_set(look->error, CG_BAD_INPUT,
                            "%s contradicts the model: %.1f standard "
                            "deviations from what the spreads in group "
                            "uncertainty allow",
                            one, fabs(alone));
    return cg_error_set(look->error, CG_BAD_INPUT,
                        "%s contradicts the rest of the evidence: %.1f "
                        "standard deviations apart; check it, or widen its "
                        "spread",
                        one, most);
}

/* Inputs moved farther than any belief: which, and how far. */
static enum cg_status check_inputs(const struct cg_evidence_work *work,
                                   const struct look *look)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    double u[CG_INPUTS] = {0.0}, score[CG_INPUTS];
    for (size_t k = 0; k < work->shared; k++)
        u[k] = look->posterior->mean[k];
    cg_input_law_scores(&work->law, u, score);
    for (size_t i = 0; i < work->shared; i++)
        if (fabs(score[i]) > CG_EVIDENCE_FARTHEST)
            return cg_error_set(
                look->error, CG_BAD_INPUT,
                "evidence moves uncertainty.%s by %.1f of its standard "
                "deviations, at most %g are believed; check the evidence and "
                "the config",
                inputs[work->row[i]].name, fabs(score[i]),
                CG_EVIDENCE_FARTHEST);
    return CG_OK;
}

enum cg_status cg_evidence_check(const struct cg_evidence_work *work,
                                 const struct cg_posterior_model *model,
                                 const struct cg_posterior *posterior,
                                 bool fitted, struct cg_error *error)
{
    struct look look = {work->evidence, model, posterior, error};
    size_t worst;
    double most, together;
    enum cg_status status = find_worst(&look, &worst, &most);
    if (status == CG_OK)
        status = cg_posterior_chance(model, posterior, &together, error);
    if (status != CG_OK)
        return status;
    if (!fitted)
        return most > FAR_OFF ? refuse(&look, worst, most) : CG_OK;
    double alone = 2.0 * gsl_cdf_ugaussian_Q(most);
    if (alone * (double)work->evidence->entries < CG_EVIDENCE_CHANCE ||
        together < CG_EVIDENCE_CHANCE)
        return refuse(&look, worst, most);
    return check_inputs(work, &look);
}
