#include "duties_table.h"

#include "constants.h"
#include "table.h"

void cg_file_to_note(struct cg_table *table, const struct cg_answer *answer)
{
    if (answer->file_to_top.from != CG_ADVICE_NONE)
        cg_table_note(table, "file to %.4g mm",
                      answer->file_to_top.file_to * 1e3);
}

enum cg_status cg_duties_table_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_answer *answer,
                                     struct cg_error *error)
{
    struct cg_table_head head = {
        "The duties that the engine must survive, the one asked for first", of,
        "duty  closure_top_mm  gap_needed_top_mm  gap_needed_second_mm  "
        "ring_top_C  groove_top_C  tightest_s  tightest_mm  hardest  "
        "spread_top_mm  residual_mm",
        "gap_needed_second: by its own closure; tightest_mm: below the deck; "
        "hardest: 1 on the top ring"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "duties.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_file_to_note(table, answer);
    cg_table_note(table, "shop rule %.4g mm", answer->shop_rule * 1e3);
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        const struct cg_extremes *e = &duty->extremes;
        cg_table_line(table,
                      "%s %.7g %.7g %.7g %.7g %.7g %.7g %.7g %d %.7g %.7g",
                      cg_table_word(duty->name).text, duty->top.closure * 1e3,
                      duty->top.cold_gap * 1e3, duty->second.cold_gap * 1e3,
                      e->ring_top_max - CG_ZERO_CELSIUS,
                      e->groove_top_max - CG_ZERO_CELSIUS, e->time,
                      e->depth * 1e3, i == answer->hardest ? 1 : 0,
                      duty->top.spread * 1e3, duty->top.residual * 1e3);
    }
    return cg_table_close(table, CG_OK, error);
}
