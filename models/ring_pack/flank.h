/* The channel between a ring's flank and its groove: gas flow through it, and
 * the gas pressure in it that moves the ring.
 *
 * Laminar and isothermal (Namazian and Heywood, SAE 820088, 1982; the flow of
 * H. Schlichting, "Boundary-Layer Theory", between parallel walls, with the
 * density of an ideal gas):
 *   m = h^3 L (pu^2 - pd^2) / (24 mu R T W)
 * At full side clearance and high pressure that is far past laminar flow, so
 * that the gas's own inertia, not viscosity, is the limit.  The channel is
 * therefore in series with an orifice of its own section: for small pressure
 * differences, where one drop is a q and the other b q^2, exactly
 *   q = 2 ql / (1 + sqrt(1 + 4 (ql/qo)^2))
 * and for large ones the smaller of the two.
 */
#ifndef CG_FLANK_H
#define CG_FLANK_H

#include "orifice.h"

struct cg_channel {
    double height;      /* h [m], > 0 */
    double length;      /* L, around the ring [m] */
    double width;       /* W, along the flow [m] */
    double temperature; /* of the walls and so of the gas [K] */
    double viscosity;   /* [Pa s] */
    double discharge;   /* coefficient of the orifice [1] */
};

/* Laminar flow alone [kg/s], up >= down > 0 [Pa].  Cannot fail. */
double cg_channel_laminar(const struct cg_flow_gas *gas,
                          const struct cg_channel *channel, double up,
                          double down);

/* Laminar flow limited by the orifice.  Cannot fail. */
void cg_channel_flow(const struct cg_flow_gas *gas,
                     const struct cg_channel *channel, double up, double down,
                     struct cg_flow *flow);

/* Mean pressure along the channel [Pa]: laminar flow makes p^2 fall in a
 * straight line, whatever the height, so that a seated flank (its roughness
 * leaks) and an open one have the same
 *   2/3 (a^2 + a b + b^2) / (a + b)
 * and its slopes by either end.  Cannot fail. */
double cg_channel_mean(double a, double b, double *d_a, double *d_b);

/* Viscosity of air [Pa s] at a temperature [K], which stands for that of
 * charge and of burned gas: Sutherland's law, F. M. White, "Viscous Fluid
 * Flow" (1974), table 1-2: 1.716e-5 Pa s at 273 K, S = 111 K. */
double cg_gas_viscosity(double temperature);

#endif
