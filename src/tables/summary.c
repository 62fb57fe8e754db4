/* The keys of summary.dat.  The gap needed and its parts are those of the duty
 * hardest on the top ring; instants, temperatures and the hot gap those of the
 * duty asked for, as history.dat has it: lengths mm, times s, temperatures C,
 * pressures bar, power kW, flows kg/h, angles deg, films um. */
#include "summary.h"

#include "constants.h"

/* Least in the duty asked for, of the gap looked at, as history.dat has it: the
 * closure is that of a gap with just the minimum left, and a ring with a wider
 * one has less arc to grow. */
static double hot_gap(const struct cg_case *c, const struct cg_answer *a)
{
    const struct cg_extremes *e = &a->extremes;
    double more = a->verdict.gap - e->closure - c->margin.residual;
    double strain = e->ring_growth / (CG_PI * c->engine.bore);
    return c->margin.residual + more * (1.0 + strain);
}

#define KEY(name, expression)                                                \
    static double get_##name(const struct cg_case *c,                        \
                             const struct cg_answer *a)                      \
    {                                                                        \
        (void)c;                                                             \
        (void)a;                                                             \
        return expression;                                                   \
    }

KEY(cold_gap_top, cg_answer_needed(a)->cold_gap * 1e3)
KEY(closure_top, cg_answer_needed(a)->closure * 1e3)
KEY(closure_per_bore, cg_answer_needed(a)->closure / c->engine.bore)
KEY(gap_per_bore, cg_answer_needed(a)->cold_gap / c->engine.bore)
KEY(spread_top, cg_answer_needed(a)->spread * 1e3)
KEY(residual, cg_answer_needed(a)->residual * 1e3)
KEY(cold_gap_second, a->second.cold_gap * 1e3)
KEY(tightest_time, a->extremes.time)
KEY(tightest_stroke, a->extremes.depth * 1e3)
KEY(ring_top_max, a->extremes.ring_top_max - CG_ZERO_CELSIUS)
KEY(groove_top_max, a->extremes.groove_top_max - CG_ZERO_CELSIUS)
KEY(crown_max, a->extremes.crown_max - CG_ZERO_CELSIUS)
KEY(liner_top_max, a->extremes.liner_top_max - CG_ZERO_CELSIUS)
KEY(liner_coolest, a->extremes.liner_coolest - CG_ZERO_CELSIUS)
KEY(hot_gap_min, hot_gap(c, a) * 1e3)
KEY(imep, a->performance.imep / 1e5)
KEY(brake_power, a->performance.brake_power / 1e3)
KEY(peak_pressure, a->performance.peak_pressure / 1e5)
KEY(air_flow, a->performance.air_flow * 3600.0)
KEY(fuel_flow, a->performance.fuel_flow * 3600.0)
KEY(burn50, a->performance.burn50_deg)
KEY(knock_integral, a->performance.knock_integral)
KEY(energy_residual, a->ledger.residual)
KEY(film_top, a->film[CG_RING_TOP] * 1e6)
KEY(film_second, a->film[CG_RING_SECOND] * 1e6)
KEY(closure_duty, a->extremes.closure * 1e3)
KEY(file_to_top, a->file_to_top.file_to * 1e3)
KEY(file_to_second, a->file_to_second.file_to * 1e3)
KEY(rule_top, a->shop_rule * 1e3)
KEY(rule_second, a->second_rule * 1e3)
KEY(exhaust_valve, a->balance.valve - CG_ZERO_CELSIUS)
KEY(exhaust_probe, a->balance.exhaust.reading - CG_ZERO_CELSIUS)

static const struct cg_summary_key keys[] = {
    {"cold_gap_top", "mm", get_cold_gap_top},
    {"closure_top", "mm", get_closure_top},
    {"closure_per_bore", "1", get_closure_per_bore},
    {"gap_per_bore", "1", get_gap_per_bore},
    {"spread_top", "mm", get_spread_top},
    {"residual", "mm", get_residual},
    {"cold_gap_second", "mm", get_cold_gap_second},
    {"tightest_time", "s", get_tightest_time},
    {"tightest_stroke", "mm", get_tightest_stroke},
    {"ring_top_max", "C", get_ring_top_max},
    {"groove_top_max", "C", get_groove_top_max},
    {"crown_max", "C", get_crown_max},
    {"liner_top_max", "C", get_liner_top_max},
    {"liner_coolest", "C", get_liner_coolest},
    {"hot_gap_min", "mm", get_hot_gap_min},
    {"imep", "bar", get_imep},
    {"brake_power", "kW", get_brake_power},
    {"peak_pressure", "bar", get_peak_pressure},
    {"air_flow", "kg/h", get_air_flow},
    {"fuel_flow", "kg/h", get_fuel_flow},
    {"burn50", "deg", get_burn50},
    {"knock_integral", "1", get_knock_integral},
    {"energy_residual", "1", get_energy_residual},
    {"film_top", "um", get_film_top},
    {"film_second", "um", get_film_second},
    {"closure_duty", "mm", get_closure_duty},
    {"file_to_top", "mm", get_file_to_top},
    {"file_to_second", "mm", get_file_to_second},
    {"rule_top", "mm", get_rule_top},
    {"rule_second", "mm", get_rule_second},
    {"exhaust_valve", "C", get_exhaust_valve},
    {"exhaust_probe", "C", get_exhaust_probe},
};

static const char *from(const struct cg_answer *answer)
{
    return cg_advice_word(answer->file_to_top.from);
}

static const char *hardest(const struct cg_answer *answer)
{
    return answer->duty[answer->hardest].name;
}

static const struct cg_summary_word words[] = {{"file_to_from", from},
                                               {"hardest_duty", hardest}};

const struct cg_summary_word *cg_summary_words(size_t *count)
{
    *count = sizeof words / sizeof words[0];
    return words;
}

const struct cg_summary_key *cg_summary_keys(size_t *count)
{
    *count = sizeof keys / sizeof keys[0];
    return keys;
}

/* Of engines that have them alone: a remark, so that the keys are the same for
 * all. */
static void put_brought(struct cg_table *table, const struct cg_performance *p)
{
    if (p->nitrous_flow > 0.0)
        cg_table_note(table, "nitrous_flow %.7g kg/h", p->nitrous_flow * 3600.0);
    if (p->water_flow > 0.0)
        cg_table_note(table, "water_flow %.7g kg/h", p->water_flow * 3600.0);
    if (p->alcohol_flow > 0.0)
        cg_table_note(table, "alcohol_flow %.7g kg/h", p->alcohol_flow * 3600.0);
}

void cg_summary_put(struct cg_table *table, const struct cg_case *c,
                    const struct cg_answer *answer)
{
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
        cg_table_key(table, keys[i].key, keys[i].get(c, answer), keys[i].unit);
    put_brought(table, &answer->performance);
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        cg_table_line(table, "%s %s word", words[i].key,
                      cg_table_word(words[i].get(answer)).text);
}
