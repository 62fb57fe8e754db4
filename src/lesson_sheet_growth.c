/* Growth of ring and bore, and what is left of the gap, by hand. */
#include <math.h>

#include "constants.h"
#include "lesson_sheet.h"

static struct cg_figure figure(const struct cg_lesson_sheet *sheet,
                               const char *name,
                               enum cg_lesson_quantity quantity, double si)
{
    return cg_lesson_figure(sheet->inch, name, quantity, si);
}

static struct cg_figure cold(const struct cg_lesson_sheet *sheet)
{
    return figure(sheet, "cold", CG_LESSON_TEMPERATURE, CG_COLD_TEMPERATURE);
}

/* Warm-up from cold, and the growth of the arc by it; `expansion` is the mean
 * coefficient that the strain [1] comes from. */
static void grow(const struct cg_lesson_sheet *sheet, const char *const name[4],
                 double temperature, double strain, struct cg_hand *rise,
                 struct cg_hand *growth)
{
    double kelvin = temperature - CG_COLD_TEMPERATURE;
    double expansion = kelvin != 0.0 ? strain / kelvin : 0.0;
    *rise = cg_lesson_work(
        sheet->inch, name[1], CG_LESSON_RISE, "-",
        CG_FIGURES(figure(sheet, name[0], CG_LESSON_TEMPERATURE, temperature),
                   cold(sheet)));
    *growth = cg_lesson_work(
        sheet->inch, name[3], CG_LESSON_GROWTH, "xx/",
        CG_FIGURES(sheet->arc.result,
                   figure(sheet, name[2], CG_LESSON_EXPANSION, expansion),
                   rise->result, cg_figure_plain(1e6)));
}

void cg_lesson_sheet_growth(struct cg_lesson_sheet *sheet)
{
    static const char *const ring[4] = {"ring", "ring's rise",
                                        "ring's expansion", "ring's growth"};
    static const char *const bore[4] = {"bore", "bore's rise",
                                        "bore's expansion", "bore's growth"};
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++) {
        const struct cg_lesson_growth *at = &sheet->lesson->boost[i].growth;
        struct cg_lesson_growing *out = &sheet->boost[i];
        grow(sheet, ring, at->ring_temperature, at->ring_strain,
             &out->ring_rise, &out->ring);
        grow(sheet, bore, at->wall_temperature, at->bore_strain,
             &out->bore_rise, &out->bore);
        out->closure =
            cg_lesson_work(sheet->inch, "closure", CG_LESSON_GROWTH, "-",
                           CG_FIGURES(out->ring.result, out->bore.result));
    }
}

/* Free growth and stiffness, modulus times thickness, of one layer. */
static void set_layer(const struct cg_lesson_sheet *sheet,
                      const char *const name[4], double temperature,
                      double strain, double modulus, double thickness,
                      struct cg_hand *rise, struct cg_hand *grows,
                      struct cg_hand *stiff)
{
    double kelvin = temperature - CG_COLD_TEMPERATURE;
    *rise = cg_lesson_work(
        sheet->inch, name[1], CG_LESSON_RISE, "-",
        CG_FIGURES(figure(sheet, name[0], CG_LESSON_TEMPERATURE, temperature),
                   cold(sheet)));
    *grows = cg_lesson_work(
        sheet->inch, name[2], CG_LESSON_STRAIN, "x",
        CG_FIGURES(figure(sheet, "its expansion", CG_LESSON_EXPANSION,
                          kelvin != 0.0 ? strain / kelvin : 0.0),
                   rise->result));
    *stiff = cg_lesson_work(
        sheet->inch, name[3], CG_LESSON_STIFFNESS, sheet->inch ? "x" : "x/",
        CG_FIGURES(figure(sheet, "its modulus", CG_LESSON_STRESS, modulus),
                   figure(sheet, "its wall", CG_LESSON_LENGTH, thickness),
                   cg_figure_plain(1000)));
}

/* Two bonded thin rings of one radius stretch alike, and the forces in them
 * cancel: strain = (E1 t1 e1 + E2 t2 e2) / (E1 t1 + E2 t2). */
void cg_lesson_sheet_layers(struct cg_lesson_sheet *sheet)
{
    static const char *const liner[4] = {"liner", "liner's rise", "liner free",
                                         "liner's stiffness"};
    static const char *const block[4] = {"block", "block's rise", "block free",
                                         "block's stiffness"};
    const struct cg_lesson_wall *wall = &sheet->lesson->wall;
    struct cg_lesson_layers *out = &sheet->layers;
    if (!wall->has_block)
        return;
    set_layer(sheet, liner, wall->liner_temperature, wall->liner_strain,
              wall->liner_modulus, sheet->c->bore.wall_thickness,
              &out->liner_rise, &out->liner_free, &out->liner_stiff);
    set_layer(sheet, block, wall->block_temperature, wall->block_strain,
              wall->block_modulus, sheet->c->bore.block_thickness,
              &out->block_rise, &out->block_free, &out->block_stiff);
    out->stiff = cg_lesson_work(sheet->inch, "both", CG_LESSON_STIFFNESS, "+",
                                CG_FIGURES(out->liner_stiff.result,
                                           out->block_stiff.result));
    out->liner_part = cg_hand_work("liner's pull", "", 0, "x",
                                   CG_FIGURES(out->liner_stiff.result,
                                              out->liner_free.result));
    out->block_part = cg_hand_work("block's pull", "", 0, "x",
                                   CG_FIGURES(out->block_stiff.result,
                                              out->block_free.result));
    out->parts = cg_hand_work(
        "both pulls", "", 0, "+",
        CG_FIGURES(out->liner_part.result, out->block_part.result));
    out->joined =
        cg_lesson_work(sheet->inch, "joined", CG_LESSON_STRAIN, "/",
                       CG_FIGURES(out->parts.result, out->stiff.result));
    out->model =
        figure(sheet, "model", CG_LESSON_STRAIN, wall->bore_strain);
}

/* The larger less the smaller. */
static struct cg_hand apart(const struct cg_lesson_sheet *sheet,
                            const char *name, struct cg_figure a,
                            struct cg_figure b)
{
    bool swap = b.value > a.value;
    return cg_lesson_work(sheet->inch, name, CG_LESSON_GROWTH, "-",
                          CG_FIGURES(swap ? b : a, swap ? a : b));
}

/* What the parts' own rounding takes or adds goes to the last part. */
static struct cg_hand add_up(const struct cg_lesson_sheet *sheet)
{
    const struct cg_gap_sum *sum = &sheet->lesson->answer.top;
    struct cg_figure gap =
        figure(sheet, NULL, CG_LESSON_GROWTH, sum->cold_gap);
    struct cg_figure closure =
        figure(sheet, "closure", CG_LESSON_GROWTH, sum->closure);
    struct cg_figure spread =
        figure(sheet, "spread", CG_LESSON_GROWTH, sum->spread);
    struct cg_figure residual =
        figure(sheet, "residual", CG_LESSON_GROWTH, sum->residual);
    struct cg_figure rounding = cg_figure_of(
        "rounding up",
        gap.value - closure.value - spread.value - residual.value,
        sheet->inch ? 4 : 3, gap.unit);
    return cg_lesson_work(sheet->inch, "cold gap", CG_LESSON_GROWTH, "+++",
                          CG_FIGURES(closure, spread, residual, rounding));
}

void cg_lesson_sheet_sum(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    struct cg_lesson_sum *out = &sheet->sum;
    out->cold_gap = figure(sheet, "cold gap", CG_LESSON_GROWTH,
                           sheet->lesson->answer.verdict.gap);
    out->left = cg_lesson_work(
        sheet->inch, "left while hot", CG_LESSON_GROWTH, "+-",
        CG_FIGURES(out->cold_gap, own->bore.result, own->ring.result));
    out->gap = add_up(sheet);
    out->off = apart(
        sheet, "apart",
        figure(sheet, "model", CG_LESSON_GROWTH,
               sheet->lesson->boost[sheet->lesson->own].growth.closure),
        cg_figure_named("by hand", own->closure.result));
    out->more = cg_lesson_work(
        sheet->inch, "more closure", CG_LESSON_GROWTH, "-",
        CG_FIGURES(
            cg_figure_named("at the highest",
                            sheet->boost[CG_LESSON_BOOSTS - 1].closure.result),
            cg_figure_named("without boost",
                            sheet->boost[0].closure.result)));
    out->per_boost = cg_lesson_work(
        sheet->inch, sheet->inch ? "for each 10 psi" : "for each 100 kPa",
        CG_LESSON_GROWTH, "/x",
        CG_FIGURES(out->more.result,
                   figure(sheet, "highest boost", CG_LESSON_PRESSURE,
                          sheet->lesson->boost[CG_LESSON_BOOSTS - 1].boost),
                   cg_figure_plain(sheet->inch ? 10 : 100)));
    out->half_degree = cg_lesson_work(
        sheet->inch, "half a degree", CG_LESSON_GROWTH, "xx/",
        CG_FIGURES(sheet->arc.result, own->ring.figure[1],
                   cg_figure_plain(0.5), cg_figure_plain(1e6)));
}
