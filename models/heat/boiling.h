/* When the coolant starts to boil at the wall.  coldgap flags it and keeps
 * the given coefficient: past the onset nucleate boiling first cools better,
 * then film boiling far worse, and neither is modelled. */
#ifndef CG_BOILING_H
#define CG_BOILING_H

/* Saturation temperature [K] of water with `glycol` (share by volume, 0..0.6)
 * at absolute `pressure` [Pa].  Water by the Antoine equation with constants
 * from memory (8.14019, 1810.94, 244.485; mmHg and C; within 0.3 K of steam
 * tables from 90 to 140 C).  Glycol adds 8 K at 50 % (from memory, a usual
 * value for antifreeze), growing with the square of the share (common
 * practice, no source).  Cannot fail. */
double cg_boiling_point(double pressure, double glycol);

#endif
