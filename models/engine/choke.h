/* The choke of a barrel: ground narrower at the top, so that it is straight
 * when the top is hot.  Full from the deck to where the top ring turns, from
 * there in a straight line to nothing at the choke's end (common practice, no
 * source).  engine.bore is the straight part. */
#ifndef CG_CHOKE_H
#define CG_CHOKE_H

#include "case.h"

/* How much narrower the cold bore is at a depth [m] below the deck, diametral
 * [m].  Cannot fail. */
double cg_choke_at(const struct cg_case *c, double depth);

/* A bore's strain at a depth from the cold straight bore, of the strain that
 * heat gives it there [1].  Cannot fail. */
double cg_choke_strain(const struct cg_case *c, double depth, double strain);

/* How much wider a gap is in the straight bore, cold, than where it is
 * measured [m]: pi times the choke where that is in the choke, else 0.  Cannot
 * fail. */
double cg_choke_gap(const struct cg_case *c);

#endif
