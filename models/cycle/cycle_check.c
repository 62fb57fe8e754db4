#include "cycle.h"

#include <math.h>

#include "fresh.h"
#include "nitrous.h"
#include "spray.h"
#include "wiebe.h"

/* Limits of meaning, not of good practice: what lies inside may still be a bad
 * engine, but the equations hold. */
struct limit {
    const char *name;
    double value, low, high;
};

static enum cg_status within_limits(const struct limit *limit, size_t count,
                                    struct cg_error *error)
{
    for (size_t i = 0; i < count; i++)
        if (!(limit[i].value >= limit[i].low && limit[i].value <= limit[i].high))
            return cg_error_set(error, CG_BAD_INPUT,
                                "%s must be %g to %g (got %g)", limit[i].name,
                                limit[i].low, limit[i].high, limit[i].value);
    return CG_OK;
}

/* What is brought along must leave air, and fuel of the engine's own. */
static enum cg_status check_brought(const struct cg_cycle_input *in,
                                    struct cg_error *error)
{
    const struct cg_brought *brought = &in->brought;
    double air = cg_fresh_air(in);
    double lambda = brought->nitrous > 0.0 ? brought->nitrous_lambda : 1.0;
    double need = air / in->lambda +
                  cg_nitrous_oxygen_as_air() * brought->nitrous / lambda;
    double met = brought->alcohol * cg_fuel_stoichiometric(cg_spray_alcohol());
    const struct limit limits[] = {
        {"air beside what is brought along [kg]", air, 1e-12, 1e3},
        {"nitrous over air [1]", brought->nitrous / air, 0.0, 4.0},
        {"lambda of the nitrous [1]", lambda, 0.5, 10.0},
        {"water over air [1]", brought->water / air, 0.0, 1.0},
        {"sprayed alcohol of the fuel needed [1]", met / need, 0.0, 0.99},
        {"heat that spray takes entering [J]", brought->entering, 0.0, 1e9},
        {"heat that spray takes in the closed cylinder [J]", brought->closed,
         0.0, 1e9}};
    return within_limits(limits, sizeof limits / sizeof limits[0], error);
}

enum cg_status cg_cycle_check(const struct cg_cycle_input *input,
                              struct cg_error *error)
{
    if (input->fuel == NULL)
        return cg_error_set(error, CG_BAD_INPUT, "no fuel");
    if (input->correlation == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "no heat transfer correlation");

    const struct cg_cycle_input *in = input;
    bool injected = in->injection.on;
    double start =
        injected
            ? in->injection.start_deg
            : cg_wiebe_from_burn(in->burn50_deg, in->burn_duration_deg)
                  .start_deg;
    const struct limit limits[] = {
        {"bore [m]", in->crank.bore, 0.01, 1.2},
        {"stroke [m]", in->crank.stroke, 0.01, 4.0},
        {"rod over stroke [1]", in->crank.rod / in->crank.stroke, 0.6, 1e6},
        {"compression ratio [1]", in->crank.compression_ratio, 2.0, 40.0},
        {"speed [rev/s]", in->speed, 0.5, 1000.0},
        {"manifold pressure [Pa]", in->manifold_pressure, 1e4, 2e6},
        {"manifold temperature [K]", in->manifold_temperature, 200.0, 700.0},
        {"exhaust pressure [Pa]", in->exhaust_pressure, 1e4, 2e6},
        {"volumetric efficiency [1]", in->volumetric_efficiency, 0.05, 3.0},
        {"octane [1]", in->knock.octane, 0.0, 200.0},
        {"knock delay factor [1]",
         in->knock.octane > 0.0 ? in->knock.delay_factor : 1.0, 0.01, 100.0},
        {"retard by knock [deg]", in->knock.retard_most, 0.0, 40.0},
        {"lambda [1]", in->lambda, 0.5, 10.0},
        {"burn duration [deg]", injected ? 1.0 : in->burn_duration_deg, 1.0,
         120.0},
        {"ignition delay factor [1]",
         injected ? in->injection.delay_factor : 1.0, 0.01, 100.0},
        {"octane of an injected fuel [1]", injected ? in->knock.octane : 0.0,
         0.0, 0.0},
        {"fuel in the charge's air [1]", injected ? in->latent_charge : 0.0, 0.0,
         0.0},
        {"combustion efficiency [1]", in->combustion_efficiency, 0.01, 1.0},
        {"latent heat from the charge [1]", in->latent_charge, 0.0, 1.0},
        {"latent heat from charge and walls [1]",
         in->latent_charge + in->latent_walls, in->latent_charge, 1.0},
        {"heat factor [1]", in->heat_factor, 0.0, 20.0},
        {"chamber area ratio [1]", in->chamber_area_ratio, 0.5, 5.0},
        {"head temperature [K]", in->head_temperature, 200.0, 1500.0},
        {"piston temperature [K]", in->piston_temperature, 200.0, 1500.0},
        {"liner temperature [K]", in->liner_temperature, 200.0, 1500.0},
        {"crevices over clearance volume [1]",
         in->crevice.volume / cg_crank_clearance(&in->crank), 0.0, 1.0},
        {"crevice temperature [K]",
         in->crevice.volume > 0.0 ? in->crevice.temperature : 300.0, 200.0,
         1500.0},
        {"crevice share [1]", in->crevice.share, 0.0, 1e3},
        {"crevice heat in the correlation [1]", in->crevice_in_law, 0.0, 1.0},
        {"intake closing [deg]", in->intake_close_deg, -300.0, -60.0},
        {"exhaust opening [deg]", in->exhaust_open_deg, 60.0, 180.0},
        {"crank step [deg]", in->step_deg, 0.1, 2.0},
        {injected ? "start of injection [deg]" : "start of combustion [deg]",
         start, fmax(in->intake_close_deg, -180.0) + 1.0,
         injected ? CG_IGNITION_LATEST
                  : in->exhaust_open_deg - in->knock.retard_most - 1.0},
    };
    enum cg_status status =
        within_limits(limits, sizeof limits / sizeof limits[0], error);
    return status == CG_OK ? check_brought(in, error) : status;
}
