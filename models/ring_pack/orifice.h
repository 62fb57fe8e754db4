/* Flow of an ideal gas through an orifice, choked or not.
 *
 *   m = Cd A pu / sqrt(R Tu) psi(r),   r = pd/pu, held at the critical ratio
 *   psi^2 = 2 g/(g - 1) (r^(2/g) - r^((g + 1)/g))
 *   critical r = (2/(g + 1))^(g/(g - 1))
 *
 * A. H. Shapiro, "The Dynamics and Thermodynamics of Compressible Fluid Flow"
 * (1953), ch. 4; J. B. Heywood, "Internal Combustion Engine Fundamentals"
 * (1988), app. C.  For the end gap of a ring: M. Namazian and J. B. Heywood,
 * "Flow in the piston-cylinder-ring crevices of a spark-ignition engine",
 * SAE 820088 (1982), with Cd = 0.86.
 */
#ifndef CG_ORIFICE_H
#define CG_ORIFICE_H

/* A gas as orifices and channels see it. */
struct cg_flow_gas {
    double gas_constant; /* specific [J/(kg K)] */
    double gamma;        /* ratio of heat capacities [1], > 1 */
    double critical;     /* pressure ratio at which flow chokes [1] */
    double factor;       /* 2 g/(g - 1) [1] */
    double choked;       /* psi^2 of choked flow [1] */
};

/* Fills the rest from the first two.  Cannot fail. */
void cg_flow_gas_set(struct cg_flow_gas *gas, double gas_constant,
                     double gamma);

/* psi^2 [1] at pressure ratio [1] 0..1, and its slope; constant below the
 * critical ratio.  Cannot fail. */
double cg_orifice_square(const struct cg_flow_gas *gas, double ratio,
                         double *slope);

/* psi [1] itself, by the book.  Cannot fail. */
double cg_orifice_function(const struct cg_flow_gas *gas, double ratio);

struct cg_flow {
    double rate;         /* from up to down [kg/s] */
    double d_up, d_down; /* by either pressure [kg/(s Pa)] */
    double d_height;     /* by the height of a channel [kg/(s m)] */
};

/* Flow through `area` [m2], discharge coefficient included, from pressure up
 * > 0 at `temperature` [K] to down > 0, up >= down [Pa].  The slope of psi at
 * equal pressures is infinite; here psi^2/sqrt(psi^2 + 1e-6) stands for psi,
 * as viscosity would have it: 5e-6 less at r = 0.95, 2e-4 at 0.999.
 * Cannot fail. */
void cg_orifice_flow(const struct cg_flow_gas *gas, double area,
                     double temperature, double up, double down,
                     struct cg_flow *flow);

#endif
