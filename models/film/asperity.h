/* Load carried where the roughness of two surfaces touches through a thin
 * film: J. A. Greenwood and J. H. Tripp, "The contact of two nominally flat
 * rough surfaces", Proc. IMechE 185 (1970-71), from memory:
 *
 *   p = 16 sqrt(2) pi / 15 (n b s)^2 sqrt(s/b) E F(h/s)
 *
 * s rms roughness of both surfaces together, b tip radius and n density of the
 * asperities, E composite modulus, h distance of the mean planes.
 * F(x) = 4.4086e-5 (4 - x)^6.804 below 4, nothing above: the usual fit to the
 * integral for Gaussian heights, some 10 % low at x = 0 (from memory).
 */
#ifndef CG_ASPERITY_H
#define CG_ASPERITY_H

/* Contact begins at this distance, in rms roughnesses. */
#define CG_ASPERITY_REACH 4.0

struct cg_asperity {
    double roughness; /* rms of both surfaces together [m] */
    double stiffness; /* all that stands before F [Pa] */
};

/* Of two metals with these moduli [Pa], Poisson's ratio 0.3; n b s = 0.05 and
 * s/b = 0.01, within the 0.03-0.05 and 1e-4-1e-2 of ground and honed surfaces
 * (Greenwood and Tripp, from memory).  Cannot fail. */
struct cg_asperity cg_asperity_of(double roughness, double modulus_a,
                                  double modulus_b);

/* Contact pressure [Pa] at the distance `film` [m].  Cannot fail. */
double cg_asperity_pressure(const struct cg_asperity *asperity, double film);

/* d log(pressure) / d log(film) [1] at a film within reach.  Cannot fail. */
double cg_asperity_slope(const struct cg_asperity *asperity, double film);

/* Distance [m] at which the asperities alone carry `pressure` [Pa] > 0, at
 * least a hundredth of the roughness.  Cannot fail. */
double cg_asperity_distance(const struct cg_asperity *asperity,
                            double pressure);

/* Conductance [W/(m2 K)] of the metal that touches under `pressure` [Pa],
 * beside the oil: 1.25 k m/s (p/H)^0.95, M. M. Yovanovich, "New contact and
 * gap correlations for conforming rough surfaces", AIAA 81-1164 (1981), from
 * memory; k [W/(m K)] the harmonic mean of the two metals, slope m = 0.1 of
 * honed and lapped faces (0.05 to 0.2, from memory), hardness H = 2.5 GPa of
 * the softer, pearlitic iron (from memory).  Cannot fail. */
double cg_asperity_conductance(const struct cg_asperity *asperity,
                               double conductivity_a, double conductivity_b,
                               double pressure);

/* The power of the pressure in it: d log(conductance) / d log(pressure) [1]. */
#define CG_ASPERITY_POWER 0.95

#endif
