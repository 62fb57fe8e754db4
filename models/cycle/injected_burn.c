#include "injected_burn.h"

#include <math.h>
#include <string.h>

/* Miyamoto et al. (1985): the premixed burn. */
static const double premixed_deg = 7.0, premixed_exponent = 4.0;
static const double premixed_reach = 6.908; /* 99.9 % burned at its end */

/* Watson et al. (1980): what their law's time is counted in. */
static const double diffusion_deg = 125.0;

enum { CLOSED_STEPS = 12 };
static const double waiting_step_deg = 1.0;

double cg_injected_delay(double pressure, double temperature)
{
    return 3.52e-3 * exp(2100.0 / temperature - 1.022 * log(1e-5 * pressure));
}

double cg_injected_premixed(double phi, double delay)
{
    double share =
        1.0 - 0.926 * pow(phi, 0.37) * pow(fmax(1e3 * delay, 1e-3), -0.26);
    return fmin(fmax(share, 0.0), 1.0);
}

struct cg_wiebe cg_injected_diffusion(double phi, double start_deg)
{
    double a = 14.2 / pow(phi, 0.644);
    return (struct cg_wiebe){start_deg, diffusion_deg, a, 0.79 * pow(a, 0.25)};
}

void cg_injected_burn_set(double phi, double start_deg, double delay,
                          struct cg_zone *zone)
{
    zone->premixed = (struct cg_wiebe){start_deg, premixed_deg, premixed_reach,
                                       premixed_exponent};
    zone->premixed_share = cg_injected_premixed(phi, delay);
    zone->wiebe = cg_injected_diffusion(phi, start_deg);
}

/* One step of compression; the gas that the delay reads comes back. */
static void compress(const struct cg_zone *zone, double from_deg, double to_deg,
                     double *y, double *pressure)
{
    struct cg_zone_node node[3];
    struct cg_zone_gas unused[3];
    for (int i = 0; i < 3; i++)
        cg_zone_node(zone, CG_PHASE_COMPRESSION,
                     from_deg + 0.5 * i * (to_deg - from_deg), &node[i]);
    cg_zone_step(zone, CG_PHASE_COMPRESSION, node, y, unused);
    *pressure = cg_zone_pressure(zone, &node[2], y);
}

double cg_injected_ignition(const struct cg_zone *zone,
                            const struct cg_injection *injection,
                            double close_deg, const double *y, double *delay)
{
    double state[CG_ZONE_VARIABLES], pressure = 0.0, at = close_deg;
    double step = (injection->start_deg - close_deg) / CLOSED_STEPS;
    memcpy(state, y, sizeof state);
    for (int i = 1; i <= CLOSED_STEPS; i++, at += step)
        compress(zone, at, at + step, state, &pressure);

    double factor = injection->delay_factor, sum = 0.0;
    double rate =
        1.0 /
        (factor * cg_injected_delay(pressure, state[CG_ZONE_TEMPERATURE]));
    at = injection->start_deg;
    while (at < CG_IGNITION_LATEST) {
        double next = fmin(at + waiting_step_deg, CG_IGNITION_LATEST);
        double before = rate;
        compress(zone, at, next, state, &pressure);
        rate = 1.0 / (factor *
                      cg_injected_delay(pressure, state[CG_ZONE_TEMPERATURE]));
        double part = 0.5 * (before + rate) * (next - at) * zone->degree_time;
        if (sum + part >= 1.0) {
            at += (1.0 - sum) / part * (next - at);
            break;
        }
        sum += part;
        at = next;
    }
    *delay = (at - injection->start_deg) * zone->degree_time;
    return at;
}
