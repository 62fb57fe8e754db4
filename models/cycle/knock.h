/* Knock: whether the end gas fires by itself before the flame is there.
 *
 * J. C. Livengood and P. C. Wu, "Correlation of autoignition phenomena in
 * internal combustion engines and rapid compression machines", 5th Symp. (Int.)
 * on Combustion (1955): it fires when the integral of dt/tau reaches 1.
 * A. M. Douaud and P. Eyzat, "Four-octane-number method for predicting the
 * anti-knock behavior of fuels and engines", SAE 780080 (1978), from memory:
 *   tau [ms] = 17.68 (ON/100)^3.402 p[atm]^-1.7 exp(3800 K/T)
 *
 * The end gas is the core that no wall cools: it is compressed at constant
 * entropy from intake closing on by the cylinder's pressure.  What the fuel's
 * evaporation and the walls do to the charge before that, and the walls to the
 * pressure after it, is thus in it.  Fuels with two stages of ignition, hot
 * spots and deposits are not.
 */
#ifndef CG_KNOCK_H
#define CG_KNOCK_H

#include "gas.h"

/* The end gas matters until this share is burned: what is left then is thin,
 * lies along cooled walls and has no time (0.75 to 0.95 in models of this kind,
 * from memory) [1]. */
#define CG_KNOCK_BURNED 0.85

/* An integral above this is knock: 1, and what steps of crank angle err. */
#define CG_KNOCK_PREDICTED 1.02

struct cg_knock_law {
    double octane;       /* [1]; 0: knock is not looked at */
    double delay_factor; /* multiplies the delay [1] */
    double retard_most;  /* the burn may be so much later than asked for to
                            keep the integral at 1; 0: it is not moved [deg] */
};

/* Ignition delay [s] at pressure [Pa] and temperature [K], delay_factor
 * included.  Cannot fail. */
double cg_knock_delay(const struct cg_knock_law *law, double pressure,
                      double temperature);

struct cg_end_gas {
    struct cg_mixture mixture;
    double pressure, temperature; /* [Pa], [K] */
    double rate;                  /* 1/tau [1/s] */
    double integral;              /* of dt/tau so far [1] */
};

/* End gas of `burned_share` [0..1, by mass] burned gas in fresh gas, as intake
 * closes.  Cannot fail. */
void cg_end_gas_begin(const struct cg_knock_law *law,
                      const struct cg_mixture *fresh,
                      const struct cg_mixture *burned, double burned_share,
                      double pressure, double temperature,
                      struct cg_end_gas *gas);

/* Carries it to `pressure` in `seconds`: T changes by (R/cp) dp/p with cp half
 * way, and by what spray takes on the way (`taken` [J/kg], half before and half
 * after), the integral by the trapezoidal rule; all of second order in the step.
 * Cannot fail. */
void cg_end_gas_step(const struct cg_knock_law *law, double pressure,
                     double seconds, double taken, struct cg_end_gas *gas);

#endif
