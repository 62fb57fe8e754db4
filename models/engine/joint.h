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
    double coefficient; /* in use [W/(m2 K)] */
    double part;        /* of the way to what is asked that a step goes [1] */
    int side;           /* +1: asked for more last time, -1: for less, 0 */
};

/* A joint in full contact, to begin with.  Cannot fail. */
void cg_joint_begin(const struct cg_bore_case *bore, struct cg_joint *joint);

/* One step towards the coefficient that asks for itself, after the
 * temperatures have settled with joint->coefficient and ask for `asked`.  It
 * goes a part of the way in the logarithm: half that part where the last step
 * went too far, more where it did not go far enough.  (Stations are coupled
 * along the bore, so that bracketing each by itself can lock up.)  Returns how
 * far the two were apart, as a ratio less 1 [1].  Cannot fail. */
double cg_joint_step(double asked, struct cg_joint *joint);

#endif
