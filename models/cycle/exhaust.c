#include "exhaust.h"

#include <math.h>

#include "constants.h"

/* The bands of exhaust.h. */
static const double port_width = 0.42, port_length = 1.1; /* [bores] */
static const double port_over_coolant = 80.0;             /* [K] */
static const double open_share = 230.0 / 720.0;           /* of the cycle */
static const double sheath = 3e-3;                        /* [m] */
static const double emissivity = 0.8, wall_below = 200.0; /* [1] [K] */

/* Burned gas at 1000 to 1500 K: cp by the polynomials of gas.h at lambda 0.8 to
 * 1, viscosity as in Annand's law (heat_transfer.c), Prandtl number 0.7. */
static const double heat_capacity = 1300.0, prandtl = 0.7; /* [J/(kg K)] */

static double viscosity(double temperature)
{
    return 4.702e-7 * pow(temperature, 0.645);
}

/* Transfer units of the port, at its mean flow while open. */
static double port_units(const struct cg_exhaust_input *in)
{
    double width = port_width * in->bore;
    double reynolds = 4.0 * in->flow / open_share /
                      (CG_PI * width * viscosity(in->temperature));
    double stanton =
        in->port_factor * 0.023 * pow(reynolds, -0.2) * pow(prandtl, -0.6);
    return 4.0 * port_length / port_width * stanton;
}

/* The probe where convection and radiation balance, by Newton. */
static double probe(double flow, double width, double gas)
{
    double mu = viscosity(gas), wall = gas - wall_below, t = gas;
    double reynolds = flow / (0.25 * CG_PI * width * width) * sheath / mu;
    double h = 0.44 * sqrt(reynolds) * heat_capacity * mu / prandtl / sheath;
    double radiation = emissivity * CG_STEFAN_BOLTZMANN;
    for (int i = 0; i < 20; i++) {
        double heat =
            h * (gas - t) - radiation * (pow(t, 4.0) - pow(wall, 4.0));
        t += heat / (h + 4.0 * radiation * pow(t, 3.0));
    }
    return t;
}

struct cg_exhaust cg_exhaust_at(const struct cg_exhaust_input *input)
{
    double wall = input->coolant_temperature + port_over_coolant;
    struct cg_exhaust out;
    out.port_drop = (input->temperature - wall) * -expm1(-port_units(input));
    out.port_heat = input->flow * heat_capacity * out.port_drop;
    double gas = input->temperature - out.port_drop;
    out.reading = probe(input->flow, port_width * input->bore, gas);
    out.radiation = gas - out.reading;
    return out;
}
