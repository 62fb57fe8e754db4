/* From boost to the ring's temperature, by hand. */
#include "fuel.h"
#include "lesson_sheet_parts.h"

#define AIR_GAS_CONSTANT 287.05 /* dry air [J/(kg K)] */
#define MILLION cg_figure_plain(1e6)

static struct cg_hand swept(const struct cg_lesson_sheet *sheet)
{
    struct cg_figure area = sheet->charge.area.result;
    struct cg_figure stroke =
        figure(sheet, "stroke", CG_LESSON_LENGTH, sheet->c->engine.stroke);
    if (sheet->inch)
        return work(sheet, "swept volume", CG_LESSON_VOLUME, "x",
                    CG_FIGURES(area, stroke));
    return work(sheet, "swept volume", CG_LESSON_VOLUME, "x/",
                CG_FIGURES(area, stroke, MILLION));
}

/* m = p V / (R T), the ideal gas, times how well the cylinder fills. */
void cg_lesson_sheet_charge(struct cg_lesson_sheet *sheet)
{
    const struct cg_charge_case *in = &sheet->c->charge;
    struct cg_lesson_charge *out = &sheet->charge;
    struct cg_figure ambient =
        figure(sheet, "outside air", CG_LESSON_PRESSURE, in->ambient_pressure);
    out->manifold =
        work(sheet, "manifold", CG_LESSON_PRESSURE, "+",
             CG_FIGURES(ambient,
                        figure(sheet, "boost", CG_LESSON_PRESSURE, in->boost)));
    out->times = cg_hand_work("times the air", "", 2, "/",
                              CG_FIGURES(out->manifold.result, ambient));

    struct cg_figure bore =
        figure(sheet, "bore", CG_LESSON_LENGTH, sheet->c->engine.bore);
    out->area = work(
        sheet, "area", CG_LESSON_AREA, "xx/",
        CG_FIGURES(cg_figure_plain(3.1416), bore, bore, cg_figure_plain(4)));
    out->swept = swept(sheet);
    struct cg_figure charge =
        figure(sheet, "charge", CG_LESSON_TEMPERATURE,
               sheet->lesson->heat.charge.manifold_temperature);
    out->absolute =
        work(sheet, "absolute temperature", CG_LESSON_ABSOLUTE, "+",
             CG_FIGURES(charge, cg_figure_plain(sheet->inch ? 460 : 273)));
    out->gas_constant =
        figure(sheet, "gas constant", CG_LESSON_GAS, AIR_GAS_CONSTANT);
    out->air = work(
        sheet, "air", CG_LESSON_MASS, "xx//",
        CG_FIGURES(out->manifold.result, out->swept.result,
                   cg_figure_of("filling", in->volumetric_efficiency, 2, ""),
                   out->gas_constant, out->absolute.result));
}

static struct cg_hand flux(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_burn *burn = &sheet->burn;
    if (sheet->inch)
        return work(sheet, "flux", CG_LESSON_FLUX, "x/",
                    CG_FIGURES(burn->crown.result, burn->cycles.result,
                               sheet->charge.area.result));
    return work(sheet, "flux", CG_LESSON_FLUX, "xx/",
                CG_FIGURES(burn->crown.result, cg_figure_plain(1000),
                           burn->cycles.result, sheet->charge.area.result));
}

void cg_lesson_sheet_burn(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    const struct cg_fuel *fuel = cg_fuel_find(sheet->c->fuel.name);
    struct cg_lesson_burn *out = &sheet->burn;
    out->need = cg_hand_work(
        "air for 1 of fuel", "", 2, "x",
        CG_FIGURES(
            cg_figure_of("stoichiometric", cg_fuel_stoichiometric(fuel), 2, ""),
            cg_figure_of("lambda", heat->charge.lambda, 2, "")));
    out->fuel = work(sheet, "fuel", CG_LESSON_MASS, "/",
                     CG_FIGURES(sheet->charge.air.result, out->need.result));
    out->energy =
        work(sheet, "heat of the fuel", CG_LESSON_ENERGY, "x",
             CG_FIGURES(out->fuel.result,
                        figure(sheet, "heating value", CG_LESSON_HEATING,
                               fuel->heating_value)));
    out->crown = work(
        sheet, "through the crown", CG_LESSON_ENERGY, "x/",
        CG_FIGURES(out->energy.result,
                   cg_figure_of("share",
                                100.0 * heat->crown_heat / heat->fuel_energy,
                                -3, "%"),
                   cg_figure_plain(100)));
    out->cycles = cg_hand_work(
        "cycles", "/s", 1, "//",
        CG_FIGURES(
            cg_figure_of("speed", sheet->c->engine.speed * 60.0, 0, "rpm"),
            cg_figure_plain(2), cg_figure_plain(60)));
    out->flux = flux(sheet);
    const struct cg_lesson_boost *boost = sheet->lesson->boost;
    struct cg_figure none =
        figure(sheet, "without boost", CG_LESSON_FLUX, boost[0].crown_flux);
    out->model_flux = figure(sheet, "with it", CG_LESSON_FLUX,
                             boost[sheet->lesson->own].crown_flux);
    out->flux_times = cg_hand_work("times the heat", "", 2, "/",
                                   CG_FIGURES(out->model_flux, none));
}

/* Areas of the flank and of the face: mm2. */
static void set_areas(const struct cg_lesson_sheet *sheet,
                      struct cg_lesson_ladder *out)
{
    const struct cg_ring_case *ring = &sheet->c->ring[CG_RING_TOP];
    struct cg_figure pi = cg_figure_plain(3.1416);
    struct cg_figure bore = cg_lesson_figure(false, "bore", CG_LESSON_LENGTH,
                                             sheet->c->engine.bore);
    struct cg_figure depth =
        cg_lesson_figure(false, "depth", CG_LESSON_LENGTH, ring->depth);
    struct cg_figure width =
        cg_lesson_figure(false, "width", CG_LESSON_LENGTH, ring->width);
    out->middle = cg_lesson_work(false, "middle of the ring", CG_LESSON_LENGTH,
                                 "-", CG_FIGURES(bore, depth));
    out->flank_area = cg_lesson_work(false, "flank", CG_LESSON_AREA, "xx",
                                     CG_FIGURES(pi, out->middle.result, depth));
    out->face_area = cg_lesson_work(false, "face", CG_LESSON_AREA, "xx",
                                    CG_FIGURES(pi, bore, width));
}

/* Heat enters all along the flank, so that what lies between the ring's mean
 * and its face is a third of its depth: a wall heated evenly and insulated at
 * the back (Incropera et al., "Fundamentals of Heat and Mass Transfer", plane
 * wall with uniform generation; the mean of its parabola).  Friction in the
 * film is left out. */
static void set_resistances(const struct cg_lesson_sheet *sheet,
                            struct cg_lesson_ladder *out)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    const struct cg_ring_case *ring = &sheet->c->ring[CG_RING_TOP];
    out->flank = cg_hand_work(
        "groove to ring", "K/W", -3, "//",
        CG_FIGURES(MILLION,
                   cg_figure_of("flank coefficient", ring->flank_coefficient, 0,
                                "W/(m2 K)"),
                   out->flank_area.result));
    out->inside = cg_hand_work(
        "inside the ring", "K/W", -3, "x///",
        CG_FIGURES(
            cg_figure_plain(1000),
            cg_lesson_figure(false, "depth", CG_LESSON_LENGTH, ring->depth),
            cg_figure_plain(3),
            cg_figure_of("conductivity", heat->ring_conductivity, 1, "W/(m K)"),
            out->face_area.result));
    out->film = cg_hand_work(
        "oil film", "K/W", -3, "//",
        CG_FIGURES(cg_figure_of("film", heat->film * 1e6, -3, "um"),
                   cg_figure_of("oil's conductivity", heat->oil_conductivity, 2,
                                "W/(m K)"),
                   out->face_area.result));
    out->total = cg_hand_work(
        "all in series", "K/W", -3, "++",
        CG_FIGURES(out->flank.result, out->inside.result, out->film.result));
}

void cg_lesson_sheet_ladder(struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_heat *heat = &sheet->lesson->heat;
    struct cg_lesson_ladder *out = &sheet->ladder;
    set_areas(sheet, out);
    set_resistances(sheet, out);
    out->crown = figure(sheet, "crown", CG_LESSON_TEMPERATURE, heat->crown);
    out->groove = figure(sheet, "groove", CG_LESSON_TEMPERATURE, heat->groove);
    out->model_ring = figure(sheet, "ring", CG_LESSON_TEMPERATURE, heat->ring);
    out->bore = figure(sheet, "bore", CG_LESSON_TEMPERATURE, heat->bore);
    out->fall = work(sheet, "fall", CG_LESSON_RISE, "-",
                     CG_FIGURES(out->groove, out->bore));
    out->step = work(
        sheet, "step at the flank", CG_LESSON_RISE, "x/",
        CG_FIGURES(out->fall.result, out->flank.result, out->total.result));
    out->ring = work(sheet, "ring by hand", CG_LESSON_RISE, "-",
                     CG_FIGURES(out->groove, out->step.result));
}
