#include "setting_text.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "fuel.h"
#include "heat_transfer.h"
#include "oil.h"

const struct cg_unit *cg_setting_unit(const struct cg_setting *setting,
                                      bool inch)
{
    const char *suffix = setting->unit;
    if (inch && setting->dimension == CG_LENGTH)
        suffix = strcmp(suffix, "um") == 0 ? "thou" : "in";
    else if (inch && setting->dimension == CG_PRESSURE)
        suffix = "psi";
    else if (inch && setting->dimension == CG_TEMPERATURE)
        suffix = "F";
    return cg_unit_find(setting->dimension, suffix);
}

/* Of a setting that is not given. */
static double likely_value(const struct cg_setting *setting,
                           const struct cg_case *c)
{
    if (setting->rule == CG_PER_FUEL)
        return setting->fallback;
    if (setting->dimension != CG_LENGTH)
        return 0.5 * cg_unit_to_si(cg_setting_unit(setting, false),
                                    setting->low + setting->high);
    return (setting->rule == CG_PER_ALLOY ? setting->fallback : 0.005) *
           c->engine.bore;
}

/* Words as a list of a config: ["a", "b"]. */
static void write_list(const char *words, char *text, size_t size)
{
    size_t used = (size_t)snprintf(text, size, "[");
    for (; *words != '\0'; words += strspn(words, " ")) {
        size_t length = strcspn(words, " ");
        if (used < size)
            used += (size_t)snprintf(text + used, size - used, "%s\"%.*s\"",
                                     text[used - 1] == '[' ? "" : ", ",
                                     (int)length, words);
        words += length;
    }
    if (used < size)
        snprintf(text + used, size - used, "]");
}

void cg_setting_value_text(const struct cg_setting *setting,
                           const struct cg_case *c, bool inch, char *text,
                           size_t size)
{
    double si = cg_setting_get(setting, c);
    const struct cg_unit *unit = cg_setting_unit(setting, inch);
    char word[CG_NAME_LENGTH];
    switch (setting->kind) {
    case CG_REAL:
        if (isnan(si)) /* not given: something of its size */
            si = likely_value(setting, c);
        snprintf(text, size, "%.6g", cg_unit_from_si(unit, si));
        if (strpbrk(text, ".e") == NULL)
            strncat(text, ".0", size - strlen(text) - 1);
        break;
    case CG_COUNT:
        snprintf(text, size, "%.0f", si);
        break;
    case CG_SWITCH:
        snprintf(text, size, "%s", si != 0.0 ? "true" : "false");
        break;
    case CG_CHOICE:
        cg_setting_word(setting, (int)si, word);
        snprintf(text, size, "\"%s\"", word);
        break;
    case CG_NAME:
        snprintf(text, size, "\"%s\"", (const char *)c + setting->offset);
        break;
    case CG_WORDS:
        write_list((const char *)c + setting->offset, text, size);
        break;
    }
}

/* Names parted by blanks; those of files are told by their folder. */
static void write_names(const struct cg_setting *setting, char *text,
                        size_t size)
{
    size_t count, used = 0;
    if (strcmp(setting->path, "fuel.name") == 0) {
        const struct cg_fuel *fuels = cg_fuels(&count);
        for (size_t i = 0; i < count && used < size; i++)
            used += (size_t)snprintf(text + used, size - used, "%s%s",
                                     i > 0 ? " " : "", fuels[i].name);
    } else if (strcmp(setting->path, "combustion.heat_transfer") == 0) {
        const struct cg_heat_transfer *all = cg_heat_transfers(&count);
        for (size_t i = 0; i < count && used < size; i++)
            used += (size_t)snprintf(text + used, size - used, "%s%s",
                                     i > 0 ? " " : "", all[i].name);
    } else if (strcmp(setting->path, "cooling.oil_grade") == 0) {
        const struct cg_oil *oils = cg_oils(&count);
        for (size_t i = 0; i < count && used < size; i++)
            used += (size_t)snprintf(text + used, size - used, "%s%s",
                                     i > 0 ? " " : "", oils[i].name);
    } else if (strcmp(setting->path, "duty.name") == 0) {
        snprintf(text, size, "a file of configs/duties");
    } else if (setting->rule == CG_OPTIONAL) {
        snprintf(text, size, "free text");
    } else {
        snprintf(text, size, "a name of configs/materials");
    }
}

/* A limit of the band, from the table's own unit to the one shown. */
static double shown(const struct cg_setting *setting,
                    const struct cg_unit *unit, double limit)
{
    const struct cg_unit *own =
        cg_unit_find(setting->dimension, setting->unit);
    return unit == own ? limit
                       : cg_unit_from_si(unit, cg_unit_to_si(own, limit));
}

/* What is allowed: band, words or names. */
void cg_setting_band_text(const struct cg_setting *setting, bool inch,
                          char *text, size_t size)
{
    const struct cg_unit *unit = cg_setting_unit(setting, inch);
    switch (setting->kind) {
    case CG_REAL:
    case CG_COUNT:
        snprintf(text, size, "%.*g to %.*g%s%s", inch ? 4 : 6,
                 shown(setting, unit, setting->low), inch ? 4 : 6,
                 shown(setting, unit, setting->high),
                 unit->suffix[0] != '\0' ? " " : "", unit->suffix);
        break;
    case CG_SWITCH:
        snprintf(text, size, "true or false");
        break;
    case CG_CHOICE:
        snprintf(text, size, "%s", setting->text);
        break;
    case CG_NAME:
        write_names(setting, text, size);
        break;
    case CG_WORDS:
        snprintf(text, size, "files of configs/duties");
        break;
    }
}

void cg_setting_default_text(const struct cg_setting *setting, bool inch,
                             char *text, size_t size)
{
    struct cg_case plain;
    char value[CG_WORDS_LENGTH + 32];
    switch (setting->rule) {
    case CG_REQUIRED:
        snprintf(text, size, "required");
        break;
    case CG_FIXED:
        cg_case_begin(&plain);
        cg_setting_value_text(setting, &plain, inch, value, sizeof value);
        snprintf(text, size, "default %s", value);
        cg_case_ignite(&plain);
        cg_setting_value_text(setting, &plain, inch, value, sizeof value);
        if (cg_setting_by_ignition(setting))
            snprintf(text + strlen(text), size - strlen(text),
                     ", with compression ignition %s", value);
        break;
    case CG_PER_BORE:
        snprintf(text, size, "default %g bore", setting->fallback);
        if (cg_setting_by_ignition(setting))
            snprintf(text + strlen(text), size - strlen(text),
                     ", with compression ignition %g",
                     cg_setting_fallback(setting, CG_IGNITION_COMPRESSION));
        break;
    case CG_PER_STROKE:
        snprintf(text, size, "default %g stroke", setting->fallback);
        break;
    case CG_PER_SPEED:
        snprintf(text, size, "default %g engine.speed", setting->fallback);
        break;
    case CG_OPTIONAL:
        snprintf(text, size, "default: not given");
        break;
    case CG_PER_FUEL:
        snprintf(text, size, "default: that of the fuel");
        break;
    case CG_PER_ALLOY:
        snprintf(text, size, "default: what the trade fits that alloy with");
        break;
    }
}
