/* Ends that touch, and a gap that leaks, by hand. */
#include "constants.h"
#include "lesson_sheet_parts.h"

#define DISCHARGE                                                              \
    0.86 /* of a ring end gap: M. Namazian and J. B. Heywood,                  \
            SAE 820088 (1982), from memory */
/* Choked flow of a gas of ratio 1.4: sqrt(k) (2/(k+1))^((k+1)/(2(k-1))), J. B.
 * Heywood (1988), app. C. */
#define CHOKED 0.685
#define SMALLEST_CLOSURE 0.04e-3   /* that is worth halving [m] */
#define SMALLEST_CLEARANCE 0.02e-3 /* that gas passes [m] */

static struct cg_hand pressure(const struct cg_lesson_sheet *sheet,
                               struct cg_figure stress)
{
    struct cg_figure two = cg_figure_plain(2);
    struct cg_figure depth = figure(sheet, "depth", CG_LESSON_LENGTH,
                                    sheet->c->ring[CG_RING_TOP].depth);
    struct cg_figure bore =
        figure(sheet, "bore", CG_LESSON_LENGTH, sheet->c->engine.bore);
    const char *name = "pressure";
    if (sheet->inch) /* ksi to psi */
        return cg_lesson_work(
            true, name, CG_LESSON_CONTACT, "xx/x",
            CG_FIGURES(two, stress, depth, bore, cg_figure_plain(1000)));
    return cg_lesson_work(false, name, CG_LESSON_CONTACT, "xx/",
                          CG_FIGURES(two, stress, depth, bore));
}

/* ring_gap.h: stress = E overlap / arc, p = 2 stress depth / bore. */
void cg_lesson_sheet_ends(struct cg_lesson_sheet *sheet)
{
    const struct cg_ring_case *ring = &sheet->c->ring[CG_RING_TOP];
    const struct cg_lesson *lesson = sheet->lesson;
    const struct cg_lesson_growth *own = &lesson->boost[lesson->own].growth;
    struct cg_lesson_ends *out = &sheet->ends;
    struct cg_figure closure = cg_lesson_own(sheet)->closure.result;
    struct cg_figure overlap =
        figure(sheet, "overlap", CG_LESSON_GROWTH, 0.1e-3);
    out->supposed = !(own->closure > SMALLEST_CLOSURE);
    if (!out->supposed) {
        struct cg_figure half =
            cg_figure_of("gap too small", 0.5 * closure.value,
                         sheet->inch ? 4 : 3, closure.unit);
        out->overlap = work(sheet, "overlap", CG_LESSON_GROWTH, "-",
                            CG_FIGURES(closure, half));
        overlap = out->overlap.result;
    }
    double modulus = cg_curve_at(&sheet->c->ring_material[CG_RING_TOP].modulus,
                                 own->ring_temperature);
    out->stress =
        work(sheet, "stress", CG_LESSON_STRESS, "x/",
             CG_FIGURES(figure(sheet, "modulus", CG_LESSON_STRESS, modulus),
                        overlap, sheet->arc.result));
    out->pressure = pressure(sheet, out->stress.result);
    out->times =
        cg_hand_work("times its own", "", -3, "/",
                     CG_FIGURES(out->pressure.result,
                                figure(sheet, "own tension", CG_LESSON_CONTACT,
                                       ring->pressure)));
}

/* Area of the extra gap: mm2, or millionths of a square inch (thou times
 * thou). */
static struct cg_hand leak_area(const struct cg_lesson_sheet *sheet)
{
    double clearance = sheet->lesson->heat.land_clearance;
    if (sheet->inch)
        return cg_hand_work(
            "area", "thou2", 1, "x",
            CG_FIGURES(
                cg_figure_of("wider by", 4.0, 1, "thou"),
                cg_figure_of("clearance", clearance / CG_THOU, 1, "thou")));
    return cg_hand_work(
        "area", "mm2", -3, "x",
        CG_FIGURES(figure(sheet, "wider by", CG_LESSON_LENGTH, 0.1e-3),
                   figure(sheet, "clearance", CG_LESSON_GROWTH, clearance)));
}

/* Speed sqrt(R T) of the gas in the gap, m/s or ft/s, and the volume through
 * the area with it, cm3/s or in3/s. */
static void set_volume(const struct cg_lesson_sheet *sheet,
                       struct cg_lesson_leak *out)
{
    bool inch = sheet->inch;
    struct cg_figure constant =
        cg_figure_of("gas constant", inch ? 1716 : 287, 0,
                     inch ? "ft2/(s2 R)" : "m2/(s2 K)");
    struct cg_figure cd = cg_figure_plain(DISCHARGE);
    struct cg_figure choked = cg_figure_plain(CHOKED);
    out->product = cg_hand_work("product", inch ? "ft2/s2" : "m2/s2", 0, "x",
                                CG_FIGURES(constant, out->temperature));
    out->speed =
        cg_hand_root("speed", inch ? "ft/s" : "m/s", 0, &out->product.result);
    if (inch)
        out->volume = cg_hand_work(
            "volume", "in3/s", -3, "xxxx/",
            CG_FIGURES(cd, out->area.result, out->speed.result,
                       cg_figure_plain(12), choked, cg_figure_plain(1e6)));
    else
        out->volume = cg_hand_work(
            "volume", "cm3/s", -3, "xxx",
            CG_FIGURES(cd, out->area.result, out->speed.result, choked));
}

static void set_mass(const struct cg_lesson_sheet *sheet,
                     struct cg_lesson_leak *out)
{
    struct cg_figure constant = sheet->charge.gas_constant;
    if (sheet->inch)
        out->mass = cg_lesson_work(true, "leak", CG_LESSON_FLOW, "x//",
                                   CG_FIGURES(out->pressure, out->volume.result,
                                              constant, out->temperature));
    else /* cm3 to L */
        out->mass = cg_lesson_work(false, "leak", CG_LESSON_FLOW, "x///",
                                   CG_FIGURES(out->pressure, out->volume.result,
                                              cg_figure_plain(1000), constant,
                                              out->temperature));
}

/* A stand-in for teaching: one choked orifice at the cylinder's mean pressure,
 * the gas as warm as the groove, and no second ring behind it. */
void cg_lesson_sheet_leak(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    struct cg_lesson_leak *out = &sheet->leak;
    out->closed = !(heat->land_clearance > SMALLEST_CLEARANCE);
    out->pressure =
        figure(sheet, "mean pressure", CG_LESSON_PRESSURE, heat->mean_pressure);
    out->temperature =
        figure(sheet, "temperature", CG_LESSON_ABSOLUTE, heat->groove);
    out->area = leak_area(sheet);
    set_volume(sheet, out);
    set_mass(sheet, out);
    out->second =
        work(sheet, "air a second", CG_LESSON_FLOW, "x",
             CG_FIGURES(sheet->charge.air.result, sheet->burn.cycles.result));
    out->share = cg_hand_work(
        "share", "%", -2, "/x",
        CG_FIGURES(out->mass.result, out->second.result, cg_figure_plain(100)));
    struct cg_figure brake =
        figure(sheet, "brake power", CG_LESSON_POWER,
               sheet->lesson->answer.performance.brake_power);
    out->power = cg_hand_work(
        "power", brake.unit, -2, "x/",
        CG_FIGURES(brake, out->share.result, cg_figure_plain(100)));
}
