/* Private to lesson*.c: readings from a thermal state. */
#ifndef CG_LESSON_PARTS_H
#define CG_LESSON_PARTS_H

#include "lesson.h"

/* Doubles that cg_lesson_growth_at needs as scratch. */
size_t cg_lesson_workspace(const struct cg_thermal *thermal);

/* Growth at the tightest place for these node temperatures [K].  Cannot
 * fail. */
void cg_lesson_growth_at(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         const double *temperature, double *workspace,
                         struct cg_lesson_growth *growth);

/* Liner and block at the station nearest `depth` [m].  Cannot fail. */
void cg_lesson_wall_at(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature, double depth,
                       struct cg_lesson_wall *wall);

/* Charge, heat and temperatures of the full-load point; workspace as above.
 * Errors: as cg_cycle_run. */
enum cg_status cg_lesson_heat_of(const struct cg_case *c,
                                 struct cg_duty_run *run, double *workspace,
                                 struct cg_lesson_heat *heat,
                                 struct cg_error *error);

#endif
