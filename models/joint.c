#include "joint.h"

#include <math.h>

#define FULL_PRESSURE 2e6 /* [Pa] */

double cg_joint_coefficient(const struct cg_bore_case *bore, double pressure)
{
    double part = fmin(fmax(pressure / FULL_PRESSURE, 0.0), 1.0);
    double open = bore->open_joint_coefficient;
    return open + part * (bore->joint_coefficient - open);
}

void cg_joint_begin(const struct cg_bore_case *bore, struct cg_joint *joint)
{
    *joint = (struct cg_joint){bore->joint_coefficient, NAN, NAN};
}

/* What is asked falls as what is used rises, so the slope is negative; where
 * the two points say otherwise (neighbours moved) or there is but one, -2. */
static double slope_of(const struct cg_joint *joint, double asked)
{
    double change = joint->coefficient - joint->before;
    double slope = (asked - joint->asked) / change;
    return isfinite(slope) && slope <= 0.0 ? fmax(slope, -50.0) : -2.0;
}

double cg_joint_step(const struct cg_bore_case *bore, double asked,
                     struct cg_joint *joint)
{
    double used = joint->coefficient;
    double next = used + (asked - used) / (1.0 - slope_of(joint, asked));
    double a = bore->joint_coefficient, b = bore->open_joint_coefficient;
    joint->before = used;
    joint->asked = asked;
    joint->coefficient = fmin(fmax(next, fmin(a, b)), fmax(a, b));
    return fabs(asked - used) / used;
}
