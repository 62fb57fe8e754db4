#include <string.h>

#include "ladder.h"

/* What the names stand for, and the skirt that goes with the alloy: evidence
 * moves neither. */
static void take_parts(const struct cg_case *from, struct cg_case *c)
{
    c->piston_material = from->piston_material;
    c->ring_material[CG_RING_TOP] = from->ring_material[CG_RING_TOP];
    c->ring_face[CG_RING_TOP] = from->ring_face[CG_RING_TOP];
    c->piston.skirt_clearance = from->piston.skirt_clearance;
    c->piston.skirt_taken = from->piston.skirt_taken;
}

void cg_ladder_make(const struct cg_ladder *ladder, struct cg_case *c)
{
    const struct cg_case *from = &ladder->changed;
    c->charge.boost = from->charge.boost;
    c->charge.charger = from->charge.charger;
    for (size_t i = 0; i < ladder->changes; i++) {
        const struct cg_setting *setting = ladder->change[i].setting;
        if (setting->kind == CG_NAME)
            strcpy((char *)c + setting->offset,
                   (const char *)from + setting->offset);
        else
            cg_setting_put(setting, c, cg_setting_get(setting, from));
    }
    take_parts(from, c);
}
