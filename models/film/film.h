/* The oil film of one ring over an engine cycle, from the balance of what
 * pushes the ring on the bore with what holds it off:
 *
 *   load(t) = support(h, dh/dt) + contact(h)
 *
 * support: Reynolds (reynolds.h); contact: Greenwood and Tripp (asperity.h).
 * The ring has no mass (its inertia is along the bore, not across).  This is
 * a stiff equation for h; it is solved for log h, so that the film stays
 * positive, by the second order backward difference (BDF2, L-stable) until
 * the cycle repeats.  What reynolds.h leaves out is left out here.
 * D. Dowson, P. N. Economou, B. L. Ruddy, P. J. Strachan and A. J. S. Baker,
 * "Piston ring lubrication, part II: theoretical analysis of a single ring and
 * a complete ring pack", in "Energy Conservation through Fluid Film
 * Lubrication Technology", ASME (1979), from memory, is the method's origin.
 *
 * Starved where oil is short: a layer of `supply` on the bore brings speed times
 * its thickness, and a film takes half the speed times its height where the
 * pressure peaks.  That is 1.226 times the least height when the whole face is
 * wet and the least height itself when nothing ahead of it is: between the two
 * the wet part of the leading side goes in a straight line (an estimate).  The
 * dry part bears the gas alone.
 *
 * Forces and powers are per length of circumference.
 */
#ifndef CG_FILM_H
#define CG_FILM_H

#include <stddef.h>

#include "asperity.h"
#include "reynolds.h"
#include "status.h"

struct cg_film_ring {
    struct cg_face_curve face;
    struct cg_asperity asperity;
    double boundary_friction; /* coefficient where asperities touch [1] */
    double supply;            /* oil on the bore ahead of the face [m]; 0: plenty */
};

/* Arrays of `points` values at equal steps of time over one cycle; the first
 * follows the last. */
struct cg_film_drive {
    size_t points;           /* >= 16 */
    double step;             /* between points [s] */
    const double *speed;     /* of the ring, positive down the bore [m/s] */
    const double *viscosity; /* [Pa s] */
    const double *load;      /* towards the bore: tension and the gas behind
                                [N/m], > 0 */
    const double *pressure_above, *pressure_below; /* at the edges [Pa], > 0 */
    double near;             /* to which log film is found [1]; 0: 1e-7 */
};

struct cg_film_point {
    double film;     /* at the nearest point [m] */
    double contact;  /* of the load, carried by asperities [N/m] */
    double viscous;  /* friction on the bore along the ring's motion [N/m] */
    double boundary; /* of the asperities, the same way [N/m] */
    double inverse;  /* oil over h, over the face [1] */
};

struct cg_film_mean {
    double minimum;    /* film [m] */
    size_t minimum_at; /* point */
    double heat_film;  /* uniform film of the same mean conductance [m]:
                          conductance per area is conductivity over it */
    double viscous_power, boundary_power; /* mean friction power [W/m] */
    double mixed_share;  /* of time with h below 3 rms roughnesses, where
                            Hamrock (1994) ends full film lubrication [1] */
    double lifted_share; /* of time at CG_FILM_MOST: gas at the face holds
                            the ring off against all that is behind it */
    size_t steps;        /* until the cycle repeated */
};

/* Thickest film looked at [m]. */
#define CG_FILM_MOST 100e-6

/* Solves the periodic film.  point: [points], caller-owned.  CG_BAD_INPUT
 * names the first value of the drive or the ring that means nothing,
 * CG_NUMERICAL if the cycle does not repeat.  Allocates nothing. */
enum cg_status cg_film_solve(const struct cg_film_ring *ring,
                             const struct cg_film_drive *drive,
                             struct cg_film_point *point,
                             struct cg_film_mean *mean, struct cg_error *error);

#endif
