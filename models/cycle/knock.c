#include "knock.h"

#include <math.h>

static const double atmosphere = 101325.0; /* [Pa] */

double cg_knock_delay(const struct cg_knock_law *law, double pressure,
                      double temperature)
{
    return law->delay_factor * 17.68e-3 * pow(law->octane / 100.0, 3.402) *
           pow(pressure / atmosphere, -1.7) * exp(3800.0 / temperature);
}

/* By mass: coefficients and gas constant are per kg. */
static void blend(const struct cg_mixture *a, const struct cg_mixture *b,
                  double share, struct cg_mixture *out)
{
    out->gas_constant =
        (1.0 - share) * a->gas_constant + share * b->gas_constant;
    for (int i = 0; i < 6; i++) {
        out->poly.low[i] =
            (1.0 - share) * a->poly.low[i] + share * b->poly.low[i];
        out->poly.high[i] =
            (1.0 - share) * a->poly.high[i] + share * b->poly.high[i];
    }
}

void cg_end_gas_begin(const struct cg_knock_law *law,
                      const struct cg_mixture *fresh,
                      const struct cg_mixture *burned, double burned_share,
                      double pressure, double temperature,
                      struct cg_end_gas *gas)
{
    blend(fresh, burned, burned_share, &gas->mixture);
    gas->pressure = pressure;
    gas->temperature = temperature;
    gas->rate = 1.0 / cg_knock_delay(law, pressure, temperature);
    gas->integral = 0.0;
}

static void cool(double taken, struct cg_end_gas *gas)
{
    if (taken > 0.0)
        gas->temperature -= taken / cg_mixture_cp(&gas->mixture,
                                                  gas->temperature);
}

void cg_end_gas_step(const struct cg_knock_law *law, double pressure,
                     double seconds, double taken, struct cg_end_gas *gas)
{
    cool(0.5 * taken, gas);
    double rise = gas->mixture.gas_constant * log(pressure / gas->pressure);
    double t = gas->temperature;
    double half = t * (1.0 + 0.5 * rise / cg_mixture_cp(&gas->mixture, t));
    gas->temperature = t * exp(rise / cg_mixture_cp(&gas->mixture, half));
    gas->pressure = pressure;
    cool(0.5 * taken, gas);
    double rate = 1.0 / cg_knock_delay(law, pressure, gas->temperature);
    gas->integral += 0.5 * seconds * (gas->rate + rate);
    gas->rate = rate;
}
