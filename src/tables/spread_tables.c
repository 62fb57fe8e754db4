#include "spread_tables.h"

#include <math.h>
#include <stdio.h>

#include <gsl/gsl_cdf.h>

#include "table.h"

enum { FEWEST_BINS = 8, MOST_BINS = 60 };

static double or_nan(bool given, double value)
{
    return given ? value : NAN;
}

/* Words in one column: a table's words hold no blanks. */
static void one_word(const char *text, char *word, size_t size)
{
    snprintf(word, size, "%s", text);
    for (; *word != '\0'; word++)
        if (*word == ' ')
            *word = '_';
}

enum cg_status cg_sensitivity_write(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_answer *answer,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "What the uncertainty of the closure is made of: first order, and "
        "total effect by sampling",
        of,
        "input  spread_mm  share  total_effect  words",
        "spread: of closure, for one standard deviation of the input; share "
        "and total effect: of the variance; nan: not sampled"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "sensitivity.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < answer->contributions; i++) {
        const struct cg_contribution *at = &answer->contribution[i];
        char words[64];
        one_word(at->doc, words, sizeof words);
        if (isnan(at->total_effect))
            cg_table_line(table, "%s %.7g %.7g nan %s", at->name,
                          at->shift * 1e3, at->share, words);
        else
            cg_table_line(table, "%s %.7g %.7g %.7g %s", at->name,
                          at->shift * 1e3, at->share, at->total_effect, words);
    }
    return cg_table_close(table, CG_OK, error);
}

/* Twice the cube root of the number (the Rice rule; Lane, "Introduction to
 * Statistics"). */
static size_t bins_for(size_t count)
{
    double bins = ceil(2.0 * cbrt((double)count));
    return (size_t)fmin(fmax(bins, FEWEST_BINS), MOST_BINS);
}

/* Share of the first-order normal distribution between two closures, over
 * their distance [1/m]. */
static double first_order_density(const struct cg_answer *answer, double low,
                                  double high)
{
    double below = (low - answer->extremes.closure) / answer->sigma;
    double above = (high - answer->extremes.closure) / answer->sigma;
    return (gsl_cdf_ugaussian_P(above) - gsl_cdf_ugaussian_P(below)) /
           (high - low);
}

static void write_bins(struct cg_table *table, const struct cg_answer *answer,
                       const double *closure, size_t count)
{
    size_t bins = bins_for(count), next = 0;
    double first = closure[0];
    double width = (closure[count - 1] - first) / (double)bins;
    if (!(width > 0.0)) { /* nothing varies: one bin around it */
        bins = 1;
        width = 1e-6;
        first -= 0.5 * width;
    }
    for (size_t i = 0; i < bins; i++) {
        double low = first + width * (double)i;
        double high = first + width * (double)(i + 1);
        size_t begun = next;
        while (next < count && (i + 1 == bins || closure[next] < high))
            next++;
        double in = (double)(next - begun);
        double values[5] = {
            low * 1e3, high * 1e3, in, in / (double)count / (width * 1e3),
            or_nan(answer->sigma > 0.0,
                   first_order_density(answer, low, high) / 1e3)};
        cg_table_row(table, values, 5);
    }
}

enum cg_status cg_histogram_write(const char *dir, const struct cg_table_of *of,
                                  const struct cg_confidence_work *work,
                                  const struct cg_answer *answer,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Top ring's closure, sampled over the uncertain inputs", of,
        "bin_low_mm  bin_high_mm  count  density_per_mm  "
        "first_order_density_per_mm",
        NULL};
    const struct cg_confidence *found = &answer->confidence;
    struct cg_table *table;
    if (work == NULL)
        return cg_table_drop(dir, "histogram.dat", error);
    size_t count;
    const double *closure = cg_confidence_closures(work, &count);
    enum cg_status status =
        cg_table_open(dir, "histogram.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "%zu samples, %zu failed, seed %lu", found->samples,
                  found->failures, found->seed);
    cg_table_note(table, "mean %.7g mm, standard deviation %.7g mm",
                  found->mean * 1e3, found->sd * 1e3);
    cg_table_note(table, "quantile %.7g mm, standard error %.3g mm, "
                  "first order %.7g mm",
                  found->quantile * 1e3, found->quantile_error * 1e3,
                  (found->first_order.closure + found->first_order.spread) *
                      1e3);
    write_bins(table, answer, closure, count);
    return cg_table_close(table, CG_OK, error);
}
