/* The keys of summary.dat: lengths mm, times s, temperatures C, pressures
 * bar, power kW, flows kg/h, angles deg, films um. */
#include "summary.h"

#include "constants.h"

#define KEY(name, expression)                                                \
    static double get_##name(const struct cg_case *c,                        \
                             const struct cg_answer *a)                      \
    {                                                                        \
        (void)c;                                                             \
        (void)a;                                                             \
        return expression;                                                   \
    }

KEY(cold_gap_top, a->top.cold_gap * 1e3)
KEY(closure_top, a->top.closure * 1e3)
KEY(closure_per_bore, a->top.closure / c->engine.bore)
KEY(gap_per_bore, a->top.cold_gap / c->engine.bore)
KEY(spread_top, a->top.spread * 1e3)
KEY(residual, a->top.residual * 1e3)
KEY(cold_gap_second, a->second.cold_gap * 1e3)
KEY(tightest_time, a->extremes.time)
KEY(tightest_stroke, a->extremes.depth * 1e3)
KEY(ring_top_max, a->extremes.ring_top_max - CG_ZERO_CELSIUS)
KEY(groove_top_max, a->extremes.groove_top_max - CG_ZERO_CELSIUS)
KEY(crown_max, a->extremes.crown_max - CG_ZERO_CELSIUS)
KEY(liner_top_max, a->extremes.liner_top_max - CG_ZERO_CELSIUS)
KEY(liner_coolest, a->extremes.liner_coolest - CG_ZERO_CELSIUS)
KEY(hot_gap_min, a->verdict.hot_gap_min * 1e3)
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
};

const struct cg_summary_key *cg_summary_keys(size_t *count)
{
    *count = sizeof keys / sizeof keys[0];
    return keys;
}
