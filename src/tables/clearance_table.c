#include "clearance_table.h"

#include "constants.h"
#include "table.h"

enum { COLUMNS = 10 };

enum cg_status cg_clearance_table_write(const char *dir,
                                        const struct cg_table_of *of,
                                        const struct cg_answer *answer,
                                        const struct cg_history *history,
                                        struct cg_error *error)
{
    struct cg_table_head head = {
        "Hot clearances of the piston over the duty: skirt and lands "
        "diametral, side axial, back radial; below 0 the skirt springs",
        of,
        "time_s  skirt_mm  top_land_mm  second_land_mm  third_land_mm  "
        "top_side_mm  top_back_mm  second_side_mm  second_back_mm  skirt_C",
        NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "clearance.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "cold skirt clearance %.4g mm, asked %.4g mm",
                  answer->skirt.given * 1e3, answer->skirt.cold * 1e3);
    for (size_t i = 0; i < history->moments; i++) {
        const struct cg_moment *moment = &history->moment[i];
        const struct cg_clearance *at = &moment->clearance;
        const double values[COLUMNS] = {
            moment->time,
            at->skirt * 1e3,
            at->land[CG_RING_TOP] * 1e3,
            at->land[CG_RING_SECOND] * 1e3,
            at->land[CG_RING_OIL] * 1e3,
            at->side[CG_RING_TOP] * 1e3,
            at->back[CG_RING_TOP] * 1e3,
            at->side[CG_RING_SECOND] * 1e3,
            at->back[CG_RING_SECOND] * 1e3,
            moment->skirt - CG_ZERO_CELSIUS};
        cg_table_row(table, values, COLUMNS);
    }
    return cg_table_close(table, CG_OK, error);
}
