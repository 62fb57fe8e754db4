/* The joint of a pressed liner and its block: how well it conducts, and a
 * state in which heat and pressure agree.
 *
 * Heat and contact work against each other.  A joint that conducts well warms
 * the aluminium block, which grows away from the liner and lets go; one that
 * has let go keeps the heat in the liner, which grows back into the block.  A
 * switch between "in contact" and "open" has no settled state in between, so
 * the coefficient follows the contact pressure instead:
 *   h = open + (full - open) min(p / 2 MPa, 1)
 * Contact conductance grows nearly in proportion to pressure: M. M.
 * Yovanovich, power 0.95, from memory; where it is full: common practice, no
 * source.
 */
#ifndef CG_JOINT_H
#define CG_JOINT_H

#include "case.h"

/* Coefficient at a contact pressure [Pa]; 0 or less: open [W/(m2 K)].  Cannot
 * fail. */
double cg_joint_coefficient(const struct cg_bore_case *bore, double pressure);

struct cg_joint {
    double coefficient;   /* in use [W/(m2 K)] */
    double before, asked; /* the one used before, and what was asked of it */
};

/* A joint in full contact, to begin with.  Cannot fail. */
void cg_joint_begin(const struct cg_bore_case *bore, struct cg_joint *joint);

/* One secant step towards the coefficient that asks for itself, after the
 * temperatures have settled with joint->coefficient and ask for `asked`.
 * Returns how far the two were apart, relative [1].  Cannot fail. */
double cg_joint_step(const struct cg_bore_case *bore, double asked,
                     struct cg_joint *joint);

#endif
