#include "ladder_offer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ladder_offers.h"

struct cg_ladder_set cg_offer_number(const char *path, double to)
{
    return (struct cg_ladder_set){path, to, NULL};
}

struct cg_ladder_set cg_offer_name(const char *path, const char *name)
{
    return (struct cg_ladder_set){path, 0.0, name};
}

void cg_offer_add(struct cg_offer_list *list, size_t sets,
                  const struct cg_ladder_set *set)
{
    if (list->offers == list->allocated) {
        size_t wanted = 2 * list->allocated + 16;
        struct cg_offer *grown =
            realloc(list->offer, wanted * sizeof *list->offer);
        list->no_room = list->no_room || grown == NULL;
        if (grown == NULL)
            return;
        list->offer = grown;
        list->allocated = wanted;
    }
    struct cg_offer *offer = &list->offer[list->offers++];
    offer->sets = sets;
    memcpy(offer->set, set, sets * sizeof *set);
}

void cg_offer_add_number(struct cg_offer_list *list, const char *path,
                         double to)
{
    struct cg_ladder_set set = cg_offer_number(path, to);
    cg_offer_add(list, 1, &set);
}

enum cg_status cg_offers(const struct cg_case *c,
                         const struct cg_ladder_shelf *shelf,
                         enum cg_ladder_part part,
                         const struct cg_look_book *book,
                         const struct cg_look *look, struct cg_offer **offer,
                         size_t *offers, struct cg_error *error)
{
    struct cg_offer_list list = {
        .c = c, .shelf = shelf, .book = book, .look = look};
    static void (*const by_part[CG_LADDER_PARTS])(struct cg_offer_list *) = {
        [CG_LADDER_RING_FACE] = cg_offer_rings,
        [CG_LADDER_RING_METAL] = cg_offer_rings,
        [CG_LADDER_SEATING] = cg_offer_seating,
        [CG_LADDER_FINISH] = cg_offer_finish,
        [CG_LADDER_PISTON] = cg_offer_piston,
        [CG_LADDER_SKIRT] = cg_offer_skirt,
        [CG_LADDER_LANDS] = cg_offer_lands,
        [CG_LADDER_BORE_OIL] = cg_offer_bore_oil,
        [CG_LADDER_COOLANT] = cg_offer_coolant,
        [CG_LADDER_SPARK] = cg_offer_spark,
        [CG_LADDER_PRESSURE] = cg_offer_pressure,
        [CG_LADDER_CHARGE] = cg_offer_cooler};
    if (by_part[part] == NULL)
        cg_offer_gaps(&list, part);
    else
        by_part[part](&list);
    if (list.no_room) {
        free(list.offer);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    *offer = list.offer;
    *offers = list.offers;
    return CG_OK;
}

/* What stands behind a name. */
static void look_up(const struct cg_ladder_set *set,
                    const struct cg_ladder_shelf *shelf, struct cg_case *c)
{
    for (size_t i = 0; i < shelf->rings; i++)
        if (strcmp(set->path, "rings.top.material") == 0 &&
            strcmp(shelf->ring[i].name, set->name) == 0)
            c->ring_material[CG_RING_TOP] = shelf->ring[i];
    for (size_t i = 0; i < shelf->faces; i++)
        if (strcmp(set->path, "rings.top.face") == 0 &&
            strcmp(shelf->face[i].name, set->name) == 0)
            c->ring_face[CG_RING_TOP] = shelf->face[i];
    for (size_t i = 0; i < shelf->alloys; i++)
        if (strcmp(set->path, "piston.alloy") == 0 &&
            strcmp(shelf->alloy[i].name, set->name) == 0)
            c->piston_material = shelf->alloy[i];
}

void cg_offer_make(const struct cg_offer *offer,
                   const struct cg_ladder_shelf *shelf, struct cg_case *c)
{
    if (c->piston.skirt_taken) /* it goes with the alloy */
        c->piston.skirt_clearance = NAN;
    for (size_t i = 0; i < offer->sets; i++) {
        const struct cg_ladder_set *set = &offer->set[i];
        const struct cg_setting *setting = cg_setting_find(set->path);
        if (set->name == NULL) {
            cg_setting_put(setting, c, set->to);
            continue;
        }
        strcpy((char *)c + setting->offset, set->name);
        look_up(set, shelf, c);
    }
    cg_case_choose_skirt(c);
}
