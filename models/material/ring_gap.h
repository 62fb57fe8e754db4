/* The ring's end gap, cold and hot, and what happens when the ends touch.
 *
 * The closed ring's arc is pi D - g.  It grows with the ring's mean
 * temperature while the bore it follows grows to D_hot:
 *   g_hot = pi D (1 + e_bore) - (pi D - g)(1 + e_ring)
 * with e the thermal strains from 20 C (geometry; no outside source needed).
 */
#ifndef CG_RING_GAP_H
#define CG_RING_GAP_H

/* Hot gap [m]; negative: the ends would overlap.  bore [m] cold diameter, gap
 * [m] cold, strains [1].  Cannot fail. */
double cg_gap_hot(double bore, double gap, double bore_strain,
                  double ring_strain);

/* The cold gap [m] that leaves exactly `hot` [m].  Inverse of cg_gap_hot. */
double cg_gap_cold_for(double bore, double hot, double bore_strain,
                       double ring_strain);

/* A gap [m] rounded up to whole filing steps [m]; one that is a whole number of
 * steps but for rounding errors stays.  Cannot fail. */
double cg_gap_round_up(double gap, double step);

/* What butting does to a ring whose ends would overlap by `overlap` [m] of arc
 * at the bore; all zero when it is not positive.  Thin ring of radial depth
 * `depth`, bore diameter `bore` [m], modulus [Pa]; contact pressure of the ring
 * by its own tension `own_pressure` > 0 [Pa].
 *   stress = E overlap / (pi D)      every fibre shortened in the same ratio
 *   p = 2 stress depth / D           balance of half a ring (thin hoop)
 * Friction and bending are left out.  The bore is taken as rigid, which makes
 * this an upper bound for a thin ring; Lame's thick ring in the same rigid bore
 * lies higher by about 1.6 depth / D (6 % at the usual depth).
 * Cannot fail. */
struct cg_butting {
    double hoop_stress;   /* compressive, uniform [Pa] */
    double wall_pressure; /* added on the bore by the ring [Pa] */
    double times_tension; /* wall_pressure / own_pressure [1] */
};
void cg_gap_butting(double bore, double depth, double modulus, double overlap,
                    double own_pressure, struct cg_butting *butting);

#endif
