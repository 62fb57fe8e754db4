/* The outside of the cylinder: what takes its heat there, coolant or air.
 *
 * Air past fins: one coefficient on the bore's own area holds for fin area,
 * their efficiency and the air between them together.  It is given for air of
 * 30 m/s, 25 C and 101.325 kPa, and goes with the air's mass flow to the power
 * 0.65: B. Pinkel, NACA Report 612 (1938), from memory, where cooling goes with
 * the pressure drop across the fins to a power near 1/3, and that drop with the
 * square of the flow.
 * Its size, worked out by hand: between fins 4 mm apart air of 30 m/s gives
 * some 150 W/(m2 K) (Nu = 0.023 Re^0.8 Pr^0.4, a quarter more at the entrance).
 * Iron fins 25 mm high, 3 mm thick, every 9 mm are 7.5 times the bore's area
 * and 62 % effective: 700; of aluminium 30 mm high, 2 mm thick, every 6 mm, 15
 * times and 68 %: 1600.  Which and how many: common practice, no source. Left
 * out: heat from the head into the barrel's top, the air's warming round the
 * barrel (one mean rise stands for it), radiation, the fins' own heat capacity,
 * heat by free convection of an engine that stands.
 */
#ifndef CG_OUTSIDE_H
#define CG_OUTSIDE_H

#include "case.h"

struct cg_outside {
    double top, length;  /* of bore with coolant or fins behind [m] */
    double behind;       /* there [W/(m2 K)] */
    double above, below; /* bore above and below that [W/(m2 K)] */
    double head;         /* gas face of the head [W/(m2 K)] */
};

/* Coolant's coefficients are of the outer wall's area, air's of the bore's.
 * Cannot fail. */
struct cg_outside cg_outside_of(const struct cg_case *c);

/* Of what takes the heat, where a duty says nothing else [K]: the coolant, or
 * the cooling air at the fins.  Cannot fail. */
double cg_outside_temperature(const struct cg_case *c);

/* By how much air's coefficients are larger at an engine speed [rev/s] than
 * they are given for; of coolant 1.  Cannot fail. */
double cg_outside_flow(const struct cg_case *c, double speed);

/* By how much they are larger with that share of the air [1].  Cannot fail. */
double cg_outside_share(double share);

/* Of cooling.air_speed, the air that a duty may have [1]. */
#define CG_AIR_LEAST 0.05
#define CG_AIR_MOST 4.0

static inline bool cg_air_cooled(const struct cg_case *c)
{
    return c->cooling.medium == CG_MEDIUM_AIR;
}

#endif
