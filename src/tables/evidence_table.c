#include "evidence_table.h"

#include <math.h>

#include "constants.h"
#include "table.h"
#include "uncertain.h"

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

static void write_entries(struct cg_table *table,
                          const struct cg_updated_case *updated)
{
    const struct cg_learned *learned = &updated->learned;
    cg_table_block(table, "entries");
    cg_table_line(table, "# what  measured [C; 1: a share; mm: cold gap of a sign]  "
                         "spread [K; 1; mm]  before [C; 1; mm: hot gap "
                         "left]  after [C; 1; mm]");
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        cg_table_line(table, "%s%s %.7g %.7g %.7g %.7g",
                      cg_evidence_name(entry->what),
                      !is_sign(entry)  ? ""
                      : entry->touched ? "_touched"
                                       : "_apart",
                      in_table(entry, measured(entry)),
                      is_sign(entry) ? entry->spread * 1e3 : entry->spread,
                      in_table(entry, learned->before[i]),
                      in_table(entry, learned->after[i]));
    }
}

enum cg_status cg_evidence_write(const char *dir, const char *config,
                                 const struct cg_updated_case *updated,
                                 struct cg_error *error)
{
    const struct cg_learned *learned = &updated->learned;
    struct cg_table_head head = {
        "Evidence: the model before and after it, and what it taught", config,
        NULL};
    struct cg_table *table;
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    if (learned->entries == 0)
        return cg_table_drop(dir, "evidence.dat", error);
    enum cg_status status =
        cg_table_open(dir, "evidence.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    write_entries(table, updated);
    cg_table_block(table, "inputs");
    cg_table_line(table, "# input  moved [standard deviations of before]  "
                         "width [1, spread over that of before]");
    for (size_t i = 0; i < count; i++)
        cg_table_line(table, "%s %.7g %.7g", inputs[i].name, learned->mean[i],
                      sqrt(learned->covariance[i][i]));
    cg_table_block(table, "correlations");
    cg_table_line(table, "# input  input  correlation [1], where it is at "
                         "least 0.01");
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
