#include "card_table.h"

#include "summary.h"
#include "table.h"

#define MM 1e3
#define UM 1e6
#define OIL 1e5 /* mm3/cm2 from m3/m2 */
#define PCT 100.0

struct cg_key_values cg_card_keys(const struct cg_card *card)
{
    const struct cg_case *c = &card->build->updated.c;
    const struct cg_finish_order *order = &card->order;
    return (struct cg_key_values){{
        {"filing_step", "mm", c->margin.filing_step * MM},
        {"too_wide_top", "mm", card->asked[0].too_wide * MM},
        {"too_wide_second", "mm", card->asked[1].too_wide * MM},
        {"skirt_clearance", "mm", c->piston.skirt_clearance * MM},
        {"Vo_needed", "mm3/cm2", order->oil.low * OIL},
        {"Rpk_most", "um", order->rpk.high * UM},
        {"Rk_most", "um", order->rk.high * UM},
        {"Rvk_least", "um", order->rvk.low * UM},
        {"Rvk_most", "um", order->rvk.high * UM},
        {"Mr1_most", "%", order->mr1.high * PCT},
        {"Mr2_least", "%", order->mr2.low * PCT},
        {"Mr2_most", "%", order->mr2.high * PCT},
        {"Vo_most", "mm3/cm2", order->oil.high * OIL},
        {"crosshatch", "deg", order->crosshatch_deg},
        {"base_grit", "1", order->base_grit},
        {"plateau_grit", "1", order->plateau_grit},
    }};
}

enum cg_status cg_card_table_write(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_card *card,
                                   struct cg_error *error)
{
    struct cg_key_values keys = cg_card_keys(card);
    struct cg_table_head head = {"Build card", of, CG_KEY_COLUMNS, NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "card.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_summary_put(table, &card->build->updated.c, &card->build->answer);
    cg_table_keys(table, &keys);
    return cg_table_close(table, CG_OK, error);
}
