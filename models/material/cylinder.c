/* Thick cylinders under pressure and heat, plane stress with free ends.
 *
 * Symbols: a, b inner and outer radius, p_i, p_o pressures, E, nu the elastic
 * constants, e the free thermal strain at the area mean.
 *
 * Timoshenko and Goodier, Theory of Elasticity (1951), Lame's solution, and
 * the axisymmetric thermal problem, whose free faces move by u(a) = e a and
 * u(b) = e b: heat acts like a uniform change of size, whatever its profile.
 */
#include "cylinder.h"

#include <assert.h>
#include <math.h>
#include <stddef.h>

double cg_area_mean(double inner, double outer, int cells, const double *values)
{
    assert(cells >= 1 && inner >= 0 && outer > inner);
    double width = (outer - inner) / cells;
    double weighted = 0, weights = 0;
    for (int i = 0; i < cells; i++) {
        /* The area of a ring is 2 pi (middle radius) (width), exactly. */
        double middle = inner + (i + 0.5) * width;
        weighted += middle * values[i];
        weights += middle;
    }
    return weighted / weights;
}

double cg_lame_displacement(const struct cg_layer *layer, double inner_pressure,
                            double outer_pressure, double radius)
{
    assert(radius > 0 && radius >= layer->inner * (1 - 1e-9) &&
           radius <= layer->outer * (1 + 1e-9));
    double a2 = layer->inner * layer->inner;
    double b2 = layer->outer * layer->outer;
    double uniform = (1 - layer->poisson) *
                     (inner_pressure * a2 - outer_pressure * b2) * radius;
    double shear = (1 + layer->poisson) * (inner_pressure - outer_pressure) *
                   a2 * b2 / radius;
    return (uniform + shear) / (layer->modulus * (b2 - a2));
}

double cg_joint_pressure(const struct cg_layer *liner,
                         const struct cg_layer *block, double overlap)
{
    double joint = liner->outer;
    assert(fabs(block->inner - joint) <= 1e-6 * joint);
    double total = overlap + (liner->strain - block->strain) * joint;
    /* Radial give of the joint per pascal: liner pressed in, block out. */
    double give = cg_lame_displacement(block, 1, 0, block->inner) -
                  cg_lame_displacement(liner, 0, 1, joint);
    return total / give;
}

/* Joint pressure of the assembly as honed: cold, no gas, by the same moduli.
 * Only the RATIO of the moduli matters for the displacement it causes, so
 * using the hot ones here costs little. */
static double assembly_pressure(const struct cg_layer *liner,
                                const struct cg_layer *block,
                                double interference)
{
    struct cg_layer cold_liner = *liner, cold_block = *block;
    cold_liner.strain = 0;
    cold_block.strain = 0;
    return cg_joint_pressure(&cold_liner, &cold_block, interference);
}

void cg_bore_grow(enum cg_seat seat, const struct cg_layer *liner,
                  const struct cg_layer *block, double interference,
                  double gas_pressure, struct cg_bore_growth *growth)
{
    bool joined = seat == CG_SEAT_CAST_IN || seat == CG_SEAT_PRESSED;
    assert(joined == (block != NULL));
    double bore = liner->inner, joint = liner->outer;
    double hot = 0, cold = 0;
    bool open = false;

    if (joined) {
        double overlap = seat == CG_SEAT_PRESSED ? interference : 0;
        cold = assembly_pressure(liner, block, overlap);
        /* Gas in the bore pushes the liner's back outward: more overlap. */
        overlap += cg_lame_displacement(liner, gas_pressure, 0, joint);
        hot = cg_joint_pressure(liner, block, overlap);
        if (seat == CG_SEAT_PRESSED && hot < 0) {
            hot = 0;
            open = true;
        }
    }
    growth->radial = liner->strain * bore +
                     cg_lame_displacement(liner, gas_pressure, hot, bore) -
                     cg_lame_displacement(liner, 0, cold, bore);
    growth->contact_pressure = hot;
    /* Lame at r = a under outer pressure alone. */
    growth->hoop_stress =
        -2 * hot * joint * joint / (joint * joint - bore * bore);
    growth->open = open;
}
