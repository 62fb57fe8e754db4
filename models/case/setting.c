#include "setting.h"

#include <math.h>
#include <string.h>

#include "fuel.h"

const struct cg_setting *cg_setting_find(const char *path)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(settings[i].path, path) == 0)
            return &settings[i];
    return NULL;
}

/* Length of the word at `words`, and the start of the next one. */
static size_t word_length(const char *words, const char **next)
{
    size_t length = strcspn(words, " ");
    *next = words + length + (words[length] == ' ');
    return length;
}

int cg_setting_choice(const struct cg_setting *setting, const char *word)
{
    const char *words = setting->text, *next;
    for (int i = 0; *words != '\0'; i++, words = next) {
        size_t length = word_length(words, &next);
        if (strlen(word) == length && strncmp(word, words, length) == 0)
            return i;
    }
    return -1;
}

void cg_setting_word(const struct cg_setting *setting, int choice,
                     char word[CG_NAME_LENGTH])
{
    const char *words = setting->text, *next;
    word[0] = '\0';
    for (int i = 0; *words != '\0'; i++, words = next) {
        size_t length = word_length(words, &next);
        if (i == choice && length < CG_NAME_LENGTH) {
            memcpy(word, words, length);
            word[length] = '\0';
        }
    }
}

static void *field(const struct cg_setting *setting, struct cg_case *c)
{
    return (char *)c + setting->offset;
}

void cg_case_begin(struct cg_case *c)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    memset(c, 0, sizeof *c);
    for (size_t i = 0; i < count; i++)
        cg_case_default(&settings[i], c);
    for (int r = 0; r < CG_RINGS; r++)
        c->ring[r].maker_minimum = NAN;
    c->scale = (struct cg_scale_case){1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0};
}

/* NaN of a fuel that no spark burns. */
static double octane_of(const struct cg_case *c, double unknown)
{
    const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
    if (fuel == NULL)
        return unknown;
    return fuel->octane > 0.0 ? fuel->octane : NAN;
}

const struct cg_setting *cg_case_complete(struct cg_case *c)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    c->bore.block_taken =
        c->bore.block_taken || isnan(c->bore.block_thickness);
    for (size_t i = 0; i < count; i++) {
        const struct cg_setting *setting = &settings[i];
        if (setting->kind != CG_REAL || !isnan(cg_setting_get(setting, c)))
            continue;
        double fallback =
            cg_setting_fallback(setting, c->combustion.ignition);
        switch (setting->rule) {
        case CG_REQUIRED:
            return setting;
        case CG_PER_BORE:
            cg_setting_put(setting, c, fallback * c->engine.bore);
            break;
        case CG_PER_STROKE:
            cg_setting_put(setting, c, fallback * c->engine.stroke);
            break;
        case CG_PER_SPEED:
            cg_setting_put(setting, c, fallback * c->engine.speed);
            break;
        case CG_PER_FUEL:
            cg_setting_put(setting, c, octane_of(c, fallback));
            break;
        case CG_FIXED:
        case CG_OPTIONAL:
        case CG_PER_ALLOY:
            break;
        }
    }
    return NULL;
}

void cg_case_choose_skirt(struct cg_case *c)
{
    const struct cg_band *trade = &c->piston_material.skirt_per_bore;
    double per_bore = c->piston_material.name[0] != '\0'
                          ? 0.5 * (trade->low + trade->high)
                          : NAN;
    if (!(per_bore > 0.0))
        per_bore = cg_setting_find("piston.skirt_clearance")->fallback;
    c->piston.skirt_taken = isnan(c->piston.skirt_clearance);
    if (c->piston.skirt_taken)
        c->piston.skirt_clearance = per_bore * c->engine.bore;
}

double cg_setting_get(const struct cg_setting *setting,
                      const struct cg_case *c)
{
    const void *at = (const char *)c + setting->offset;
    switch (setting->kind) {
    case CG_REAL:
        return *(const double *)at;
    case CG_COUNT:
    case CG_CHOICE:
        return *(const int *)at;
    case CG_SWITCH:
        return *(const bool *)at;
    case CG_NAME:
    case CG_WORDS:
        break;
    }
    return NAN;
}

void cg_setting_put(const struct cg_setting *setting, struct cg_case *c,
                    double si)
{
    void *at = field(setting, c);
    switch (setting->kind) {
    case CG_REAL:
        *(double *)at = si;
        break;
    case CG_COUNT:
    case CG_CHOICE:
        *(int *)at = (int)si;
        break;
    case CG_SWITCH:
        *(bool *)at = si != 0.0;
        break;
    case CG_NAME:
    case CG_WORDS:
        break;
    }
}
