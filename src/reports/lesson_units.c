#include "lesson_units.h"

#include "constants.h"

#define OUNCE 0.028349523125
#define RANKINE (5.0 / 9.0)
#define CUBIC_INCH (CG_INCH * CG_INCH * CG_INCH)

/* How a quantity is printed: its unit, the unit's size in SI, digits as in
 * by_hand.h. */
struct form {
    const char *unit;
    double size;
    int digits;
};

static const struct form forms[][2] = {
    [CG_LESSON_LENGTH] = {{"mm", 1e-3, 2}, {"in", CG_INCH, 3}},
    [CG_LESSON_GROWTH] = {{"mm", 1e-3, 3}, {"in", CG_INCH, 4}},
    [CG_LESSON_TEMPERATURE] = {{"C", 1.0, 0}, {"F", RANKINE, 0}},
    [CG_LESSON_RISE] = {{"C", 1.0, 0}, {"F", RANKINE, 0}},
    [CG_LESSON_ABSOLUTE] = {{"K", 1.0, 0}, {"R", RANKINE, 0}},
    [CG_LESSON_EXPANSION] = {{"", 1e-6, 2}, {"", 1e-6 / RANKINE, 2}},
    [CG_LESSON_STRAIN] = {{"", 1e-6, 0}, {"", 1e-6, 0}},
    [CG_LESSON_PRESSURE] = {{"kPa", 1e3, 0}, {"psi", CG_PSI, 1}},
    [CG_LESSON_STRESS] = {{"MPa", 1e6, 0}, {"ksi", 1e3 * CG_PSI, 1}},
    [CG_LESSON_CONTACT] = {{"MPa", 1e6, -3}, {"psi", CG_PSI, -3}},
    [CG_LESSON_STIFFNESS] = {{"kN/mm", 1e6, 0},
                             {"kip/thou", 1e6 * CG_PSI * CG_INCH, 3}},
    [CG_LESSON_MASS] = {{"g", 1e-3, -3}, {"oz", OUNCE, -3}},
    [CG_LESSON_FLOW] = {{"g/s", 1e-3, -3}, {"oz/s", OUNCE, -3}},
    [CG_LESSON_GAS] = {{"kPa L/(g K)", 1e3, 3},
                       {"psi in3/(oz R)",
                        CG_PSI * CUBIC_INCH / OUNCE / RANKINE, 2}},
    [CG_LESSON_VOLUME] = {{"L", 1e-3, -3}, {"in3", CUBIC_INCH, -3}},
    [CG_LESSON_AREA] = {{"mm2", 1e-6, 0}, {"in2", CG_INCH * CG_INCH, 3}},
    [CG_LESSON_ENERGY] = {{"kJ", 1e3, -3}, {"Btu", CG_BTU, -3}},
    [CG_LESSON_HEATING] = {{"kJ/g", 1e6, 1}, {"Btu/oz", CG_BTU / OUNCE, 0}},
    [CG_LESSON_FLUX] = {{"W/mm2", 1e6, -2}, {"Btu/(s in2)",
                                             CG_BTU / (CG_INCH * CG_INCH), -2}},
    [CG_LESSON_POWER] = {{"kW", 1e3, 1}, {"hp", CG_HORSEPOWER, 1}},
};

struct cg_figure cg_lesson_figure(bool inch, const char *name,
                                  enum cg_lesson_quantity quantity, double si)
{
    const struct form *form = &forms[quantity][inch];
    double value = si / form->size;
    if (quantity == CG_LESSON_TEMPERATURE)
        value = (si - CG_ZERO_CELSIUS) / form->size + (inch ? 32.0 : 0.0);
    return cg_figure_of(name, value, form->digits, form->unit);
}

struct cg_hand cg_lesson_work(bool inch, const char *name,
                              enum cg_lesson_quantity quantity,
                              const char *operators,
                              const struct cg_figure *figures)
{
    const struct form *form = &forms[quantity][inch];
    return cg_hand_work(name, form->unit, form->digits, operators, figures);
}
