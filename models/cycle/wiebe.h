/* Burned mass fraction by the Wiebe function
 *   x = 1 - exp(-a ((angle - start)/duration)^(m+1)).
 * I. Wiebe (1956), as given in J. B. Heywood (1988), sec. 9.2.2. */
#ifndef CG_WIEBE_H
#define CG_WIEBE_H

struct cg_wiebe {
    double start_deg, duration_deg; /* duration to 1 - exp(-a) burned */
    double a, exponent;             /* exponent = m + 1 */
};

/* The Wiebe law (a = 6.908: 99.9 % burned; exponent 3) that has `burn50_deg`
 * and the 10-90 % duration [deg]. */
struct cg_wiebe cg_wiebe_from_burn(double burn50_deg, double duration_deg);

/* Fraction burned [1], and its rate [1/deg]. */
double cg_wiebe_burned(const struct cg_wiebe *wiebe, double angle_deg);
double cg_wiebe_rate(const struct cg_wiebe *wiebe, double angle_deg);

/* Crank angle at which that fraction, 0 to below 1, is burned [deg]. */
double cg_wiebe_angle(const struct cg_wiebe *wiebe, double burned);

#endif
