#include "seal_tables.h"

#include <math.h>

#include "ports_text.h"
#include "seal_tradeoff.h"
#include "table.h"

struct cg_key_values cg_seal_keys(const struct cg_seal_study *s)
{
    const struct cg_seal_answer *at = &s->at_rated, *other = &s->at_other;
    const struct cg_seal *at_speed = s->hardest != NULL ? s->hardest : s->rated;
    const struct cg_seal_answer *hard =
        s->hardest != NULL ? &s->at_hardest : at;
    const struct cg_pack_cycle *cycle = &at->settled.cycle;
    return (struct cg_key_values){{
        {"blow_by", "g/s", at->blow_by * 1e3},
        {"blow_by_share", "%", at->blow_by_share * 100.0},
        {"blow_by_volume", "L/min", at->blow_by_volume * 6e4},
        {"unseat_angle", "deg", cycle->unseat_deg[0]},
        {"cold_gap_second", "mm", s->answer.second.cold_gap * 1e3},
        {"groove_lag", "deg", at->groove_lag_deg},
        {"face_load", "N", at->face_load},
        {"power_loss_per_gap", "W", s->power_loss},
        {"mass_residual", "1", cycle->residual},
        {"blow_by_per_power", "L/min/kW",
         at->blow_by_volume * 6e4 / (s->rated->performance.brake_power / 1e3)},
        {"cold_gap_top_fitted", "mm", s->gap[0] * 1e3},
        {"cold_gap_second_fitted", "mm", s->gap[1] * 1e3},
        {"hot_gap_top", "mm", at->hot_gap[0] * 1e3},
        {"hot_gap_second", "mm", at->hot_gap[1] * 1e3},
        {"unseat_angle_second", "deg", cycle->unseat_deg[1]},
        {"lifts_top", "1", cycle->lifts[0]},
        {"lifts_second", "1", cycle->lifts[1]},
        {"pushed_off_top", "deg", cycle->given_way_deg[0]},
        {"pushed_off_second", "deg", cycle->given_way_deg[1]},
        {"land_peak", "bar", at->land_peak / 1e5},
        {"groove_peak", "%", at->groove_peak * 100.0},
        {"face_load_least", "N", at->face_load_least},
        {"friction_power_top", "W", s->friction.power[0]},
        {"friction_power_second", "W", s->friction.power[1]},
        {"crevice_share", "%", at->crevice_share * 100.0},
        {"crevice_late", "%", at->crevice_late * 100.0},
        {"reverse_share", "%", at->reverse_share * 100.0},
        {"cylinder_uncorrected", "%", at->leaked_share * 100.0},
        {"cycle_change", "1", at->settled.change},
        {"cycle_period", "1", at->settled.period},
        {"other_ports_blow_by", "g/s", other->blow_by * 1e3},
        {"other_ports_groove_lag", "deg", other->groove_lag_deg},
        {"other_ports_face_load", "N", other->face_load},
        {"hardest_speed", "rpm", at_speed->pack.speed * 60.0},
        {"hardest_unseat_angle", "deg", hard->settled.cycle.unseat_deg[0]},
        {"hardest_blow_by", "g/s", hard->blow_by * 1e3},
        {"hardest_blow_by_share", "%", hard->blow_by_share * 100.0},
    }};
}

static enum cg_status write_keys(const char *dir, const struct cg_table_of *of,
                                 const struct cg_seal_study *s,
                                 struct cg_error *error)
{
    struct cg_key_values keys = cg_seal_keys(s);
    struct cg_table_head head = {
        "Gas past the rings, at rated speed and full load unless it says "
        "hardest (lowest speed of the duty at full load)",
        of, CG_KEY_COLUMNS, NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "seal.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "power_loss_per_gap is for 0.05 mm of top gap; an "
                         "unseat angle of 720 deg: never");
    cg_table_note(table, "other_ports: %s",
                  cg_ports_text(s->c, s->other_ports, false).text);
    cg_table_keys(table, &keys);
    return cg_table_close(table, CG_OK, error);
}

/* One block: a row for each degree. */
static void write_block(struct cg_table *table, const struct cg_seal *seal,
                        const char *label)
{
    double degree_time = 1.0 / (360.0 * seal->pack.speed);
    cg_table_block(table, "%s, %.0f rpm", label, seal->pack.speed * 60.0);
    for (size_t i = 0; i < CG_PACK_NODES; i++) {
        const struct cg_pack_record *r = &seal->record[i];
        double down = r->flow[CG_PACK_FLOW(0, CG_WAY_GAP)] +
                      r->flow[CG_PACK_FLOW(0, CG_WAY_FACE)] +
                      r->flow[CG_PACK_FLOW(0, CG_WAY_LOWER)];
        double out = r->flow[CG_PACK_FLOW(1, CG_WAY_GAP)] +
                     r->flow[CG_PACK_FLOW(1, CG_WAY_FACE)] +
                     r->flow[CG_PACK_FLOW(1, CG_WAY_LOWER)];
        double values[] = {cg_pack_angle(i),
                           r->pressure[CG_PACK_CYLINDER] / 1e5,
                           r->pressure[CG_PACK_GROOVE_TOP] / 1e5,
                           r->pressure[CG_PACK_LAND] / 1e5,
                           r->pressure[CG_PACK_GROOVE_SECOND] / 1e5,
                           r->lift[0] * 1e6,
                           r->lift[1] * 1e6,
                           r->load[0],
                           r->load[1],
                           down / degree_time * 1e3,
                           out / degree_time * 1e3,
                           seal->pack.ring[0].travel * 1e6};
        cg_table_row(table, values, sizeof values / sizeof values[0]);
    }
}

static enum cg_status write_cycle(const char *dir, const struct cg_table_of *of,
                                  const struct cg_seal_study *s,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Ring pack over the cycle, full load: as fitted, with the other gas "
        "ports, and at the duty's lowest speed there; 0 deg is TDC "
        "firing; flows of one cylinder",
        of,
        "crank_deg  cylinder_bar  groove_top_bar  land_bar  groove_second_bar  "
        "lift_top_um  lift_second_um  load_top_N  load_second_N  past_top_g_s  "
        "past_second_g_s  travel_top_um  block",
        "pressures: absolute; lift: above the lower flank; load: on the "
        "bore"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "seal_cycle.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    write_block(table, s->rated,
                cg_ports_text(s->c, (enum cg_port_kind)s->c->seal.ports, false).text);
    write_block(table, s->other, cg_ports_text(s->c, s->other_ports, false).text);
    write_block(table, s->hardest != NULL ? s->hardest : s->rated,
                cg_ports_text(s->c, (enum cg_port_kind)s->c->seal.ports, false).text);
    return cg_table_close(table, CG_OK, error);
}

static void write_tradeoff(struct cg_table *table,
                           const struct cg_tradeoff *tradeoff)
{
    cg_table_block(table, "%.0fkPa file_to %.4gmm", tradeoff->boost / 1e3,
                   tradeoff->file_to * 1e3);
    for (int i = 0; i < CG_TRADEOFF_POINTS; i++) {
        const struct cg_tradeoff_point *at = &tradeoff->point[i];
        double values[] = {at->gap * 1e3, at->chance_less, at->chance_touch,
                           at->blow_by * 1e3, at->blow_by_share * 100.0};
        cg_table_row(table, values, sizeof values / sizeof values[0]);
    }
}

/* Gaps from a third of the one looked at to twice that. */
static enum cg_status write_gaps(const char *dir, const struct cg_table_of *of,
                                 const struct cg_seal_study *s,
                                 struct cg_error *error)
{
    struct cg_table_head head = {
        "What a top gap risks and what it leaks (rated speed, full load), a "
        "block each boost; the second gap keeps its ratio to the top gap",
        of,
        "gap_mm  chance_less  chance_touch  blow_by_g_s  blow_by_pct  block",
        "gap: cold; chance: of less than the minimum hot gap, of the ends "
        "touching; "
        "blow-by: also in % of the charge"};
    struct cg_table *table;
    double boost[3], top = fmax(s->gap[0], 0.1e-3);
    double ratio = s->gap[0] > 0.0 ? s->gap[1] / s->gap[0] : 1.0;
    enum cg_status status =
        cg_table_open(dir, "seal_gap.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "top gap looked at %.4g mm, second %.4g times that",
                  s->gap[0] * 1e3, ratio);
    int boosts = cg_seal_tradeoff_boosts(s->c, boost);
    for (int i = 0; i < boosts && status == CG_OK; i++) {
        struct cg_tradeoff tradeoff = {.boost = boost[i]};
        status = cg_seal_tradeoff(s->c, top / 3.0, 2.0 * top, ratio, &tradeoff,
                               error);
        if (status == CG_OK)
            write_tradeoff(table, &tradeoff);
    }
    return cg_table_close(table, status, error);
}

enum cg_status cg_seal_tables_write(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_seal_study *study,
                                    struct cg_error *error)
{
    enum cg_status status = write_keys(dir, of, study, error);
    if (status == CG_OK)
        status = write_cycle(dir, of, study, error);
    if (status == CG_OK)
        status = write_gaps(dir, of, study, error);
    return status;
}
