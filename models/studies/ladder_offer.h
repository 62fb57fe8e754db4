/* Private to ladder*.c: what is offered for a part, and how it is made. */
#ifndef CG_LADDER_OFFER_H
#define CG_LADDER_OFFER_H

#include "ladder_look.h"

/* One setting to another value, or name. */
struct cg_ladder_set {
    const char *path;
    double to;        /* [SI]; not of a name */
    const char *name; /* NULL: a number */
};

enum { CG_OFFER_SETS = 3 };

struct cg_offer {
    struct cg_ladder_set set[CG_OFFER_SETS];
    size_t sets;
};

/* What may be changed for that part, the least change first; `look` is at the
 * target, as deep as the part asks for.  Caller frees *offer, NULL where there
 * is none.  CG_NO_MEMORY. */
enum cg_status cg_offers(const struct cg_case *c,
                         const struct cg_ladder_shelf *shelf,
                         enum cg_ladder_part part,
                         const struct cg_look_book *book,
                         const struct cg_look *look, struct cg_offer **offer,
                         size_t *offers, struct cg_error *error);

/* Makes it in a case.  Cannot fail. */
void cg_offer_make(const struct cg_offer *offer,
                   const struct cg_ladder_shelf *shelf, struct cg_case *c);

#endif
