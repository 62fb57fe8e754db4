#include "evidence_table.h"

#include <math.h>

#include "constants.h"
#include "table.h"
#include "uncertain.h"

#define ENTRIES "evidence.dat"
#define INPUTS "evidence_inputs.dat"
#define CORRELATIONS "evidence_correlations.dat"

static bool is_sign(const struct cg_evidence_entry *entry)
{
    return entry->what == CG_EVIDENCE_ENDS;
}

/* C, a share, or mm of a sign. */
static double in_table(const struct cg_evidence_entry *entry, double value)
{
    if (entry->what == CG_EVIDENCE_COOLANT)
        return value;
    return is_sign(entry) ? value * 1e3 : value - CG_ZERO_CELSIUS;
}

static double measured(const struct cg_evidence_entry *entry)
{
    if (entry->what == CG_EVIDENCE_COOLANT)
        return entry->share;
    return is_sign(entry) ? entry->cold_gap : entry->temperature;
}

static const char *unit_of(const struct cg_evidence_entry *entry)
{
    if (entry->what == CG_EVIDENCE_COOLANT)
        return "1";
    return is_sign(entry) ? "mm" : "C";
}

static enum cg_status write_entries(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_updated_case *updated,
                                    struct cg_error *error)
{
    const struct cg_learned *learned = &updated->learned;
    struct cg_table_head head = {
        "Evidence: the model before and after it", of,
        "what  measured  spread  before  after  unit  engine",
        "measured: temperature, share of the fuel, or cold gap of a sign; before, after: the same "
        "by the model, or hot gap left; a spread in C is one of kelvins; "
        "engine: 0 is this one, others as the notebook has them"};
    struct cg_table *table;
    enum cg_status status = cg_table_open(dir, ENTRIES, &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        bool sign = is_sign(entry);
        cg_table_line(table, "%s%s %.7g %.7g %.7g %.7g %s %zu",
                      cg_evidence_name(entry->what),
                      !sign            ? ""
                      : entry->touched ? "_touched"
                                       : "_apart",
                      in_table(entry, measured(entry)),
                      sign ? entry->spread * 1e3 : entry->spread,
                      in_table(entry, learned->before[i]),
                      in_table(entry, learned->after[i]), unit_of(entry),
                      entry->engine);
    }
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_inputs(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_learned *learned,
                                   struct cg_error *error)
{
    struct cg_table_head head = {
        "What was learned of each uncertain input", of,
        "input  moved  width",
        "moved: in standard deviations of before; width: spread over that of "
        "before"};
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    struct cg_table *table;
    enum cg_status status = cg_table_open(dir, INPUTS, &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < count; i++)
        cg_table_line(table, "%s %.7g %.7g", inputs[i].name, learned->mean[i],
                      sqrt(learned->covariance[i][i]));
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_correlations(const char *dir,
                                         const struct cg_table_of *of,
                                         const struct cg_learned *learned,
                                         struct cg_error *error)
{
    struct cg_table_head head = {
        "How the evidence correlates the uncertain inputs", of,
        "input  with  correlation", "those of at least 0.01"};
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, CORRELATIONS, &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++) {
            double r = learned->covariance[i][j] /
                       sqrt(learned->covariance[i][i] *
                            learned->covariance[j][j]);
            if (fabs(r) >= 0.01)
                cg_table_line(table, "%s %s %.7g", inputs[j].name,
                              inputs[i].name, r);
        }
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status drop_all(const char *dir, struct cg_error *error)
{
    enum cg_status status = cg_table_drop(dir, ENTRIES, error);
    if (status == CG_OK)
        status = cg_table_drop(dir, INPUTS, error);
    if (status == CG_OK)
        status = cg_table_drop(dir, CORRELATIONS, error);
    return status;
}

enum cg_status cg_evidence_write(const char *dir, const struct cg_table_of *of,
                                 const struct cg_updated_case *updated,
                                 struct cg_error *error)
{
    const struct cg_learned *learned = &updated->learned;
    if (learned->entries == 0)
        return drop_all(dir, error);
    enum cg_status status = write_entries(dir, of, updated, error);
    if (status == CG_OK)
        status = write_inputs(dir, of, learned, error);
    if (status == CG_OK)
        status = write_correlations(dir, of, learned, error);
    return status;
}
