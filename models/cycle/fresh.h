/* What a fresh charge is made of, a cylinder and cycle: air, the engine's fuel,
 * and what is brought along.  None of these can fail on an input that
 * cg_cycle_check accepts.
 */
#ifndef CG_FRESH_H
#define CG_FRESH_H

#include "cycle.h"

/* Of dry air [J/(kg K)]. */
double cg_air_gas_constant(void);

/* Air taken in [kg], and fresh charge over air by mass [1]. */
double cg_fresh_air(const struct cg_cycle_input *input);
double cg_fresh_per_air(const struct cg_cycle_input *input);

/* The fuel that burns, sprayed alcohol in it: its kind, and how much [kg]. */
struct cg_fuel cg_fresh_fuel(const struct cg_cycle_input *input);
double cg_fresh_fuel_mass(const struct cg_cycle_input *input);

/* The charge per mole of that fuel [CG_SPECIES]. */
void cg_fresh_moles(const struct cg_cycle_input *input,
                    const struct cg_fuel *fuel, double *moles);

#endif
