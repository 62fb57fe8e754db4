#include "uncertain.h"

#include <math.h>
#include <string.h>

#include "constants.h"
#include "outside.h"

#define SPREAD(name) offsetof(struct cg_case, uncertainty.name)
#define FIELD(name) offsetof(struct cg_case, name)

static const struct cg_uncertain inputs[] = {
    {"heat_factor", "gas-side heat", true, true, false, 0.0,
     SPREAD(heat_factor), {FIELD(combustion.heat_factor)}},
    {"flank", "groove flank contact", true, false, false, 0.0, SPREAD(flank),
     {FIELD(scale.flank)}},
    {"film", "ring oil film", true, false, false, 0.0, SPREAD(film),
     {FIELD(scale.film), FIELD(piston.skirt_film)}},
    {"undercrown", "oil on the underside", true, false, false, 0.0,
     SPREAD(undercrown), {FIELD(piston.splash_coefficient)}},
    {"jet", "oil jet on the crown", true, false, false, 0.0, SPREAD(jet),
     {FIELD(piston.jet_coefficient), FIELD(piston.gallery_coefficient)}},
    {"coolant_film", "coolant at the bore", true, false, false, 0.0,
     SPREAD(coolant_film), {FIELD(cooling.coolant_coefficient)}},
    {"ring_expansion", "ring expansion", true, false, false, 0.0,
     SPREAD(ring_expansion), {FIELD(scale.ring_expansion)}},
    {"bore_expansion", "bore expansion", true, false, false, 0.0,
     SPREAD(bore_expansion), {FIELD(scale.bore_expansion)}},
    /* How much of the block moves with the liner is hard to draw a line at. */
    {"block_wall", "block around the liner", true, false, false, 0.0,
     SPREAD(block_wall), {FIELD(bore.block_thickness)}},
    {"piston_conductivity", "piston conductivity", true, false, false, 0.0,
     SPREAD(piston_conductivity), {FIELD(scale.piston_conductivity)}},
    {"ring_conductivity", "ring conductivity", true, false, false, 0.0,
     SPREAD(ring_conductivity), {FIELD(scale.ring_conductivity)}},
    {"boost", "boost held", true, true, false, 0.0, SPREAD(boost),
     {FIELD(charge.boost)}},
    {"coolant", "coolant temperature", false, false, false, 0.0,
     SPREAD(coolant_temperature), {FIELD(cooling.coolant_temperature), FIELD(moved.coolant)}},
    {"oil", "oil temperature", false, false, false, 0.0,
     SPREAD(oil_temperature), {FIELD(cooling.oil_temperature), FIELD(moved.oil)}},
    {"charge", "air temperature", false, true, false, 0.0,
     SPREAD(charge_temperature), {FIELD(charge.ambient_temperature), FIELD(moved.air)}},
    {"burn50", "spark and burn timing", false, true, false, 0.0,
     SPREAD(burn50_deg),
     {FIELD(combustion.burn50_deg), FIELD(combustion.injection_deg),
      FIELD(moved.burn50_deg)}},
    {"retard", "retard with boost", false, true, false, 0.0,
     SPREAD(retard_deg_per_100kPa),
     {FIELD(combustion.retard_deg_per_100kPa)}},
    {"octane", "octane of the fuel", false, true, false, 0.0, SPREAD(octane),
     {FIELD(fuel.octane)}},
    {"knock_delay", "ignition delay of the end gas", true, true, false, 0.0,
     SPREAD(knock_delay),
     {FIELD(combustion.knock_delay), FIELD(combustion.ignition_delay)}},
    {"crevice", "heat of gas in crevices", true, true, false, 0.0,
     SPREAD(crevice), {FIELD(combustion.crevice_heat)}},
    {"friction", "friction heat", true, false, false, 0.0, SPREAD(friction),
     {FIELD(piston.friction_share)}},
    {"cylinder_charge", "air of the hottest cylinder", true, true, false, 0.0,
     SPREAD(cylinder_charge), {FIELD(charge.volumetric_efficiency)}},
    {"cylinder_mixture", "mixture of the hottest cylinder", true, true, false,
     0.0, SPREAD(cylinder_mixture), {FIELD(fuel.lambda), FIELD(scale.lambda)}},
    {"cylinder_coolant", "coolant at the hottest cylinder", false, false, false,
     0.0, SPREAD(cylinder_coolant), {FIELD(cooling.coolant_temperature), FIELD(moved.coolant)}},
    {"engine", "engine to engine", true, false, true, 1.0, SPREAD(engine), {0}},
    /* A bore larger than measured opens the fitted gap by pi times as much;
     * the sign does not matter for the spread. */
    {"bore_size", "bore as measured", false, false, true, CG_PI,
     SPREAD(bore_size), {0}},
    {"gap_measure", "gap as filed", false, false, true, 1.0,
     SPREAD(gap_measure), {0}},
    {"fins", "air and fins", true, false, false, 0.0, SPREAD(fins),
     {FIELD(cooling.air.fins), FIELD(cooling.air.head)}},
    {"cylinder_fins", "cooling of the hottest cylinder", true, false, false,
     0.0, SPREAD(cylinder_fins),
     {FIELD(cooling.air.fins), FIELD(cooling.air.head)}},
};

const struct cg_uncertain *cg_uncertains(size_t *count)
{
    *count = sizeof inputs / sizeof inputs[0];
    return inputs;
}

static bool by_compression(const struct cg_case *c)
{
    return c->combustion.ignition == CG_IGNITION_COMPRESSION;
}

const char *cg_uncertain_doc(const struct cg_uncertain *input,
                             const struct cg_case *c)
{
    if (input->spread == SPREAD(jet) && c->piston.gallery)
        return c->piston.oil_jet ? "oil jet and gallery" : "oil in the gallery";
    if (!by_compression(c))
        return input->doc;
    if (input->spread == SPREAD(burn50_deg))
        return "injection timing";
    if (input->spread == SPREAD(knock_delay))
        return "ignition delay of the fuel";
    return input->doc;
}

static bool among(size_t spread, const size_t *of, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (of[i] == spread)
            return true;
    return false;
}

#define AMONG(list) among(input->spread, list, sizeof(list) / sizeof(list)[0])

bool cg_uncertain_foreign(const struct cg_uncertain *input,
                          const struct cg_case *c)
{
    static const size_t of_coolant[] = {SPREAD(coolant_film),
                                        SPREAD(coolant_temperature),
                                        SPREAD(cylinder_coolant)};
    static const size_t of_air[] = {SPREAD(fins), SPREAD(cylinder_fins)};
    static const size_t of_spark[] = {SPREAD(octane),
                                      SPREAD(retard_deg_per_100kPa)};
    return (cg_air_cooled(c) ? AMONG(of_coolant) : AMONG(of_air)) ||
           (by_compression(c) && AMONG(of_spark));
}

bool cg_uncertain_of(const struct cg_case *c, const char *name)
{
    size_t count;
    const struct cg_uncertain *input = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(input[i].name, name) == 0)
            return !cg_uncertain_foreign(&input[i], c);
    return true;
}

/* The burn is placed by the injection, the rule or the knock limit, and inputs
 * of the others move nothing; nor does a jet that is not there, or what cools
 * where something else does. */
static bool idle(const struct cg_uncertain *input, const struct cg_case *c)
{
    if (input->spread == SPREAD(jet))
        return !c->piston.oil_jet && !c->piston.gallery;
    if (cg_uncertain_foreign(input, c))
        return true;
    if (by_compression(c))
        return false;
    if (isnan(c->combustion.retard_deg_per_100kPa))
        return input->spread == SPREAD(retard_deg_per_100kPa);
    return input->spread == SPREAD(octane) ||
           input->spread == SPREAD(knock_delay);
}

double cg_uncertain_added(const struct cg_uncertain *input,
                          const struct cg_case *c, double closure)
{
    double added = input->direct_gain * cg_uncertain_spread(input, c);
    return input->relative ? added * fabs(closure) : added;
}

double cg_uncertain_spread(const struct cg_uncertain *input,
                           const struct cg_case *c)
{
    if (idle(input, c))
        return 0.0;
    return *(const double *)((const char *)c + input->spread);
}

bool cg_uncertain_is_condition(const struct cg_uncertain *input)
{
    static const size_t conditions[] = {
        SPREAD(boost), SPREAD(coolant_temperature), SPREAD(oil_temperature),
        SPREAD(charge_temperature)};
    for (size_t i = 0; i < sizeof conditions / sizeof conditions[0]; i++)
        if (input->spread == conditions[i])
            return true;
    return false;
}

void cg_uncertain_move(const struct cg_uncertain *input, double sigmas,
                       struct cg_case *c)
{
    double spread = cg_uncertain_spread(input, c);
    for (int i = 0; i < CG_UNCERTAIN_FIELDS && input->field[i] != 0; i++) {
        double *field = (double *)((char *)c + input->field[i]);
        if (input->relative)
            *field *= exp(sigmas * spread);
        else
            *field += sigmas * spread;
    }
}
