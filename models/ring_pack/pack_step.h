/* Steps of the ring pack over crank angle.
 *
 * A singly diagonal implicit Runge-Kutta method of three stages: third order,
 * L-stable, its last stage the new state (R. Alexander, SIAM J. Numer. Anal.
 * 14 (1977)), with the second-order formula of its first two stages for the
 * error (J. R. Cash, J. ACM 26 (1979)).  Every stage is solved by Newton's
 * method with the analytic Jacobian, five unknowns: three pressures and the
 * lifts of the rings that are free.
 *
 * Masses are moved by the flows themselves: what a step takes from one place
 * it adds to the next, so that the balance closes to rounding whatever Newton
 * has left over.
 *
 * A ring is seated below, seated above, or free.  A step that ends with a
 * seated ring pushed off its flank, or a free one beyond its travel, is cut
 * back to the instant at which that began.  A ring lands dead: oil and
 * roughness take its speed (its rebound is left out).
 */
#ifndef CG_PACK_STEP_H
#define CG_PACK_STEP_H

#include "ring_pack.h"
#include "status.h"

enum cg_seating { CG_SEATED_BELOW, CG_SEATED_ABOVE, CG_RING_FREE };

struct cg_pack_state {
    double angle_deg;
    double mass[CG_PACK_VOLUMES];                     /* [kg] */
    double lift[CG_PACK_RINGS], speed[CG_PACK_RINGS]; /* [m], [m/s] */
    enum cg_seating seating[CG_PACK_RINGS];
    double push[CG_PACK_RINGS];                       /* [m/s2] */
    double flow[CG_PACK_FLOWS];                       /* [kg/s] */
};

/* What a step has moved. */
struct cg_pack_move {
    double degrees;               /* its length */
    double flow[CG_PACK_FLOWS];   /* through each [kg] */
};

struct cg_pack_control {
    double mass_tolerance; /* error a step, over the mass [1] */
    double lift_tolerance; /* error a step, over the travel [1] */
    double stage_tolerance;/* change of Newton's method, relative, after which
                              a stage is solved: what is left is of its square
                              [1] */
    double longest_deg, shortest_deg;
    size_t stride;         /* nodes at a time, a divisor of 360 */
    double repeat;         /* change from cycle to cycle of a settled pack: of
                              its masses, relative [1] */
    int cycles_most;       /* before giving up */
};
extern const struct cg_pack_control cg_pack_control_usual;
extern const struct cg_pack_control cg_pack_control_quick; /* for searches */

/* Everything seated below, the volumes at these pressures [Pa]. */
void cg_pack_state_set(const struct cg_ring_pack *pack, double angle_deg,
                       const double pressure[CG_PACK_VOLUMES],
                       struct cg_pack_state *state);

/* Pressures of all places [Pa], cylinder's at the state's angle.  Cannot
 * fail. */
void cg_pack_pressures(const struct cg_ring_pack *pack,
                    const struct cg_pack_state *state,
                    double pressure[CG_PACK_REGIONS]);

/* Sets which rings are free after a jump of state, and the pushes.  Cannot
 * fail. */
void cg_pack_seat(const struct cg_ring_pack *pack,
                  struct cg_pack_state *state);

/* One step of at most *step_deg, not beyond `end_deg`, the next node: takes
 * it, says in `move` what it moved, and sets *step_deg for the next.
 * CG_NUMERICAL, with angle and place, if no step down to the shortest can be
 * solved. */
enum cg_status cg_pack_step(const struct cg_ring_pack *pack,
                            const struct cg_pack_control *control,
                            double end_deg, double *step_deg,
                            struct cg_pack_state *state,
                            struct cg_pack_move *move,
                            struct cg_error *error);

#endif
