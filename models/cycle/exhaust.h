/* From the gas at the exhaust valve to what a probe in the collector reads:
 * heat lost to the port, and the probe's own error. */
#ifndef CG_EXHAUST_H
#define CG_EXHAUST_H

struct cg_exhaust_input {
    double bore;        /* [m] */
    double flow;        /* of one cylinder, mean of the cycle [kg/s] */
    double temperature; /* at the valve, mean by enthalpy [K] */
    double port_factor; /* port's heat over that of a pipe in steady flow,
                           at the flow while the valve is open [1] */
    double coolant_temperature; /* [K] */
};

struct cg_exhaust {
    double port_heat; /* of one cylinder, to the port's wall [W] */
    double port_drop; /* of the gas in the port [K] */
    double radiation; /* reading below the gas, by radiation of the probe [K] */
    double reading;   /* of a probe in the collector [K] */
};

/* Port: a tube of 0.42 bores and 1.1 bores long, its wall 80 K over the coolant
 * (common practice, no source), Nu = port_factor 0.023 Re^0.8 Pr^0.4 (Dittus
 * and Boelter), Re at the flow while the valve is open.
 *
 * Probe: a bare sheath of 3 mm across the mean flow of one cylinder's pipe,
 * Nu = 0.44 Re^0.5 (R. J. Moffat, "Gas temperature measurement", 1962, from
 * memory), emissivity 0.8, seeing walls 200 K below the gas (common practice,
 * no source).  The mean is by mass and enthalpy.  Left out: heat lost between
 * port and collector, conduction along the sheath, a mean by time (the gas
 * rests between pulses): together some 40 K, most of them downwards.  Cannot
 * fail. */
struct cg_exhaust cg_exhaust_at(const struct cg_exhaust_input *input);

#endif
