/* An operating point: what the engine breathes and how it burns at one speed
 * and load.
 */
#ifndef CG_OPERATING_H
#define CG_OPERATING_H

#include "case.h"
#include "cycle.h"
#include "status.h"

/* Past this nobody retards further: boost, fuel or ratio is changed instead
 * (common practice, no source).  What still knocks there is said to [deg]. */
#define CG_RETARD_MOST 15.0

struct cg_operating {
    double speed;               /* [rev/s] */
    double load;                /* 0 closed throttle .. 1 boost target */
    double heat_factor;         /* of gas, knock in it [1] */
    double coolant_temperature; /* or of the cooling air at the fins [K] */
    double cooling_flow;        /* outside.h; of coolant 1 [1] */
    double oil_temperature;     /* [K] */
    /* As they were, where a course gives them, else NaN: as the case says. */
    double lambda;          /* [1] */
    double burn50_deg;      /* no knock retards it further */
    double air_temperature; /* in the manifold, behind the cooler [K] */
    double soak; /* heat in the cooler's core, 1: as full boost brings it */
    double nitrous; /* share of its flow that is on [1] */
};

/* A speed [rev/s] and load of the case, all else as it says.  Cannot fail. */
struct cg_operating cg_operating_at(const struct cg_case *c, double speed,
                                    double load);

/* Rated speed and full load, with the most nitrous that the duty has on.  Cannot
 * fail. */
struct cg_operating cg_operating_full(const struct cg_case *c);

/* What a row of a course says, moved as the case's uncertain inputs are.
 * Cannot fail. */
struct cg_operating cg_operating_of(const struct cg_case *c,
                                    const double of[CG_CHANNELS]);

struct cg_charge_state {
    double manifold_pressure;    /* [Pa] absolute */
    double manifold_temperature; /* at the valve, fuel evaporated [K] */
    double exhaust_pressure;     /* [Pa] absolute */
    double compressor_work;      /* of all chargers, per mass of air [J/kg] */
    double belt_work;            /* of it, what the crankshaft pays [J/kg] */
    double lambda;               /* at this load [1] */
    struct cg_brought brought;   /* nitrous and spray: brought.h */
};

/* State of the charge.  Manifold pressure runs in a straight line from closed
 * throttle (load 0) to ambient plus boost (load 1).  Chargers:
 * charger_row.h; the cooler behind the last by effectiveness.  A turbine holds
 * back turbine_ratio times what its own charger adds.  Mixture: stoichiometric up to load 0.6, then in a straight line
 * to fuel.lambda (common practice, no source).  Mixture and air of the operating
 * point's own come first.  A cooler that has soaked gives charge.cooler_soak of
 * what it would take at full boost back.
 *
 * Compression ignition has no throttle: the manifold's pressure runs from
 * ambient (load 0) to ambient plus boost, and load is the fuel, as a share of
 * that at full load; lambda follows from the air there is, CG_LAMBDA_MOST at
 * most: idling (common practice, no source).  Cannot fail. */
#define CG_LAMBDA_MOST 10.0
#define CG_LAMBDA_SPARK_MOST 1.8 /* leaner, no spark's flame runs: likewise */
void cg_operating_charge(const struct cg_case *c,
                         const struct cg_operating *operating,
                         struct cg_charge_state *charge);

/* The leanest that its kind of ignition fires [1].  Cannot fail. */
double cg_lambda_most(const struct cg_case *c);

/* The rise of temperature behind the last charger at a load [K].  Cannot fail. */
double cg_operating_rise(const struct cg_case *c, double load);

/* The cycle's input at this point; wall temperatures are left at 0 for the
 * caller.  CG_BAD_INPUT for an unknown fuel or correlation name. */
enum cg_status cg_operating_cycle_input(const struct cg_case *c,
                                        const struct cg_operating *operating,
                                        struct cg_cycle_input *input,
                                        struct cg_error *error);

/* Friction mean effective pressure [Pa]: S. K. Chen and P. F. Flynn,
 * SAE 650733 (1965), constants from memory for spark ignition engines:
 * 0.4 bar + 0.005 pmax + 0.09 bar/(m/s) Sp + 0.0009 bar/(m/s)2 Sp2.
 * peak_pressure [Pa], piston_speed mean [m/s].  Of the compression ignition
 * engine that it is of, from memory:
 * 0.137 bar + 0.005 pmax + 0.162 bar/(m/s) Sp.  Cannot fail. */
double cg_friction_mep(double peak_pressure, double piston_speed);
double cg_friction_mep_compression(double peak_pressure, double piston_speed);

#endif
