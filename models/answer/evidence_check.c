/* Evidence that cannot be true is refused, and says which entry is at odds. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>

#include <gsl/gsl_cdf.h>

#include "constants.h"
#include "evidence_work.h"
#include "uncertain.h"

enum { ENTRY_TEXT = 192 };

/* A pair explains a contradiction when it is worse than either alone by this
 * many standard deviations. */
#define PAIR_WORSE 1.0

/* Refused before anything is fitted: so far off that the fit would leave what
 * the model can compute. */
#define FAR_OFF 6.0

/* Closures of equally hard runs differ by less [m]. */
#define SAME 1e-6

/* What is being looked at. */
struct look {
    const struct cg_evidence *evidence;
    bool too_low; /* as in the work */
    const struct cg_posterior_model *model;
    const struct cg_posterior *posterior;
    struct cg_error *error;
};

static void write_entry(const struct cg_evidence *evidence, size_t i,
                        char text[ENTRY_TEXT])
{
    const struct cg_evidence_entry *entry = &evidence->entry[i];
    bool build = entry->from[0] != '\0';
    char from[CG_EVIDENCE_FROM + CG_EVIDENCE_DATE + 8], line[80] = "";
    snprintf(from, sizeof from, "evidence[%zu]", i);
    if (build)
        snprintf(from, sizeof from, "%s%s%s", entry->from,
                 entry->date[0] != '\0' ? " of " : "", entry->date);
    if (entry->line > 0)
        snprintf(line, sizeof line, ", line %u%s%s", entry->line,
                 build ? " of " : "", build ? evidence->notebook : "");
    if (entry->what == CG_EVIDENCE_ENDS)
        snprintf(text, ENTRY_TEXT, "%s (ends %s at %.3g mm%s)", from,
                 entry->touched ? "touched" : "did not touch",
                 entry->cold_gap * 1e3, line);
    else if (entry->what == CG_EVIDENCE_COOLANT)
        snprintf(text, ENTRY_TEXT, "%s (%s %.3g %%%s)", from,
                 cg_evidence_name(entry->what), entry->share * 100.0, line);
    else
        snprintf(text, ENTRY_TEXT, "%s (%s %.4g C%s)", from,
                 cg_evidence_name(entry->what),
                 entry->temperature - CG_ZERO_CELSIUS, line);
}

/* Ends that touched have no say where the model is too low for them. */
static bool has_say(const struct look *look, size_t i)
{
    const struct cg_evidence_entry *entry = &look->evidence->entry[i];
    return !(look->too_low && entry->what == CG_EVIDENCE_ENDS &&
             entry->touched);
}

/* Deviation of entry `one` from the prior with all others (`other` as large
 * as the number of entries: all; SIZE_MAX: none; else that one alone). */
static enum cg_status deviation(const struct look *look, size_t one,
                                size_t other, double *off)
{
    bool given[CG_EVIDENCE];
    for (size_t i = 0; i < CG_EVIDENCE; i++)
        given[i] = i < look->evidence->entries && has_say(look, i) &&
                   (other == look->evidence->entries || i == other);
    return cg_posterior_deviation(look->model, look->posterior, one, given, off,
                                  look->error);
}

/* Whether an entry this far off has less chance than is believed. */
static bool no_chance(const struct cg_evidence *evidence, double off)
{
    return 2.0 * gsl_cdf_ugaussian_Q(off) * (double)evidence->entries <
           CG_EVIDENCE_CHANCE;
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
            has_say(look, i)
                ? deviation(look, i, look->evidence->entries, &off)
                : CG_OK;
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

static enum cg_status refuse_pair(const struct cg_evidence *evidence,
                                  size_t first, size_t other, double off,
                                  struct cg_error *error)
{
    char one[ENTRY_TEXT], two[ENTRY_TEXT];
    write_entry(evidence, first < other ? first : other, one);
    write_entry(evidence, first < other ? other : first, two);
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s and %s contradict each other: %.1f standard "
                        "deviations apart; check both, or widen their spreads",
                        one, two, off);
}

/* Says who is at odds with whom: another entry, the model, or the rest. */
static enum cg_status refuse(const struct look *look, size_t worst, double most)
{
    const struct cg_evidence *evidence = look->evidence;
    char one[ENTRY_TEXT];
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
    if (fabs(pair) > fabs(alone) + PAIR_WORSE)
        return refuse_pair(evidence, worst, other, fabs(pair), look->error);
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
    struct look look = {work->evidence, work->too_low, model, posterior,
                        error};
    size_t worst;
    double most, together;
    enum cg_status status = find_worst(&look, &worst, &most);
    if (status == CG_OK)
        status = cg_posterior_chance(model, posterior, &together, error);
    if (status != CG_OK)
        return status;
    if (!fitted)
        return most > FAR_OFF ? refuse(&look, worst, most) : CG_OK;
    if (no_chance(work->evidence, most) || together < CG_EVIDENCE_CHANCE)
        return refuse(&look, worst, most);
    return work->too_low ? CG_OK : check_inputs(work, &look);
}

/* How far `touched` and `apart` are from being true of one engine [standard
 * deviations]; 0: they may be. */
static double ends_apart(const struct cg_evidence_entry *touched,
                         const struct cg_evidence_entry *apart)
{
    if (touched->what != CG_EVIDENCE_ENDS || apart->what != CG_EVIDENCE_ENDS ||
        !touched->touched || apart->touched ||
        touched->engine != apart->engine)
        return 0.0;
    return fmax(touched->cold_gap - apart->cold_gap, 0.0) /
           hypot(touched->spread, apart->spread);
}

enum cg_status cg_evidence_check_ends(const struct cg_evidence_work *work,
                                      const double *y, struct cg_error *error)
{
    const struct cg_evidence *evidence = work->evidence;
    for (size_t i = 0; i < evidence->entries; i++)
        for (size_t j = 0; j < evidence->entries; j++) {
            double off = ends_apart(&evidence->entry[i], &evidence->entry[j]);
            if (no_chance(evidence, off) && y[j] >= y[i] - SAME)
                return refuse_pair(evidence, i, j, off, error);
        }
    return CG_OK;
}
