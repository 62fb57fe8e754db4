/* Grit classes of honing stones and the size of their grain. */
#ifndef CG_GRIT_H
#define CG_GRIT_H

#define CG_GRIT_COARSEST 80
#define CG_GRIT_FINEST 1200

/* Mean grain size [m] of a grit class from CG_GRIT_COARSEST to
 * CG_GRIT_FINEST: the macro and micro grits of FEPA 42-1 (ISO 8486), from
 * memory; between two classes in a straight line over the logarithms.  Makers'
 * classes differ.  Cannot fail. */
double cg_grit_grain(double grit);

/* The finest class sold whose grain is at least `grain` [m], or the coarsest
 * one; and the coarsest class whose grain is at most that, or the finest one.
 * Neither can fail. */
int cg_grit_at_least(double grain);
int cg_grit_at_most(double grain);

#endif
