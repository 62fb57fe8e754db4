/* An operating point: the engine held at one operating point until everything
 * has settled.  Cycle, gas side, oil film and wall temperatures agree.
 *
 * A transient reads its gas side and films from the points at its operating
 * points.  There the coefficients thus lag the wall: they are those of the
 * settled walls, while the heat itself, h (T_gas - T_wall), follows the wall
 * as it is.  The error left is that of a few per cent of coefficient when the
 * walls are still cold.
 */
#ifndef CG_OPERATING_POINT_H
#define CG_OPERATING_POINT_H

#include "cycle.h"
#include "gas_side.h"
#include "joint.h"
#include "operating.h"
#include "regime_map.h"
#include "ring_film.h"
#include "status.h"
#include "stepper.h"
#include "thermal.h"

struct cg_performance {      /* whole engine unless said otherwise */
    double imep, fmep, bmep; /* net indicated, friction, brake [Pa] */
    double brake_power;      /* [W] */
    double air_flow, fuel_flow; /* sprayed alcohol in the fuel [kg/s] */
    double nitrous_flow, water_flow, alcohol_flow; /* [kg/s] */
    double fuel_power;       /* heating value of the fuel's flow, and what
                                nitrous gives by coming apart [W] */
    double peak_pressure;    /* [Pa] */
    double peak_rise;        /* of pressure, knock left out [Pa/deg] */
    double exhaust_temperature; /* [K] */
    double wall_heat_share;  /* of the fuel energy [1] */
    double head_heat, piston_heat, bore_heat; /* from the gas [W] */
    double crevice_heat;     /* from gas in the crevices, beside these [W] */
    double evaporation_heat; /* from port and valve walls to the fuel [W] */
    double unburned_power;   /* heating value that leaves [W] */
    double peak_flux;        /* on the crown [W/m2] */
    double mean_flux;        /* on the crown [W/m2] */
    double energy_residual;  /* of the cycle, over fuel energy [1] */
    double burn50_deg;       /* half burned, after TDC [deg] */
    double ignition_deg;     /* where it begins to burn [deg] */
    double premixed_share;   /* of an injected fuel [1] */
    double knock_integral;   /* knock.h, with this burn [1] */
    double knock_unretarded; /* with the burn where no knock retards it [1] */
};

/* What a kelvin more makes of the gas side, relative [1/K]. */
struct cg_gas_response {
    double coefficient, temperature; /* of the gas, at every wall */
    double crevice;                  /* of the heat of gas in the crevices */
};

/* Head, piston and liner act through the charge they warm and, at the knock
 * limit, the burn it retards, so that one mean wall will do for them.  The
 * crevices' own walls act on the gas pressed in there. */
struct cg_wall_response {
    struct cg_gas_response walls, crevices;
    int place; /* cg_burn_place of the burn that it holds for: warmer walls
                  retard a burn at the knock limit, and no other */
};

/* The uniform film that was solved for last, and for which oil. */
struct cg_film_solved {
    double temperature; /* [K]; 0: not for this case and cycle */
    double film;        /* [m] */
    double slope;       /* its relative change by that of the root of the oil's
                           viscosity [1]; NaN: not known, taken as 1 */
    double reach;       /* it is carried on by that [K] */
};

struct cg_operating_point {
    struct cg_operating operating;
    double of[CG_CHANNELS];        /* what was asked for: cg_operating_of makes
                                      `operating` of it */
    struct cg_charge_state charge;
    struct cg_cycle_input input;   /* with the settled wall temperatures */
    struct cg_mean_gas crown;
    struct cg_mean_gas *station;   /* [stations] */
    double *cylinder;              /* pressure [CG_RING_FILM_POINTS] [Pa] */
    struct cg_wall_response response;
    double wall_rise;              /* mean wall over that of the cycle [K] */
    double crevice_rise;           /* the same of the crevices' walls [K] */
    struct cg_residual residual;   /* that the cycle hands on */
    double film[CG_RINGS];         /* uniform, of the same mean conductance as
                                      the film over the stroke [m] */
    struct cg_film_mean film_mean[CG_RING_OIL]; /* the Reynolds law's; scale
                                                   not in it */
    struct cg_film_solved film_solved[CG_RINGS];
    double crevice;                /* heat of gas in crevices, one cylinder
                                      [W] */
    double friction;               /* ring pack and skirt, one cylinder [W] */
    double *joint;                 /* joint coefficient [stations] */
    struct cg_joint *joint_search; /* pressed seat: on the way to it */
    double *settled;               /* [nodes] [K] */
    struct cg_performance performance;
    int passes;
};

/* Workspace for solving points of one thermal network. */
struct cg_point_workspace {
    struct cg_cycle *cycle;
    struct cg_stepper *stepper;
    struct cg_ring_film_workspace *ring_film;
    struct cg_ring_gas *ring_gas;
};
enum cg_status cg_point_workspace_create(const struct cg_thermal *thermal,
                                     struct cg_point_workspace *workspace,
                                     struct cg_error *error);
void cg_point_workspace_free(struct cg_point_workspace *workspace);

/* Arrays of a point, and their release (accepts a zeroed one). */
enum cg_status cg_point_create(const struct cg_thermal *thermal,
                                struct cg_operating_point *point,
                                struct cg_error *error);
void cg_point_free(struct cg_operating_point *point);
/* All of a point of the same cells into the arrays of another.  Cannot fail. */
void cg_point_copy(const struct cg_thermal *thermal,
                   const struct cg_operating_point *from,
                   struct cg_operating_point *to);

/* Solves for the operating point set in point->operating: a fixed point over
 * wall temperatures, films and joints.  `guess`: a solved point to
 * start from, or NULL.  CG_NUMERICAL if it does not settle or the
 * cycle fails. */
enum cg_status cg_point_solve(const struct cg_case *c,
                               struct cg_thermal *thermal,
                               struct cg_point_workspace *workspace,
                               const struct cg_operating_point *guess,
                               struct cg_operating_point *point,
                               struct cg_error *error);

/* A full cycle for the walls in point->settled, and the settled state it makes;
 * *change: by how much the walls then move [K].  Errors: as cg_point_solve. */
enum cg_status cg_point_renew(const struct cg_case *c,
                              struct cg_thermal *thermal,
                              struct cg_point_workspace *workspace,
                              struct cg_operating_point *point, double *change,
                              struct cg_error *error);

/* The cycle and gas side only, for the wall temperatures already in
 * point->input. */
enum cg_status cg_point_cycle(const struct cg_case *c,
                               const struct cg_thermal *thermal,
                               struct cg_point_workspace *workspace,
                               struct cg_operating_point *point,
                               struct cg_error *error);

/* 0: the burn is where knock does not retard it, 1: at the knock limit, 2: as
 * late as it may be. */
int cg_burn_place(const struct cg_operating_point *point);

/* Fills point->response from two rough cycles more, or four where the burn comes
 * to another place, after a rough one. */
enum cg_status cg_point_respond(struct cg_point_workspace *workspace,
                                 struct cg_operating_point *point,
                                 struct cg_error *error);

/* The films for the temperatures in point->settled, and the cylinder's
 * pressure in point->cylinder: as set for mid-stroke, or for the compression
 * rings the Reynolds law, with gas by cg_ring_gas_estimate.  A film is solved
 * anew when its oil is 3 K from where it was solved, or 1 or 0.1 K by how much
 * is known of its slope (operating_point_film.c), and follows the oil's
 * viscosity between.  CG_BAD_INPUT for an
 * unknown oil grade; as cg_ring_film_solve. */
enum cg_status cg_point_set_films(const struct cg_case *c,
                                   const struct cg_thermal *thermal,
                                   struct cg_point_workspace *workspace,
                                   struct cg_operating_point *point,
                                   struct cg_error *error);

/* The settled state for the gas side, films and joints in the point. */
enum cg_status cg_point_settle(struct cg_thermal *thermal,
                                struct cg_point_workspace *workspace,
                                struct cg_operating_point *point,
                                struct cg_error *error);

/* The same with films, joints, and the gas side by point->response, that agree
 * with it, by corrections from the state in
 * point->settled until they are below `tolerance` [K]; the factors are those
 * settled with last, or new ones where these do not serve.  Errors: as
 * cg_stepper_settle, CG_NUMERICAL if it does not come to rest. */
enum cg_status
cg_point_resettle(const struct cg_case *c, struct cg_thermal *thermal,
                  struct cg_point_workspace *workspace, double tolerance,
                  struct cg_operating_point *point, struct cg_error *error);

/* Gas that the cycle left, brought to the walls by the response. */
struct cg_mean_gas cg_point_responded(const struct cg_operating_point *point,
                                       const struct cg_mean_gas *gas);

/* Heat of gas in the crevices, one cylinder, brought to the walls likewise
 * [W]. */
double cg_point_crevice(const struct cg_operating_point *point);

/* Sets the network to the state `part` (0..1) of the way from point a to b:
 * coefficients and heats in straight lines.  Cannot fail. */
void cg_point_apply(const struct cg_operating_point *a,
                    const struct cg_operating_point *b, double part,
                    struct cg_thermal *thermal);

/* What cg_point_apply reads of a point, at a place between solved ones (point:
 * the nodes of the map); `operating` is what runs there.
 * `out` is a point of the same cells, and is not solved.  Cannot fail. */
void cg_point_blend(const struct cg_map_place *place,
                    const struct cg_operating_point *point,
                    const struct cg_operating *operating,
                    const struct cg_thermal *thermal,
                    struct cg_operating_point *out);

/* What limits are judged by, at a place between solved points.  Cannot fail. */
struct cg_point_seen {
    double knock_integral, burn50_deg; /* [1], [deg] */
    double peak_pressure, peak_rise;   /* [Pa], [Pa/deg] */
};
struct cg_point_seen cg_point_see(const struct cg_map_place *place,
                                  const struct cg_operating_point *point);

#endif
