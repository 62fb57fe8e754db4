/* A case carried through its duty: the operating points of the duty,
 * and the transient of the thermal network from the start to the end.
 */
#ifndef CG_DUTY_RUN_H
#define CG_DUTY_RUN_H

#include <stdbool.h>

#include "case.h"
#include "operating_point.h"
#include "status.h"
#include "stepper.h"
#include "thermal.h"

/* A time between two places, run through in a straight line. */
struct cg_piece {
    double from, to;   /* [s] */
    size_t start, end; /* operating points; of a mapped run, places */
};

/* Of a mapped run: what runs there, and the points around it. */
struct cg_place {
    struct cg_operating operating;
    double of[CG_CHANNELS]; /* as cg_operating_point */
    struct cg_map_place at;
};

/* A course that comes by more different points than this, and by more than a map
 * over its channels has corners (regime_map.h), is run by the map. */
enum { CG_POINTS_UNMAPPED = 96 };

struct cg_duty_run {
    struct cg_thermal *thermal;
    struct cg_point_workspace workspace;
    struct cg_operating_point *point;
    size_t points, points_made, points_allocated; /* made: with arrays */
    struct cg_piece *piece;
    size_t pieces, pieces_allocated;
    bool course;                       /* the duty is one */
    bool mapped;                       /* pieces go from place to place */
    struct cg_regime_map map;
    size_t nodes;                      /* of it: the first points */
    struct cg_place *place;            /* [places], of a mapped run */
    size_t places, places_allocated;
    struct cg_operating_point mixed[2];/* of the piece under way, mapped */
    size_t full_load;                  /* point at rated speed and load 1 */
    size_t start;                      /* point the duty starts from, settled */
    size_t start_place;                /* the same as pieces tell it;
                                          SIZE_MAX: none of theirs */
    double duration;                   /* [s] */
    double tightest;                   /* once it went: of the top ring [s] */
    double film_scale, friction_share; /* of the case it was made for [1] */
    const struct cg_march *march;      /* under way, else NULL */
};

/* The solver's own instants come the same whatever a table asks for: answers
 * are made of these alone.  The ends of its steps, the duty's start the first,
 * and the middle of each in between. */
enum cg_step_place { CG_STEP_NONE, CG_STEP_MIDDLE, CG_STEP_END };

struct cg_instant {
    double time, speed, load;  /* [s] [rev/s] [1] */
    double manifold_pressure;  /* [Pa] absolute */
    const double *temperature; /* [nodes] [K], valid during the call */
    enum cg_step_place step;
    bool table; /* the start, a multiple of the interval asked
                   for, or the end of the duty */
};

typedef enum cg_status (*cg_instant_observer)(void *context,
                                              const struct cg_instant *instant,
                                              struct cg_error *error);

/* Builds the network and solves the operating points of a checked case.  A ramp
 * is cut into pieces of at most CG_RAMP_SPEED (share of rated speed) and
 * CG_RAMP_LOAD, between which coefficients and heats run straight, though they
 * bend where the knock limit begins to retard the burn (cutting finer moves the
 * closure by less than 0.5 %, tested).  Caller frees.  Errors: as
 * cg_point_solve, CG_NO_MEMORY. */
#define CG_RAMP_SPEED 0.25
#define CG_RAMP_LOAD 0.90
enum cg_status cg_duty_run_create(const struct cg_case *c,
                                  struct cg_duty_run **run,
                                  struct cg_error *error);

/* The same, but points that `known`, a run of a case that differs in its duty
 * alone, has solved are taken over. */
enum cg_status cg_duty_run_create_like(const struct cg_case *c,
                                       const struct cg_duty_run *known,
                                       struct cg_duty_run **run,
                                       struct cg_error *error);

/* Builds the network and lists pieces and points, but solves nothing: space
 * for cg_duty_run_vary.  Caller frees.  CG_BAD_INPUT without a segment,
 * CG_NO_MEMORY. */
enum cg_status cg_duty_run_lay_out(const struct cg_case *c,
                                   struct cg_duty_run **run,
                                   struct cg_error *error);

/* A piece's start or end: the point itself, or, of a mapped run, `mixed` made
 * from those around it (a point of the same cells).  Cannot fail. */
const struct cg_operating_point *
cg_duty_run_place(const struct cg_duty_run *run, size_t place,
                  struct cg_operating_point *mixed);

/* Number of the point that runs so; `points` where there is none. */
size_t cg_duty_run_index(const struct cg_duty_run *run,
                         const struct cg_operating *operating);

/* What runs at a piece's start or end, and what limits are judged by there.
 * Cannot fail. */
struct cg_operating cg_duty_run_operating(const struct cg_duty_run *run,
                                          size_t place);
struct cg_point_seen cg_duty_run_see(const struct cg_duty_run *run,
                                     size_t place);

/* Whether some place of a mapped run is nearest to that point. */
bool cg_duty_run_comes_by(const struct cg_duty_run *run, size_t point);

/* Solves a case that differs a little from that of `nominal`: settled state,
 * films and joints begin from there.  The gas side is that of `gas_side`, a run
 * of the same cells; NULL: its cycles are run anew, for the walls of `nominal`.
 * What the change of temperature does back to the gas side, a few per cent of
 * the change, comes from the response of `nominal`, or is worked out anew where
 * the burn comes to or from the knock limit.
 * `run` comes from cg_duty_run_lay_out for a case with this one's cells, and
 * with the bore, stroke, rings, piston lengths and duty of all three; whatever
 * it held before does not matter.  It may have other cells than `nominal`.
 * Errors: as cg_point_cycle and cg_point_resettle; the run then holds nothing
 * to read, but may be used again. */
enum cg_status cg_duty_run_vary(const struct cg_case *c,
                                const struct cg_duty_run *nominal,
                                const struct cg_duty_run *gas_side,
                                struct cg_duty_run *run,
                                struct cg_error *error);

/* Leaves the factors of the start point's settled state at hand, from which
 * cg_duty_run_vary settles many cases that differ little at less cost.  They
 * are lost when the run goes again.  Errors: as cg_stepper_settle. */
enum cg_status cg_duty_run_keep_factors(struct cg_duty_run *run,
                                        struct cg_error *error);

/* Accepts NULL. */
void cg_duty_run_free(struct cg_duty_run *run);

/* Temperatures at the duty's start [K] (nodes entries): ambient for a cold
 * start, else the settled state of the start point.  Cannot fail. */
void cg_duty_run_start(const struct cg_case *c, const struct cg_duty_run *run,
                       double *temperature);

/* Runs the transient.  `observer` is called at the solver's own instants and at
 * every multiple of `interval` [s] (0: none), in order.  ledger may be NULL.
 * CG_BAD_INPUT: such multiples, start and end are more than CG_DUTY_ROWS, and
 * solver.table_step is to be longer.  Other errors: as cg_stepper_run, and what
 * observer returns. */
#define CG_DUTY_ROWS 200000
enum cg_status cg_duty_run_go(const struct cg_case *c, struct cg_duty_run *run,
                              double interval, cg_instant_observer observer,
                              void *context, struct cg_heat_ledger *ledger,
                              struct cg_error *error);

/* For an observer during its call: the instant at `time` [s], from the solver's
 * own instant before to the present one, by the solution inside the step.
 * temperature (nodes entries) is filled [K].  Cannot fail. */
void cg_duty_run_inside(const struct cg_duty_run *run, double time,
                        double *temperature, struct cg_instant *instant);

#endif
