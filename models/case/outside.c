#include "outside.h"

#include <math.h>

#include "constants.h"

/* Where air's coefficients are given (outside.h). */
#define GIVEN_SPEED 30.0 /* [m/s] */
#define GIVEN_PRESSURE 101.325e3
#define GIVEN_TEMPERATURE (CG_ZERO_CELSIUS + 25.0)
#define FLOW_EXPONENT 0.65

struct cg_outside cg_outside_of(const struct cg_case *c)
{
    const struct cg_cooling_case *in = &c->cooling;
    if (cg_air_cooled(c))
        return (struct cg_outside){in->air.top,  in->air.length, in->air.fins,
                                   in->air.deck, in->air.lower,  in->air.head};
    return (struct cg_outside){c->bore.jacket_top,      c->bore.jacket_length,
                               in->coolant_coefficient, in->deck_coefficient,
                               in->dry_coefficient,     in->head_coefficient};
}

double cg_outside_temperature(const struct cg_case *c)
{
    return cg_air_cooled(c)
               ? c->charge.ambient_temperature + c->cooling.air.rise
               : c->cooling.coolant_temperature;
}

double cg_outside_flow(const struct cg_case *c, double speed)
{
    const struct cg_air_case *air = &c->cooling.air;
    if (!cg_air_cooled(c))
        return 1.0;
    double driven = air->drive == CG_AIR_FAN ? speed / c->engine.speed : 1.0;
    double density = c->charge.ambient_pressure / GIVEN_PRESSURE *
                     GIVEN_TEMPERATURE / cg_outside_temperature(c);
    return cg_outside_share(driven * air->speed / GIVEN_SPEED * density);
}

double cg_outside_share(double share)
{
    return pow(share, FLOW_EXPONENT);
}
