/* What combustion.ignition makes of the other settings: their defaults, and
 * which of them are of the other kind of engine. */
#include <string.h>

#include "config_parts.h"
#include "setting_applies.h"

static const char *const sparks[] = {"fuel.octane",
                                     "combustion.burn50",
                                     "combustion.retard",
                                     "combustion.knock_delay",
                                     "combustion.burn_duration",
                                     "charge.closed_throttle",
                                     "charge.evaporation",
                                     "charge.wall_evaporation",
                                     "uncertainty.octane",
                                     "uncertainty.retard",
                                     "nitrous.flow",
                                     "nitrous.power",
                                     "nitrous.state",
                                     "nitrous.bottle",
                                     "nitrous.lambda",
                                     "spray.flow",
                                     "spray.alcohol",
                                     "spray.from_load",
                                     "spray.before",
                                     "spray.closed"};

static const char *const compressions[] = {"combustion.injection",
                                           "combustion.ignition_delay"};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

static void refuse(struct cg_reader *reader, const char *path, const char *kind)
{
    const struct cg_setting *setting = cg_setting_find(path);
    const struct cg_origin *origin = cg_origin_of(reader, path);
    const struct cg_unit *unit =
        cg_unit_find(setting->dimension, setting->unit);
    double fallback = cg_unit_to_si(unit, setting->fallback);
    bool compression =
        reader->c->combustion.ignition == CG_IGNITION_COMPRESSION;
    if (!origin->given ||
        (!compression && cg_setting_get(setting, reader->c) == fallback))
        return; /* the template's with the # taken away says nothing */
    char key[128];
    cg_key_write(setting, origin->unit, true, key, sizeof key);
    cg_problem(reader->problems, cg_where_given(reader, path), key,
               "is of %s ignition alone, allowed with combustion.ignition = "
               "\"%s\"; else leave it out",
               kind, kind);
}

void cg_ignition_read(struct cg_reader *reader)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    bool compression =
        reader->c->combustion.ignition == CG_IGNITION_COMPRESSION;
    for (size_t i = 0; i < count && compression; i++)
        if (cg_setting_by_ignition(&settings[i]) && !reader->origin[i].given)
            cg_case_default(&settings[i], reader->c);
    for (size_t i = 0; i < COUNT(sparks) && compression; i++)
        refuse(reader, sparks[i], "spark");
    for (size_t i = 0; i < COUNT(compressions) && !compression; i++)
        refuse(reader, compressions[i], "compression");
}

static bool is_in(const char *const *list, size_t count, const char *path)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(list[i], path) == 0)
            return true;
    return false;
}

bool cg_ignition_has(const struct cg_setting *setting, const struct cg_case *c)
{
    return c->combustion.ignition == CG_IGNITION_COMPRESSION
               ? !is_in(sparks, COUNT(sparks), setting->path)
               : !is_in(compressions, COUNT(compressions), setting->path);
}

bool cg_setting_applies(const struct cg_setting *setting,
                        const struct cg_case *c)
{
    return cg_ignition_has(setting, c) && cg_cooling_has(setting, c);
}
