/* One four-stroke engine cycle: single zone (zone.h), Wiebe burn, blow-down and
 * gas exchange with energy carried by the flows.
 *
 * Gas exchange is the simplest that keeps mass and energy:
 * - Intake: fresh charge flows in as the piston uncovers volume, at the density
 *   that makes the air come out as the volumetric efficiency says.  Cylinder
 *   pressure follows; it settles near volumetric efficiency times manifold
 *   pressure.  Residual gas above manifold pressure expands as charge enters.
 * - From bottom dead centre to intake closing flow is taken as balanced (ram
 *   against piston), so closing later than bottom centre costs no charge:
 *   that is in the volumetric efficiency.  Closing before it ends the inflow.
 * - Exhaust: see zone.c.  The exhaust closes as the intake opens, at top dead
 *   centre; what is left is the residual.
 * Fuel enters as liquid.  Injected, it enters as it burns (injected_burn.h), and
 * what is compressed is air.  Otherwise:  What evaporates before the valve has cooled the charge
 * already; what evaporates on port and valve walls is paid by them; the rest
 * is taken from the charge as it enters (latent_charge), though part of it
 * evaporates a little later, in compression.
 * Nitrous is a gas at the valve and comes apart in the flame alone.  Sprayed water
 * and alcohol count as vapour from the valve on; the heat that evaporates them
 * is taken before it, as they enter and, by a law of crank angle, between intake
 * closing and the earliest burn.
 * Products are frozen as the water-gas equilibrium leaves them: there is no
 * dissociation, so that peak temperatures come out some per cent high.
 */
#ifndef CG_CYCLE_H
#define CG_CYCLE_H

#include <stdbool.h>
#include <stddef.h>

#include "crank.h"
#include "fuel.h"
#include "heat_transfer.h"
#include "injected_burn.h"
#include "knock_limit.h"
#include "status.h"
#include "zone.h"

enum { CG_RESIDUALS = 3 };

/* Gas left from the cycle before, at top dead centre. */
struct cg_residual {
    double temperature;            /* [K] */
    double mass, burned;           /* in all, and burned gas in it [kg] */
    double law_share;              /* of its zone; 0: unknown */
    double put_in[CG_RESIDUALS];   /* a change of these, and what came out of */
    double came_out[CG_RESIDUALS]; /* it a cycle later, relative; 0: unknown */
    struct cg_knock_start knock;   /* the burn at the knock limit */
};

/* What comes with the charge besides air and the engine's own fuel, a cylinder
 * and cycle; all 0: nothing. */
struct cg_brought {
    double nitrous;        /* [kg] */
    double nitrous_lambda; /* of its oxygen and the fuel matched to it [1] */
    double water;          /* sprayed, all of it [kg] */
    double alcohol;        /* sprayed, and part of what lambda says [kg] */
    double displaced;      /* air whose room their gas takes before the valve
                              [kg] */
    double entering;       /* heat that spray takes from the charge as it enters
                              the cylinder [J] */
    double closed;         /* and after the intake has closed [J] */
};

struct cg_cycle_input {
    struct cg_crank crank;
    double speed;                  /* [rev/s] */
    double manifold_pressure;      /* [Pa] absolute */
    double manifold_temperature;   /* [K], fuel evaporation in it included */
    double exhaust_pressure;       /* [Pa] absolute, in the exhaust port */
    double volumetric_efficiency;  /* fresh air taken in, over swept volume at
                                      manifold density [1] */
    const struct cg_fuel *fuel;    /* the engine's own */
    double lambda;                 /* of the air and the fuel matched to it
                                      [1] */
    struct cg_brought brought;
    double burn50_deg;             /* crank angle of half burned, after TDC;
                                      the earliest where knock may retard it */
    struct cg_knock_law knock;     /* octane 0: not looked at */
    struct cg_injection injection; /* instead of burn50_deg, knock and
                                      burn_duration_deg, where it is on */
    double burn_duration_deg;      /* 10 % to 90 % burned */
    double combustion_efficiency;  /* share of the charge that burns [0..1] */
    double latent_charge;          /* share of the fuel's latent heat that the
                                      charge gives in the cylinder [0..1] */
    double latent_walls;           /* and that port and valve walls give; the
                                      rest was taken before manifold_temperature
                                      [0..1], both together at most 1 */
    const struct cg_heat_transfer *correlation;
    double heat_factor;            /* multiplies the coefficient [1] */
    double chamber_area_ratio;     /* head's gas face over bore area [1] */
    double head_temperature, piston_temperature, liner_temperature; /* [K] */
    bool flame;                    /* comes to the bore last: zone.c; false: it
                                      sees the mean gas */
    struct cg_zone_crevice crevice; /* around the piston; volume 0: none */
    double crevice_in_law;         /* share of its heat that the correlation's
                                      holds: fitted to engines with crevices,
                                      it is less by so much [0..1] */
    double intake_close_deg;       /* e.g. -140 */
    double exhaust_open_deg;       /* e.g. 130 */
    double step_deg;               /* crank step, 0.1 to 2 */
    bool rough;                    /* in long steps: a cycle to iterate with,
                                      or to compare with another rough one */
    struct cg_residual guess;      /* to begin with, of a like cycle; mass 0:
                                      none at hand */
};

struct cg_cycle_point {
    double crank_deg;   /* -360 .. 360, 0: firing top dead centre */
    double pressure;    /* [Pa] */
    double temperature; /* [K] */
    double bore_temperature; /* of the gas the bore sees [K] */
    double coefficient; /* gas-side h, heat_factor included, less what the
                           crevices take of it [W/(m2 K)] */
    double depth;       /* piston below top dead centre [m] */
    double burned;      /* mass fraction burned [1] */
};

/* Gas side of the walls at a node of the integration, and its weight in means
 * over the cycle: Simpson's rule over each step, as the classical Runge-Kutta
 * scheme integrates what it is given, leg by leg, so that no rule reaches over
 * a kink. */
struct cg_cycle_side {
    double width;       /* [deg]; they sum to 720 */
    double depth;       /* [m] */
    double coefficient; /* h [W/(m2 K)] */
    double heat;        /* h T [W/m2] */
    double bore_heat;   /* h times the temperature of the gas that the bore
                           sees [W/m2] */
};

enum {
    CG_CYCLE_POINTS = 7201,
    CG_CYCLE_SIDES = 2 * CG_CYCLE_POINTS + 8 /* legs */
};

/* Everything per cylinder and cycle unless said otherwise. */
struct cg_cycle {
    size_t points;
    struct cg_cycle_point point[CG_CYCLE_POINTS]; /* rising angle, covers
                                           -360..360 with both ends */
    size_t sides;
    struct cg_cycle_side side[CG_CYCLE_SIDES];
    struct cg_residual residual;
    double air_mass, residual_mass, trapped_mass; /* [kg] */
    double fuel_mass;          /* sprayed alcohol in it [kg] */
    double fuel_energy;        /* what it and nitrous release at most: lower
                                  heating value, heat of decomposition [J] */
    double gross_work;         /* compression and expansion, -180..180 [J] */
    double pumping_work;       /* the rest (negative: lost) [J] */
    double heat_head, heat_piston, heat_liner; /* lost to the walls [J] */
    double heat_evaporation;   /* taken from port and valve walls [J] */
    double heat_crevice;       /* lost in the crevices, beside these [J] */
    double unburned_energy;    /* heating value of CO, H2, fuel vapour and
                                  nitrous that leave [J] */
    double exhaust_temperature;/* enthalpy mean of what leaves [K] */
    double peak_pressure;      /* [Pa] */
    double peak_pressure_deg;
    double peak_rise;          /* largest dp/dangle [Pa/deg] */
    double imep_gross, imep_net; /* [Pa] */
    double energy_residual;    /* first-law residual over fuel_energy [1] */
    double burn50_deg;         /* half burned, retarded by knock [deg] */
    double ignition_deg;       /* where it begins to burn [deg] */
    double premixed_share;     /* of an injected fuel [1] */
    double knock_integral;     /* knock.h, with this burn; NaN: not looked at */
    double knock_unretarded;   /* with the earliest; NaN in a rough cycle */
    int passes;                /* cycles run until mass and residual settled */
};

/* Whether the input means something: CG_BAD_INPUT names the first field that
 * does not, with its limits. */
enum cg_status cg_cycle_check(const struct cg_cycle_input *input,
                              struct cg_error *error);

/* Runs the cycle until it repeats: the change of the residual's mass and
 * temperature, times its share of the charge, below 2.5e-7.  A rough cycle
 * repeats to 4e-4, at the knock limit to 5e-5, and takes a fifth of the steps:
 * its wall heat is within 3 % of the full one's, the ratio of two of them within
 * 0.1 % (tested), and its energy_residual is not small.  The burn stands where
 * burn50_deg says, or later by at most knock.retard_most: as early as the knock
 * integral stays at 1.  `cycle` is caller-owned; about 0.8 MB, so not
 * on a small stack.  CG_BAD_INPUT as cg_cycle_check, CG_NUMERICAL (with the
 * crank angle) if the gas leaves 150..6000 K or the cycle does not come to
 * repeat.  A failed run leaves cycle->points = 0 and nothing else to read. */
enum cg_status cg_cycle_run(const struct cg_cycle_input *input,
                            struct cg_cycle *cycle, struct cg_error *error);

#endif
