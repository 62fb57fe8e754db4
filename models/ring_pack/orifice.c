#include "orifice.h"

#include <math.h>

/* psi^2 below which an orifice's flow turns proportional to pressure. */
#define LAMINAR 1e-6

void cg_flow_gas_set(struct cg_flow_gas *gas, double gas_constant, double gamma)
{
    gas->gas_constant = gas_constant;
    gas->gamma = gamma;
    gas->critical = pow(2.0 / (gamma + 1.0), gamma / (gamma - 1.0));
    gas->factor = 2.0 * gamma / (gamma - 1.0);
    double root = pow(gas->critical, 1.0 / gamma);
    gas->choked = gas->factor * root * (root - gas->critical);
}

double cg_orifice_square(const struct cg_flow_gas *gas, double ratio,
                         double *slope)
{
    if (ratio <= gas->critical) {
        *slope = 0.0;
        return gas->choked;
    }
    double root = pow(ratio, 1.0 / gas->gamma);
    double root_slope = root / (gas->gamma * ratio);
    *slope = gas->factor * (root_slope * (2.0 * root - ratio) - root);
    return gas->factor * root * (root - ratio);
}

double cg_orifice_function(const struct cg_flow_gas *gas, double ratio)
{
    double slope;
    return sqrt(fmax(cg_orifice_square(gas, ratio, &slope), 0.0));
}

void cg_orifice_flow(const struct cg_flow_gas *gas, double area,
                     double temperature, double up, double down,
                     struct cg_flow *flow)
{
    double ratio = down / up, slope;
    double square = fmax(cg_orifice_square(gas, ratio, &slope), 0.0);
    double soft = square + LAMINAR, root = sqrt(soft);
    double psi = square / root;
    double psi_slope = slope * (0.5 * square + LAMINAR) / (soft * root);
    double scale = area / sqrt(gas->gas_constant * temperature);
    flow->rate = scale * up * psi;
    flow->d_up = scale * (psi - ratio * psi_slope);
    flow->d_down = scale * psi_slope;
    flow->d_height = 0.0;
}
