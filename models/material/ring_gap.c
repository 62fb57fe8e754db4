#include "ring_gap.h"

#include <math.h>

#include "constants.h"

#include <assert.h>

double cg_gap_hot(double bore, double gap, double bore_strain,
                  double ring_strain)
{
    double arc = CG_PI * bore;
    /* pi D (1 + e_bore) - (pi D - g)(1 + e_ring), with the two large arcs
     * taken out so that they do not cancel in the last digits. */
    return gap * (1 + ring_strain) - arc * (ring_strain - bore_strain);
}

double cg_gap_cold_for(double bore, double hot, double bore_strain,
                       double ring_strain)
{
    double arc = CG_PI * bore;
    return (hot + arc * (ring_strain - bore_strain)) / (1 + ring_strain);
}

double cg_gap_round_up(double gap, double step)
{
    return step * ceil(gap / step - 1e-9);
}

void cg_gap_butting(double bore, double depth, double modulus, double overlap,
                    double own_pressure, struct cg_butting *butting)
{
    assert(bore > 0 && depth > 0 && own_pressure > 0);
    /* The bore holds the ring's angle at one turn, so every fibre, and the
     * arc at the bore with it, is shortened in the ratio overlap / (pi D). */
    double strain = overlap > 0 ? overlap / (CG_PI * bore) : 0;
    double stress = modulus * strain;
    /* Half a ring in balance: p D = 2 stress depth per unit of width. */
    double pressure = 2 * stress * depth / bore;

    butting->hoop_stress = stress;
    butting->wall_pressure = pressure;
    butting->times_tension = pressure / own_pressure;
}
