#include "rings_tables.h"

#include <math.h>
#include <stdio.h>

#include "constants.h"
#include "table.h"

static void write_ring(struct cg_table *table,
                       const struct cg_ring_choice *choice)
{
    char reason[CG_REASON];
    const struct cg_band *limit = choice->limit;
    const double *load = choice->load;
    cg_ring_reason(choice, false, reason);
    cg_table_note(table, "%s, %s: %s", choice->material->name,
                  choice->face->name, reason);
    cg_table_line(
        table,
        "%s %s %.7g %.7g %.7g %.7g %s %.7g %.7g %.7g %.7g %.7g %.7g %.7g %.7g "
        "%.7g %.7g %.7g %.7g %.7g %.7g %.7g %s %d %s %.7g",
        cg_table_word(choice->material->name).text,
        cg_table_word(choice->face->name).text, choice->cold_gap * 1e3,
        choice->ring - CG_ZERO_CELSIUS, choice->tension_left.low * 100.0,
        choice->stops_fitting / 1e3, cg_ring_verdict_text(choice->verdict),
        choice->unfit_from / 1e3, choice->tension_left.high * 100.0,
        limit[CG_LIMIT_RING_HEAT].low - CG_ZERO_CELSIUS,
        limit[CG_LIMIT_RING_HEAT].high - CG_ZERO_CELSIUS,
        load[CG_LIMIT_FACE_HEAT] - CG_ZERO_CELSIUS,
        limit[CG_LIMIT_FACE_HEAT].low - CG_ZERO_CELSIUS,
        limit[CG_LIMIT_FACE_HEAT].high - CG_ZERO_CELSIUS,
        load[CG_LIMIT_PRESSURE] / 1e5, limit[CG_LIMIT_PRESSURE].low / 1e5,
        limit[CG_LIMIT_PRESSURE].high / 1e5, load[CG_LIMIT_RISE] / 1e5,
        limit[CG_LIMIT_RISE].low / 1e5, limit[CG_LIMIT_RISE].high / 1e5,
        choice->coat_effect, cg_face_hardness(choice->face, choice->material),
        cg_table_word(cg_face_hardness_class(
                          cg_face_hardness(choice->face, choice->material)))
            .text,
        choice->own ? 1 : 0, cg_table_word(cg_ring_limit_told(choice)).text,
        choice->file_to.file_to * 1e3);
}

static enum cg_status write_rings(const char *dir, const struct cg_table_of *of,
                                  const struct cg_case *c,
                                  const struct cg_rings_answer *answer,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Top rings for this engine and duty, the best first; limits are bands, "
        "mostly common practice, see the material files",
        of,
        "material  face  cold_gap_mm  ring_top_C  tension_left_pct  "
        "stops_fitting_kPa  verdict  unfit_from_kPa  tension_left_high_pct  "
        "ring_low_C  ring_high_C  face_C  face_low_C  face_high_C  peak_bar  "
        "peak_low_bar  peak_high_bar  rise_bar_deg  rise_low_bar_deg  "
        "rise_high_bar_deg  coat_K  hardness_HV  hardness  own  limit  "
        "file_to_mm",
        "limit: what a ring is told by, its loads in the line above it"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "rings.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "boost %.7g kPa; a boost of %.7g kPa is the highest "
                  "looked at: not before it", c->charge.boost / 1e3,
                  answer->reached / 1e3);
    cg_table_note(table, "tension after %.7g h at the duty's hottest%s",
                  c->ring[CG_RING_TOP].service / 3600.0,
                  c->combustion.ignition == CG_IGNITION_SPARK
                      ? "; knock is not in the pressure rise"
                      : "");
    for (size_t i = 0; i < answer->rings; i++)
        write_ring(table, &answer->ring[i]);
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_pistons(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_rings_answer *answer,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "Piston alloys for this engine and duty: cold skirt clearance asked, "
        "diametral, and what the trade fits (common practice, no source)",
        of,
        "alloy  cold_skirt_mm  closure_mm  spread_mm  spring_mm  trade_low_mm  "
        "trade_high_mm  hot_skirt_mm  skirt_C  groove_top_C  crown_C  "
        "cold_gap_mm  own",
        "hot skirt: with the trade's middle; cold gap: of the top ring"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "pistons.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < answer->alloys; i++) {
        const struct cg_alloy_choice *a = &answer->alloy[i];
        cg_table_line(table,
                      "%s %.7g %.7g %.7g %.7g %.7g %.7g %.7g %.7g %.7g %.7g "
                      "%.7g %d",
                      cg_table_word(a->alloy->name).text, a->skirt.cold * 1e3,
                      a->skirt.closure * 1e3, a->skirt.spread * 1e3,
                      a->skirt.give * 1e3, a->skirt.trade.low * 1e3,
                      a->skirt.trade.high * 1e3, a->clearance.skirt * 1e3,
                      a->skirt_at - CG_ZERO_CELSIUS,
                      a->groove - CG_ZERO_CELSIUS, a->crown - CG_ZERO_CELSIUS,
                      a->cold_gap * 1e3, a->own ? 1 : 0);
    }
    return cg_table_close(table, CG_OK, error);
}

enum cg_status cg_rings_tables_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_case *c,
                                     const struct cg_rings_answer *answer,
                                     struct cg_error *error)
{
    enum cg_status status = write_rings(dir, of, c, answer, error);
    if (status == CG_OK)
        status = write_pistons(dir, of, answer, error);
    return status;
}
