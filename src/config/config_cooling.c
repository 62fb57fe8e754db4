/* What cools the engine, coolant or air, and what is said of the other. */
#include <math.h>
#include <string.h>

#include "config_parts.h"
#include "outside.h"
#include "setting_applies.h"

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
                 "charge.ambient_C, cooling.air_speed_m_s and "
                 "cooling.fins_W_m2K"
               : "no air past fins in this engine, cooling.medium is coolant; "
                 "allowed: cooling.coolant_C and cooling.coolant_film_W_m2K";
}

/* A template with every # taken away gives the defaults of air too. */
static bool is_default(const struct cg_case *c, const char *path)
{
    const struct cg_setting *setting = cg_setting_find(path);
    struct cg_case plain;
    cg_case_begin(&plain);
    plain.engine = c->engine;
    (void)cg_case_complete(&plain);
    double usual = cg_setting_get(setting, &plain);
    return fabs(cg_setting_get(setting, c) - usual) <= 1e-4 * fabs(usual);
}

static void refuse(struct cg_reader *reader, const char *path)
{
    char key[128];
    cg_key_write(cg_setting_find(path), cg_origin_of(reader, path)->unit, true,
                 key, sizeof key);
    cg_problem(reader->problems, cg_where_given(reader, path), key, "%s",
               cg_cooling_other(reader->c));
}

void cg_cooling_check(struct cg_reader *reader)
{
    for (size_t i = 0; i < sizeof owned / sizeof owned[0]; i++)
        if ((int)owned[i].of != reader->c->cooling.medium &&
            cg_origin_of(reader, owned[i].path)->given &&
            !(owned[i].of == CG_MEDIUM_AIR &&
              is_default(reader->c, owned[i].path)))
            refuse(reader, owned[i].path);
}

bool cg_cooling_has(const struct cg_setting *setting, const struct cg_case *c)
{
    for (size_t i = 0; i < sizeof owned / sizeof owned[0]; i++)
        if (strcmp(owned[i].path, setting->path) == 0)
            return (int)owned[i].of == c->cooling.medium;
    return true;
}
