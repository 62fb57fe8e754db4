/* The cylinder as a single zone: first law for the gas between head, liner and
 * piston, in steps of crank angle.  cycle.c strings the phases together.
 *
 *   m cv dT = -p dV - dQ + dm_b (u_f - u_b) + dm_in (h_in - u_f) - dm_out R T
 *
 * Fuel that is injected comes in as it burns, dm_fuel (h_fuel - u_b), and the
 * fresh gas is air alone: the share x burned has made x of the air and of the
 * fuel into burned gas of the charge's own lambda.
 *
 * (J. B. Heywood 1988, sec. 14.4; fresh gas f turns into burned gas b at fixed
 * temperature, so the heat of combustion is the difference of their energies.)
 * Temperature is integrated, not energy: the energy balance over a cycle is
 * then a check of the integration and not an identity.
 */
#ifndef CG_ZONE_H
#define CG_ZONE_H

#include <stdbool.h>

#include "crank.h"
#include "gas.h"
#include "heat_transfer.h"
#include "spray.h"
#include "wiebe.h"

enum cg_phase {
    CG_PHASE_INTAKE,      /* fresh charge flows in */
    CG_PHASE_LATE_INTAKE, /* valve still open, flow balanced: see cycle.c */
    CG_PHASE_COMPRESSION, /* closed, nothing burns yet */
    CG_PHASE_BURN,        /* from the start of combustion to exhaust opening */
    CG_PHASE_EXHAUST      /* blow-down and exhaust stroke */
};

/* Narrow rooms around the piston that gas is pressed into: see zone.c. */
struct cg_zone_crevice {
    double volume;      /* [m3]; 0: none */
    double temperature; /* of its walls [K] */
    double share;       /* of the way to its walls that gas in it cools [1] */
};

struct cg_zone {
    struct cg_crank crank;
    double degree_time;             /* of one degree of crank [s] */
    const struct cg_heat_transfer *correlation;
    double heat_factor;             /* multiplies the coefficient [1] */
    double chamber_area, piston_area; /* [m2]; the liner's is pi bore depth */
    double head_temperature, piston_temperature, liner_temperature; /* [K] */
    struct cg_mixture fresh, burned;
    struct cg_wiebe wiebe;
    struct cg_wiebe premixed;       /* what burns first of an injected fuel */
    double premixed_share;          /* of the burn; the rest is `wiebe`'s; 0 where
                                       a spark fires [1] */
    double fuel_mass;               /* injected as it burns; 0: it is in the
                                       fresh charge [kg] */
    double fuel_enthalpy;           /* of that fuel, liquid [J/kg] */
    bool flame;                     /* comes to the wall last, else the gas is
                                       one mixture everywhere: zone.c */
    struct cg_zone_crevice crevice;
    double crevice_fresh, crevice_burned; /* enthalpy of either gas at its
                                             walls [J/kg] */
    double law_share;               /* of the correlation's heat: the rest is
                                       that of the crevices [1] */
    double ignition_temperature, ignition_pressure; /* where the burn begins */
    double fresh_mass;              /* to be burned by the Wiebe law [kg] */
    double intake_density;          /* fresh mass in per volume swept [kg/m3] */
    double intake_enthalpy;         /* of the fresh charge [J/kg] */
    struct cg_evaporation closed;   /* of spray, after the intake has closed */
    double exhaust_pressure;        /* in the port [Pa] */
    double exhaust_open_deg;
    double port_temperature;        /* of gas that flows back from it [K] */
    double motored_exponent;        /* polytropic, of the motored pressure */
    struct cg_gas_side side;        /* what the correlation reads and no crank
                                       angle changes; set by the two below */
};

/* Fills what follows from crank, speed [rev/s]: areas of head (over bore area)
 * and piston, degree_time, the fixed part of side; law_share 1.  Cannot
 * fail. */
void cg_zone_shape(struct cg_zone *zone, const struct cg_crank *crank,
                   double speed, double chamber_area_ratio);

/* What is integrated; heats and work are sums since the caller's zero. */
enum cg_zone_variable {
    CG_ZONE_TEMPERATURE, /* [K] */
    CG_ZONE_MASS,        /* [kg] */
    CG_ZONE_BURNED,      /* mass of burned gas [kg] */
    CG_ZONE_WORK,        /* done on the piston [J] */
    CG_ZONE_HEAD,        /* heat lost to each wall [J] */
    CG_ZONE_PISTON,
    CG_ZONE_LINER,
    CG_ZONE_CREVICE,
    CG_ZONE_ENTHALPY,    /* carried in by flow, less carried out [J] */
    CG_ZONE_BACK_FLOW,   /* mass that came back through the exhaust [kg] */
    CG_ZONE_VARIABLES
};

/* Everything that depends on the crank angle alone. */
struct cg_zone_node {
    double angle_deg;
    double depth, volume;    /* [m], [m3] */
    double volume_rate;      /* [m3/deg] */
    double burn_rate;        /* share of the charge [1/deg] */
    double evaporation_rate; /* heat that spray takes [J/deg] */
    double motored_pressure; /* [Pa]; 0 unless burning */
    double exhaust_rate;     /* share of the pressure excess let out [1/deg] */
};

/* What the gas does at a point, for the record. */
struct cg_zone_gas {
    double pressure;    /* [Pa] */
    double bore_temperature; /* of the gas that the bore sees [K] */
    double coefficient; /* heat_factor and law_share included [W/(m2 K)] */
    double heat;        /* coefficient times temperature [W/m2] */
    double bore_heat;   /* and times bore_temperature [W/m2] */
};

/* Takes y at intake closing as the reference state of the correlations and of
 * the motored pressure, and its fresh gas as what will burn.  Cannot fail. */
void cg_zone_close(struct cg_zone *zone, double angle_deg, const double *y);

/* Takes y where the burn begins as the state that the unburned gas is compressed
 * from.  Cannot fail. */
void cg_zone_ignite(struct cg_zone *zone, double angle_deg, const double *y);

/* Sets port_temperature from y at exhaust opening: that of the gas an adiabatic
 * blow-down and exhaust stroke would drive out, h = u + p_port V/m (Heywood
 * 1988, sec. 6.5), and never hotter than the cylinder.  It matters only where
 * the port's pressure is the higher and gas flows back, as at idle.  Cannot
 * fail. */
void cg_zone_open(struct cg_zone *zone, double angle_deg, const double *y);

/* Share of the charge burned [1] and its rate [1/deg] at a crank angle.  Cannot
 * fail. */
double cg_zone_burned(const struct cg_zone *zone, double angle_deg);
double cg_zone_burn_rate(const struct cg_zone *zone, double angle_deg);

/* Fills a node.  Cannot fail. */
void cg_zone_node(const struct cg_zone *zone, enum cg_phase phase,
                  double angle_deg, struct cg_zone_node *node);

/* Advances y[CG_ZONE_VARIABLES] from node[0] to node[2] by one classical
 * Runge-Kutta step of fourth order; node[1] lies half way.  gas[3]: at the
 * nodes, to the order that Simpson's rule over the step asks for.
 * A hopeless step leaves NaN or a wild temperature in y: check it. */
void cg_zone_step(const struct cg_zone *zone, enum cg_phase phase,
                  const struct cg_zone_node node[3], double *y,
                  struct cg_zone_gas gas[3]);

/* Pressure at a node [Pa].  Cannot fail. */
double cg_zone_pressure(const struct cg_zone *zone,
                        const struct cg_zone_node *node, const double *y);

/* Pressure and coefficient at a node.  Cannot fail. */
void cg_zone_gas(const struct cg_zone *zone, enum cg_phase phase,
                 const struct cg_zone_node *node, const double *y,
                 struct cg_zone_gas *gas);

#endif
