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
    *joint = (struct cg_joint){bore->joint_coefficient, 0.5, 0};
}

double cg_joint_step(double asked, struct cg_joint *joint)
{
    double way = log(asked / joint->coefficient);
    int side = (way > 0.0) - (way < 0.0);
    if (side * joint->side < 0)
        joint->part *= 0.5;
    else if (side * joint->side > 0)
        joint->part = fmin(1.3 * joint->part, 1.0);
    joint->side = side;
    joint->coefficient *= exp(joint->part * way);
    return fabs(expm1(way));
}
