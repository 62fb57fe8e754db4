/* What is brought along with the charge: nitrous and spray at an operating
 * point, a cylinder and cycle, and what they do to the charge before the valve.
 */
#ifndef CG_BROUGHT_H
#define CG_BROUGHT_H

#include "operating.h"

/* Flow of the nitrous fully on [kg/s], as given or by the power asked for
 * (nitrous.h); 0: none.  Cannot fail. */
double cg_brought_nitrous(const struct cg_case *c);

/* Fills charge->brought, and brings charge->manifold_temperature, which holds
 * air and the engine's own fuel, to that of the mixture: enthalpies of air,
 * nitrous from its bottle, what of the spray evaporates before the valve from
 * liquid at the air's temperature outside, and the fuel's share as
 * charge.evaporation says.  As gas they take the room of as many moles of air.
 * Spray follows the speed and rises with the load, so that it is nearly a fixed
 * share of the air; nitrous is a fixed flow.  Cannot fail. */
void cg_brought_set(const struct cg_case *c,
                    const struct cg_operating *operating,
                    struct cg_charge_state *charge);

/* Octane of the fuel with the alcohol sprayed, by mass (common practice, no
 * source) [1].  input: but for knock as it will be.  Cannot fail. */
double cg_brought_octane(const struct cg_case *c,
                         const struct cg_cycle_input *input);

/* The end gas's delay in a charge richer in oxygen than air, over that in air:
 * with the inverse of oxygen's share of air and nitrous [1].  Shock tubes give
 * exponents of 0.5 to 1.5 (from memory); what nitrous does to the chemistry
 * besides is left out, and so is what water does.  1 without nitrous.  Cannot
 * fail. */
double cg_brought_delay(const struct cg_cycle_input *input);

/* What of the air's room is left to it [1], and the most of each vapour's
 * pressure over what air of that temperature holds [1]; 0: none is sprayed.
 * Cannot fail. */
double cg_brought_air_left(const struct cg_case *c,
                           const struct cg_charge_state *charge);
double cg_brought_humidity(const struct cg_case *c,
                           const struct cg_charge_state *charge);

#endif
