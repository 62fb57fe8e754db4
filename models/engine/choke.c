#include "choke.h"

#include <math.h>

#include "constants.h"
#include "geometry.h"

double cg_choke_at(const struct cg_case *c, double depth)
{
    const struct cg_choke_case *choke = &c->bore.choke;
    double full = cg_ring_turn(c, CG_RING_TOP);
    double part = (choke->length - depth) / (choke->length - full);
    return depth <= full ? choke->narrower : choke->narrower * fmax(part, 0.0);
}

double cg_choke_strain(const struct cg_case *c, double depth, double strain)
{
    return (1.0 + strain) * (1.0 - cg_choke_at(c, depth) / c->engine.bore) -
           1.0;
}

double cg_choke_gap(const struct cg_case *c)
{
    return c->bore.choke.gap_measured == CG_GAP_IN_CHOKE
               ? CG_PI * c->bore.choke.narrower
               : 0.0;
}
