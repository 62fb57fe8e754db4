/* Growth of a bore: a liner alone, or a liner in a block, as thick-walled
 * cylinders with thermal strain (plane stress, free ends).
 * S. Timoshenko and J. N. Goodier, "Theory of Elasticity", thick cylinder with
 * axisymmetric temperature; S. Timoshenko, "Strength of Materials II", shrink
 * fit.  A free hollow cylinder grows at either face by the strain of its
 * AREA-MEAN temperature, so only area means enter here.
 */
#ifndef CG_CYLINDER_H
#define CG_CYLINDER_H

#include <stdbool.h>

enum cg_seat {
    CG_SEAT_PARENT,  /* the bore is cut in the block itself: one layer */
    CG_SEAT_CAST_IN, /* liner bonded in the block: the joint can pull */
    CG_SEAT_PRESSED, /* liner pressed in: the joint can only push, and opens */
    CG_SEAT_WET      /* liner stands free in the coolant: one layer */
};

struct cg_layer {
    double inner, outer;     /* cold radii [m], inner < outer */
    double modulus, poisson; /* [Pa], [1], at temperature */
    double strain;           /* free thermal strain at its area mean [1] */
};

struct cg_bore_growth {
    double radial;           /* bore radius, hot minus cold as honed [m] */
    double contact_pressure; /* hot, at the joint [Pa]; negative: pulls; 0 for
                                one layer or an open joint */
    double hoop_stress;      /* hot, at the bore, from the joint [Pa]; negative:
                                compressed; the liner's own temperature
                                gradient is not in it */
    bool open;               /* a pressed joint that has lost contact */
};

/* Area mean of the values of `cells` >= 1 rings: sum T_i A_i / sum A_i, where
 * rings of equal radial width run from `inner` to `outer` [m] (inner may be 0).
 * values and result share any unit.  Cannot fail. */
double cg_area_mean(double inner, double outer, int cells,
                    const double *values);

/* Radial displacement [m], outward positive, of the point at `radius` > 0 [m]
 * of a cylinder inner..outer under inner and outer pressure [Pa] (Lame, in
 * Timoshenko and Goodier), plane stress, no thermal part.  layer->inner = 0 is
 * a solid shaft.  Cannot fail. */
double cg_lame_displacement(const struct cg_layer *layer, double inner_pressure,
                            double outer_pressure, double radius);

/* Joint pressure [Pa] of two cylinders with radial overlap [m] at the joint
 * (liner->outer == block->inner nominally), thermal strains included:
 * overlap + (e_liner - e_block) r = p (give of the liner + give of the block).
 * Timoshenko, Strength of Materials II, shrink fit.  Negative: a bonded joint
 * is pulled, a pressed one would be open.  Cannot fail. */
double cg_joint_pressure(const struct cg_layer *liner,
                         const struct cg_layer *block, double overlap);

/* Growth of the bore from the cold, honed state.  `block` is NULL for
 * CG_SEAT_PARENT and CG_SEAT_WET.  interference: radial overlap at assembly,
 * cold [m] (CG_SEAT_PRESSED only; the bore is honed after pressing, so only
 * the change of joint pressure moves it).  gas_pressure [Pa] inside the bore;
 * pass 0 to leave pressure dilation out.
 *   radial = e_liner a + u(a; gas, p_hot) - u(a; 0, p_cold)
 * p_cold is the interference pressure alone; it is taken with the same (hot)
 * moduli, which is harmless while both metals soften alike, for displacement
 * depends only on their ratio.  A cast-in joint counts as free of stress when
 * honed: casting stress moves the bore before honing, not after it.  A joint
 * that opens leaves the liner to its own growth plus the release of p_cold.
 * Cannot fail. */
void cg_bore_grow(enum cg_seat seat, const struct cg_layer *liner,
                  const struct cg_layer *block, double interference,
                  double gas_pressure, struct cg_bore_growth *growth);

#endif
