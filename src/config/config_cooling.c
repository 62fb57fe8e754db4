/* What cools the engine, coolant or air, and what is said of the other. */
#include "config_parts.h"
#include "outside.h"

/* Settings of one medium alone. */
static const struct {
    const char *path;
    enum cg_medium of;
} owned[] = {
    {"cooling.coolant", CG_MEDIUM_COOLANT},
    {"cooling.coolant_film", CG_MEDIUM_COOLANT},
    {"cooling.coolant_pressure", CG_MEDIUM_COOLANT},
    {"cooling.coolant_glycol", CG_MEDIUM_COOLANT},
    {"cooling.deck", CG_MEDIUM_COOLANT},
    {"cooling.dry_block", CG_MEDIUM_COOLANT},
    {"cooling.head", CG_MEDIUM_COOLANT},
    {"bore.jacket_top", CG_MEDIUM_COOLANT},
    {"bore.jacket_length", CG_MEDIUM_COOLANT},
    {"cooling.fins", CG_MEDIUM_AIR},
    {"cooling.fin_head", CG_MEDIUM_AIR},
    {"cooling.fin_deck", CG_MEDIUM_AIR},
    {"cooling.fin_lower", CG_MEDIUM_AIR},
    {"cooling.air_speed", CG_MEDIUM_AIR},
    {"cooling.air_drive", CG_MEDIUM_AIR},
    {"cooling.air_rise", CG_MEDIUM_AIR},
    {"bore.fins_top", CG_MEDIUM_AIR},
    {"bore.fins_length", CG_MEDIUM_AIR},
};

const char *cg_cooling_other(const struct cg_case *c)
{
    return cg_air_cooled(c)
               ? "no coolant in this engine, cooling.medium is air; allowed: "
                 "charge.ambient_C, cooling.air_speed_m_s and cooling.fins_W_m2K"
               : "no air past fins in this engine, cooling.medium is coolant; "
                 "allowed: cooling.coolant_C and cooling.coolant_film_W_m2K";
}

void cg_cooling_check(struct cg_reader *reader)
{
    for (size_t i = 0; i < sizeof owned / sizeof owned[0]; i++)
        if ((int)owned[i].of != reader->c->cooling.medium &&
            cg_origin_of(reader, owned[i].path)->given)
            cg_problem(reader->problems, cg_where_given(reader, owned[i].path),
                       owned[i].path, "%s", cg_cooling_other(reader->c));
}
