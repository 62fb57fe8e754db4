#include "find_tables.h"

#include <math.h>
#include <stdlib.h>

#include "balance_table.h"
#include "clearance_table.h"
#include "constants.h"
#include "duties_table.h"
#include "film_table.h"
#include "log_table.h"
#include "geometry.h"
#include "growth.h"
#include "spread_tables.h"
#include "summary.h"
#include "table.h"

/* What one row of history.dat is made from. */
struct history_row {
    const struct cg_history *history;
    const struct cg_moment *moment;
    double cold_gap, least, at_top; /* [m] */
};

static double celsius(double kelvin)
{
    return kelvin - CG_ZERO_CELSIUS;
}

/* Bore surface at a share of the top ring's travel [C]. */
static double bore_at_travel(const struct history_row *row, double share)
{
    const struct cg_case *c = row->history->c;
    double depth = cg_ring_turn(c, CG_RING_TOP) + share * c->engine.stroke;
    return celsius(cg_growth_at_depth(row->history->run->thermal,
                                      row->moment->bore_temperature, depth));
}

#define CELL(name, expression)                                               \
    static double cell_##name(const struct history_row *row)                 \
    {                                                                        \
        return expression;                                                   \
    }

CELL(time, row->moment->time)
CELL(load, row->moment->load)
CELL(speed, row->moment->speed * 60.0)
CELL(manifold, row->moment->manifold_pressure / 1e3)
CELL(crown, celsius(row->moment->crown))
CELL(groove, celsius(row->moment->groove_top))
CELL(ring_top, celsius(row->moment->ring_top))
CELL(ring_second, celsius(row->moment->ring_second))
CELL(liner_top, bore_at_travel(row, 0.0))
CELL(liner_mid, bore_at_travel(row, 0.5))
CELL(liner_low, bore_at_travel(row, 1.0))
CELL(least, row->least * 1e3)
CELL(at_top, row->at_top * 1e3)
CELL(closure, (row->cold_gap - row->least) * 1e3)
CELL(ring_growth, CG_PI * row->history->c->engine.bore *
                      row->moment->ring_strain * 1e3)
CELL(bore_growth, cell_ring_growth(row) - cell_closure(row))

/* In the order of the names that write_history gives them. */
static double (*const history_columns[])(const struct history_row *row) = {
    cell_time,
    cell_load,
    cell_speed,
    cell_manifold,
    cell_crown,
    cell_groove,
    cell_ring_top,
    cell_ring_second,
    cell_liner_top,
    cell_liner_mid,
    cell_liner_low,
    cell_least,
    cell_at_top,
    cell_closure,
    cell_ring_growth,
    cell_bore_growth,
};

enum { HISTORY_COLUMNS = sizeof history_columns / sizeof history_columns[0] };

static enum cg_status write_summary(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_case *c,
                                    const struct cg_answer *answer,
                                    struct cg_error *error)
{
    struct cg_table_head head = {"Summary of find", of, CG_KEY_COLUMNS, NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "summary.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_summary_put(table, c, answer);
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_history(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_answer *answer,
                                    const struct cg_history *history,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "Temperatures and hot gap over the duty; liner columns: bore surface "
        "where the top ring turns, midway, and at the bottom",
        of,
        "time_s  load  speed_rpm  manifold_kPa  crown_C  groove_top_C  "
        "ring_top_C  ring_second_C  liner_top_C  liner_mid_C  liner_low_C  "
        "hot_gap_min_mm  hot_gap_top_mm  closure_mm  ring_growth_mm  "
        "bore_growth_mm",
        "manifold: absolute; growth: of arc; the duty asked for"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "history.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "cold gap %.4g mm", answer->verdict.gap * 1e3);
    for (size_t i = 0; i < history->moments; i++) {
        struct history_row row = {.history = history,
                                  .moment = &history->moment[i],
                                  .cold_gap = answer->verdict.gap};
        cg_history_gaps(history, row.moment, row.cold_gap, &row.least,
                        &row.at_top);
        double values[HISTORY_COLUMNS];
        for (size_t k = 0; k < HISTORY_COLUMNS; k++)
            values[k] = history_columns[k](&row);
        cg_table_row(table, values, HISTORY_COLUMNS);
    }
    return cg_table_close(table, CG_OK, error);
}

/* One block: the top ring's hot gap, bore growth and bore temperature from
 * the top of its travel to the bottom. */
static void write_stroke_block(struct cg_table *table,
                               const struct cg_history *history,
                               const struct cg_moment *moment, double cold_gap,
                               const char *label)
{
    const struct cg_case *c = history->c;
    const struct cg_thermal *thermal = history->run->thermal;
    cg_table_block(table, "%s t=%.4gs", label, moment->time);
    for (size_t i = 0; i < history->depths; i++) {
        double depth = history->depth[i];
        double strain =
            cg_growth_at_depth(thermal, moment->bore_strain, depth);
        double values[4] = {
            depth * 1e3,
            cg_growth_gap(c, cold_gap, strain, moment->ring_strain) * 1e3,
            strain * c->engine.bore * 1e3,
            celsius(cg_growth_at_depth(thermal, moment->bore_temperature,
                                       depth))};
        cg_table_row(table, values, 4);
    }
}

static enum cg_status write_stroke(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_answer *answer,
                                   const struct cg_history *history,
                                   struct cg_error *error)
{
    enum { CHOSEN = 4 };
    static const char *const label[CHOSEN] = {"start", "third", "two_thirds",
                                              "end"};
    struct cg_table_head head = {
        "Along the stroke: top ring's hot gap, bore growth, bore temperature",
        of,
        "depth_mm  hot_gap_mm  bore_growth_mm  bore_C  block",
        "depth: below the deck; growth: of the diameter"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "stroke.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "cold gap %.4g mm; the first block is the tightest",
                  answer->verdict.gap * 1e3);
    write_stroke_block(table, history, &history->tightest,
                       answer->verdict.gap, "tightest");
    for (size_t i = 0; i < CHOSEN; i++) {
        size_t at = (history->moments - 1) * i / (CHOSEN - 1);
        write_stroke_block(table, history, &history->moment[at],
                           answer->verdict.gap, label[i]);
    }
    return cg_table_close(table, CG_OK, error);
}

static void write_cycle_block(struct cg_table *table,
                              const struct cg_operating_point *point,
                              const struct cg_cycle *cycle, double deck_limit)
{
    cg_table_block(table, "%.0frpm load %.3g heat factor %.3g",
                   point->operating.speed * 60.0, point->operating.load,
                   point->operating.heat_factor);
    for (size_t i = 0; i < cycle->points; i++) {
        const struct cg_cycle_point *at = &cycle->point[i];
        double values[5] = {at->crank_deg, at->pressure / 1e5,
                            at->temperature, at->coefficient,
                            fmin(at->depth, deck_limit) * 1e3};
        cg_table_row(table, values, 5);
    }
}

/* One block for each operating point, full load at rated speed first. */
static enum cg_status write_cycle(const char *dir, const struct cg_table_of *of,
                                  const struct cg_duty_run *run,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Engine cycle at each operating point of the duty; the first block is "
        "rated speed, full load; 0 deg is TDC firing",
        of,
        "crank_deg  p_bar  T_K  h_W_m2K  exposed_mm  block",
        "p: absolute; h: in W/m2K"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "cycle.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < run->points && status == CG_OK; i++) {
        size_t at = i == 0 ? run->full_load
                           : (i <= run->full_load ? i - 1 : i);
        status =
            cg_cycle_run(&run->point[at].input, run->workspace.cycle, error);
        if (status == CG_OK)
            write_cycle_block(table, &run->point[at], run->workspace.cycle,
                              run->thermal->bore.grid.length);
    }
    return cg_table_close(table, status, error);
}

enum cg_status
cg_find_tables_write(const char *dir, const struct cg_table_of *of,
                     const struct cg_case *c, struct cg_duty_run *run,
                     const struct cg_answer *answer,
                     const struct cg_history *history, struct cg_error *error)
{
    enum cg_status status = write_summary(dir, of, c, answer, error);
    if (status == CG_OK)
        status = cg_duties_table_write(dir, of, answer, error);
    if (status == CG_OK)
        status = write_history(dir, of, answer, history, error);
    if (status == CG_OK)
        status = cg_log_table_write(dir, of, c, answer, history, error);
    if (status == CG_OK)
        status = cg_clearance_table_write(dir, of, answer, history, error);
    if (status == CG_OK)
        status = write_stroke(dir, of, answer, history, error);
    if (status == CG_OK)
        status = write_cycle(dir, of, run, error);
    if (status == CG_OK)
        status = cg_balance_table_write(dir, of, &answer->balance, error);
    if (status == CG_OK)
        status = cg_film_table_write(dir, of, c, run, error);
    if (status == CG_OK)
        status = cg_sensitivity_write(dir, of, answer, error);
    return status;
}
