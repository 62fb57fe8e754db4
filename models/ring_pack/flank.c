#include "flank.h"

#include <math.h>

/* Laminar flow over the difference of the squared pressures. */
static double conductance(const struct cg_flow_gas *gas,
                          const struct cg_channel *channel)
{
    double h = channel->height;
    return h * h * h * channel->length /
           (24.0 * channel->viscosity * gas->gas_constant *
            channel->temperature * channel->width);
}

double cg_channel_laminar(const struct cg_flow_gas *gas,
                          const struct cg_channel *channel, double up,
                          double down)
{
    return conductance(gas, channel) * (up - down) * (up + down);
}

void cg_channel_flow(const struct cg_flow_gas *gas,
                     const struct cg_channel *channel, double up, double down,
                     struct cg_flow *flow)
{
    double c = conductance(gas, channel), slope;
    double ratio = down / up;
    double square = cg_orifice_square(gas, ratio, &slope);
    double laminar = c * (up - down) * (up + down);
    double section = channel->discharge * channel->height * channel->length;
    double limit = section * up; /* orifice flow^2 = limit^2 square/(R T) */
    double excess = 0.0;         /* (ql/qo)^2 */
    if (square > 0.0 && laminar > 0.0)
        excess = laminar * laminar * gas->gas_constant * channel->temperature /
                 (limit * limit * square);
    double root = sqrt(1.0 + 4.0 * excess);
    double both = root * (1.0 + root);
    double by_laminar = 1.0 - 4.0 * excess / both; /* dlog q/dlog ql */
    double by_limit = 2.0 * excess / both;         /* dlog q/dlog qo^2 */
    double share = 2.0 / (1.0 + root);
    flow->rate = share * laminar;
    flow->d_up = share * c * 2.0 * up * by_laminar;
    flow->d_down = -share * c * 2.0 * down * by_laminar;
    flow->d_height =
        flow->rate * (3.0 * by_laminar + 2.0 * by_limit) / channel->height;
    if (excess > 0.0) {
        double relative = slope / square;
        flow->d_up += flow->rate * by_limit * (2.0 - ratio * relative) / up;
        flow->d_down += flow->rate * by_limit * relative / up;
    }
}

double cg_channel_mean(double a, double b, double *d_a, double *d_b)
{
    double sum = a + b, scale = (2.0 / 3.0) / (sum * sum);
    *d_a = scale * a * (a + 2.0 * b);
    *d_b = scale * b * (b + 2.0 * a);
    return scale * sum * (a * a + a * b + b * b);
}

double cg_gas_viscosity(double temperature)
{
    double t = temperature / 273.0;
    return 1.716e-5 * t * sqrt(t) * (273.0 + 111.0) / (temperature + 111.0);
}
