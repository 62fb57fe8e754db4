/* Compression ignition: when injected fuel fires, and how it burns.
 *
 * Delay: N. Watson, A. D. Pilley and M. Marzouk, "A combustion correlation for
 * diesel engine simulation", SAE 800029 (1980), from memory:
 *   tau [ms] = 3.52 p[bar]^-1.022 exp(2100 K/T)
 * and it fires where the integral of dt/tau from injection on is 1 (Livengood
 * and Wu 1955, as in knock.h), with p and T of the cylinder's mean gas.  Two
 * others by name, for tests: H. O. Hardenberg and F. W. Hase, SAE 790493
 * (1979), and D. N. Assanis et al., J. Eng. Gas Turbines Power 125 (2003).
 *
 * Burn: two Wiebe laws that begin together.  Share of the first, of fuel made
 * ready during the delay: Watson et al., 1 - 0.926 phi^0.37 / tau[ms]^0.26; it
 * lasts 7 deg, exponent m = 3 (N. Miyamoto et al., SAE 850107, 1985, from
 * memory).  The rest burns as it mixes: Watson et al. again, whose law has
 * Wiebe's form, over 125 deg with a = 14.2/phi^0.644 and exponent 0.79 a^0.25.
 *
 * Left out: pilot and split injection, cetane number, swirl and the bowl's
 * shape, injection pressure.  They are in what the delay's and the heat's
 * spreads are taken to cover; nothing here tells them apart.
 */
#ifndef CG_INJECTED_BURN_H
#define CG_INJECTED_BURN_H

#include <stdbool.h>

#include "zone.h"

/* A charge that has not fired by now burns from here all the same: an engine
 * that does not start is not modelled [deg]. */
#define CG_IGNITION_LATEST 25.0

struct cg_injection {
    bool on;             /* compression ignition */
    double start_deg;    /* of injection, after TDC */
    double delay_factor; /* multiplies the delay [1] */
};

/* Ignition delay [s] at pressure [Pa] and temperature [K]: Watson et al.
 * Cannot fail. */
double cg_injected_delay(double pressure, double temperature);

/* Share that burns premixed [0..1], by equivalence ratio and delay [s], and the
 * law of the rest from start_deg on.  Cannot fail. */
double cg_injected_premixed(double phi, double delay);
struct cg_wiebe cg_injected_diffusion(double phi, double start_deg);

/* Sets the zone's two laws for a burn that begins at start_deg after a delay
 * [s].  Cannot fail. */
void cg_injected_burn_set(double phi, double start_deg, double delay,
                          struct cg_zone *zone);

/* From y at close_deg: where the injected fuel fires [deg], and the delay
 * before it [s].  The gas is compressed in a fixed number of steps to the
 * injection and in steps of 1 deg from there, so that the angle is continuous
 * in all that goes in.  Cannot fail. */
double cg_injected_ignition(const struct cg_zone *zone,
                            const struct cg_injection *injection,
                            double close_deg, const double *y, double *delay);

#endif
