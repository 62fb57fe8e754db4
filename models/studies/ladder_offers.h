/* Private to ladder_offer*.c: a list of offers, as it is made for one part. */
#ifndef CG_LADDER_OFFERS_H
#define CG_LADDER_OFFERS_H

#include "ladder_offer.h"

struct cg_offer_list {
    const struct cg_case *c;
    const struct cg_ladder_shelf *shelf;
    const struct cg_look_book *book;
    const struct cg_look
        *look; /* at the target, as deep as the part asks for */
    struct cg_offer *offer;
    size_t offers, allocated;
    bool no_room; /* one did not find memory */
};

/* A setting of that path made a number [SI], or a name.  Cannot fail. */
struct cg_ladder_set cg_offer_number(const char *path, double to);
struct cg_ladder_set cg_offer_name(const char *path, const char *name);

/* One offer more, of at most CG_OFFER_SETS; for want of memory `no_room`. */
void cg_offer_add(struct cg_offer_list *list, size_t sets,
                  const struct cg_ladder_set *set);
void cg_offer_add_number(struct cg_offer_list *list, const char *path,
                         double to);

/* What may be changed for a part, the least change first. */
void cg_offer_gaps(struct cg_offer_list *list, enum cg_ladder_part part);
void cg_offer_rings(struct cg_offer_list *list);
void cg_offer_skirt(struct cg_offer_list *list);
void cg_offer_lands(struct cg_offer_list *list);
void cg_offer_finish(struct cg_offer_list *list);
void cg_offer_seating(struct cg_offer_list *list);
void cg_offer_cooler(struct cg_offer_list *list);
void cg_offer_spark(struct cg_offer_list *list);
void cg_offer_pressure(struct cg_offer_list *list);
void cg_offer_piston(struct cg_offer_list *list);
void cg_offer_coolant(struct cg_offer_list *list);
void cg_offer_bore_oil(struct cg_offer_list *list);

#endif
