/* Growth of ring and bore, and what is left of the gap, by hand. */
#include <math.h>

#include "constants.h"
#include "lesson_sheet_parts.h"
#include "show.h"

static struct cg_figure cold(const struct cg_lesson_sheet *sheet)
{
    return figure(sheet, "cold", CG_LESSON_TEMPERATURE, CG_COLD_TEMPERATURE);
}

/* The mean coefficient from cold [1/K] that a strain comes from. */
static double mean_expansion(double strain, double temperature)
{
    double rise = temperature - CG_COLD_TEMPERATURE;
    return rise != 0.0 ? strain / rise : 0.0;
}

/* Rise from cold, and the growth of the arc by it. */
static void grow(const struct cg_lesson_sheet *sheet, const char *const name[4],
                 double temperature, double strain, struct cg_hand *rise,
                 struct cg_hand *growth)
{
    struct cg_figure hot =
        figure(sheet, name[0], CG_LESSON_TEMPERATURE, temperature);
    struct cg_figure expansion = figure(sheet, name[2], CG_LESSON_EXPANSION,
                                        mean_expansion(strain, temperature));
    *rise =
        work(sheet, name[1], CG_LESSON_RISE, "-", CG_FIGURES(hot, cold(sheet)));
    *growth = work(sheet, name[3], CG_LESSON_GROWTH, "xx/",
                   CG_FIGURES(sheet->arc.result, expansion, rise->result,
                              cg_figure_plain(1e6)));
}

static const struct cg_lesson_names settled = {
    {"ring", "ring's rise", "ring's expansion", "ring's growth"},
    {"bore", "bore's rise", "bore's expansion", "bore's growth"},
    "closure"};

void cg_lesson_sheet_grow(const struct cg_lesson_sheet *sheet,
                          const struct cg_lesson_names *name,
                          const struct cg_lesson_growth *at,
                          struct cg_lesson_growing *out)
{
    grow(sheet, name->ring, at->ring_temperature, at->ring_strain,
         &out->ring_rise, &out->ring);
    grow(sheet, name->bore, at->wall_temperature, at->bore_strain,
         &out->bore_rise, &out->bore);
    out->choke = figure(sheet, "choke", CG_LESSON_GROWTH, fabs(at->choke));
    out->closure =
        at->choke == 0.0
            ? work(sheet, name->closure, CG_LESSON_GROWTH, "-",
                   CG_FIGURES(out->ring.result, out->bore.result))
            : work(sheet, name->closure, CG_LESSON_GROWTH,
                   at->choke > 0.0 ? "-+" : "--",
                   CG_FIGURES(out->ring.result, out->bore.result, out->choke));
    out->chokes = at->choke;
}

struct cg_hand cg_lesson_left(const struct cg_lesson_sheet *sheet,
                              const char *name,
                              const struct cg_lesson_growing *by)
{
    if (by->chokes == 0.0)
        return work(
            sheet, name, CG_LESSON_GROWTH, "+-",
            CG_FIGURES(sheet->sum.cold_gap, by->bore.result, by->ring.result));
    return work(sheet, name, CG_LESSON_GROWTH, by->chokes > 0.0 ? "+--" : "+-+",
                CG_FIGURES(sheet->sum.cold_gap, by->bore.result,
                           by->ring.result, by->choke));
}

void cg_lesson_sheet_growth(struct cg_lesson_sheet *sheet)
{
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++)
        cg_lesson_sheet_grow(sheet, &settled, &sheet->lesson->boost[i].growth,
                             &sheet->boost[i]);
}

/* Names of a layer's figures: itself, rise, free growth, stiffness, pull. */
static const char *const liner_name[5] = {"liner", "liner's rise", "liner free",
                                          "liner's stiffness", "liner's pull"};
static const char *const block_name[5] = {"block", "block's rise", "block free",
                                          "block's stiffness", "block's pull"};

static void set_layer(const struct cg_lesson_sheet *sheet,
                      const char *const name[5],
                      const struct cg_lesson_layer *layer, double thickness,
                      struct cg_lesson_layer_hand *out)
{
    struct cg_figure temperature =
        figure(sheet, name[0], CG_LESSON_TEMPERATURE, layer->temperature);
    struct cg_figure expansion =
        figure(sheet, "its expansion", CG_LESSON_EXPANSION,
               mean_expansion(layer->strain, layer->temperature));
    struct cg_figure modulus =
        figure(sheet, "its modulus", CG_LESSON_STRESS, layer->modulus);
    struct cg_figure wall =
        figure(sheet, "its wall", CG_LESSON_LENGTH, thickness);
    out->rise = work(sheet, name[1], CG_LESSON_RISE, "-",
                     CG_FIGURES(temperature, cold(sheet)));
    out->free = work(sheet, name[2], CG_LESSON_STRAIN, "x",
                     CG_FIGURES(expansion, out->rise.result));
    out->stiffness = work(sheet, name[3], CG_LESSON_STIFFNESS, "x/",
                          CG_FIGURES(modulus, wall, cg_figure_plain(1000)));
    out->pull =
        cg_hand_work(name[4], "", 0, "x",
                     CG_FIGURES(out->stiffness.result, out->free.result));
}

/* Two bonded thin rings of one radius stretch alike, and the forces in them
 * cancel: strain = (E1 t1 e1 + E2 t2 e2) / (E1 t1 + E2 t2). */
void cg_lesson_sheet_layers(struct cg_lesson_sheet *sheet)
{
    const struct cg_bore_case *bore = &sheet->c->bore;
    const struct cg_lesson_wall *wall = &sheet->lesson->wall;
    struct cg_lesson_layers *out = &sheet->layers;
    if (!wall->has_block)
        return;
    set_layer(sheet, liner_name, &wall->liner, bore->wall_thickness,
              &out->liner);
    set_layer(sheet, block_name, &wall->block, bore->block_thickness,
              &out->block);
    out->stiffness = work(
        sheet, "both", CG_LESSON_STIFFNESS, "+",
        CG_FIGURES(out->liner.stiffness.result, out->block.stiffness.result));
    out->pull = cg_hand_work(
        "both pulls", "", 0, "+",
        CG_FIGURES(out->liner.pull.result, out->block.pull.result));
    out->joined = work(sheet, "joined", CG_LESSON_STRAIN, "/",
                       CG_FIGURES(out->pull.result, out->stiffness.result));
    out->model = figure(sheet, "model", CG_LESSON_STRAIN, wall->bore_strain);
}

/* The larger less the smaller. */
static struct cg_hand apart(const struct cg_lesson_sheet *sheet,
                            const char *name, struct cg_figure a,
                            struct cg_figure b)
{
    bool swap = b.value > a.value;
    return work(sheet, name, CG_LESSON_GROWTH, "-",
                CG_FIGURES(swap ? b : a, swap ? a : b));
}

struct cg_figure cg_lesson_gap_figure(const struct cg_lesson_sheet *sheet,
                                      const char *name, double gap)
{
    return figure(sheet, name, CG_LESSON_GROWTH, cg_shown_up(gap, sheet->inch));
}

/* What the parts' own rounding takes or adds goes to the last part. */
static struct cg_hand add_up(const struct cg_lesson_sheet *sheet)
{
    const struct cg_gap_sum *sum = &sheet->lesson->answer.top;
    struct cg_figure gap = cg_lesson_gap_figure(sheet, NULL, sum->cold_gap);
    struct cg_figure closure =
        figure(sheet, "duty's closure", CG_LESSON_GROWTH, sum->closure);
    struct cg_figure allowance =
        figure(sheet, "allowance", CG_LESSON_GROWTH, sum->spread);
    struct cg_figure hot =
        figure(sheet, "minimum hot gap", CG_LESSON_GROWTH, sum->residual);
    struct cg_figure rounding = cg_figure_of(
        "rounding up", gap.value - closure.value - allowance.value - hot.value,
        sheet->inch ? 4 : 3, gap.unit);
    return work(sheet, "gap needed", CG_LESSON_GROWTH, "+++",
                CG_FIGURES(closure, allowance, hot, rounding));
}

void cg_lesson_sheet_sum(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    const struct cg_verdict *verdict = &sheet->lesson->answer.verdict;
    struct cg_lesson_sum *out = &sheet->sum;
    out->cold_gap =
        verdict->given
            ? figure(sheet, "cold gap", CG_LESSON_GROWTH, verdict->gap)
            : cg_lesson_gap_figure(sheet, "cold gap", cg_lesson_file_to(sheet));
    out->left = cg_lesson_left(sheet, "left while hot", own);
    out->gap = add_up(sheet);
    out->off =
        apart(sheet, "apart",
              figure(sheet, "model", CG_LESSON_GROWTH,
                     sheet->lesson->boost[sheet->lesson->own].growth.closure),
              cg_figure_named("by hand", own->closure.result));
    out->more = work(
        sheet, "more closure", CG_LESSON_GROWTH, "-",
        CG_FIGURES(
            cg_figure_named("at the highest",
                            sheet->boost[CG_LESSON_BOOSTS - 1].closure.result),
            cg_figure_named("without boost", sheet->boost[0].closure.result)));
    out->per_boost = work(
        sheet, sheet->inch ? "for each 10 psi" : "for each 100 kPa",
        CG_LESSON_GROWTH, "/x",
        CG_FIGURES(out->more.result,
                   figure(sheet, "highest boost", CG_LESSON_PRESSURE,
                          sheet->lesson->boost[CG_LESSON_BOOSTS - 1].boost),
                   cg_figure_plain(sheet->inch ? 10 : 100)));
    out->half_degree =
        cg_hand_work("half a degree", out->off.result.unit, -2, "xx/",
                     CG_FIGURES(sheet->arc.result, own->ring.figure[1],
                                cg_figure_plain(0.5), cg_figure_plain(1e6)));
}
