/* Every setting an engine may have, as a page needs it to make a field. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "data_folder.h"
#include "fuel.h"
#include "heat_transfer.h"
#include "json_text.h"
#include "metals.h"
#include "oil.h"
#include "operating.h"
#include "page_commands.h"
#include "setting_applies.h"
#include "setting_key.h"
#include "setting_text.h"

enum { TEXT = 1024, MOST = CG_METAL_ROOM };

struct listing {
    const struct cg_options *options;
    const struct cg_metals *shipped;
    const struct cg_case *c;
};

static void put_key(const char *key, const char *text)
{
    printf(", \"%s\": ", key);
    cg_json_string(stdout, text);
}

/* The config with this name in its place: no other rule decides here than that
 * of the reader. */
static bool may_be(const struct listing *listing,
                   const struct cg_setting *setting, const char *name)
{
    const char *set[CG_OPTION_REPEATS + 1];
    char change[TEXT];
    struct cg_case c = {.courses = NULL};
    struct cg_error error;
    memcpy(set, listing->options->set, sizeof listing->options->set);
    snprintf(change, sizeof change, "%s=%s", setting->path, name);
    set[listing->options->sets] = change;
    if (cg_config_try(listing->options->config, set,
                      listing->options->sets + 1, listing->shipped, &c,
                      &error) != CG_OK)
        return false;
    cg_case_free(&c);
    return true;
}

static void offer(struct listing *listing, const struct cg_setting *setting,
                  const char *name)
{
    const char *now = (const char *)listing->c + setting->offset;
    if (strcmp(name, now) == 0 || !may_be(listing, setting, name))
        return;
    fputs(", ", stdout);
    cg_json_string(stdout, name);
}

static void offer_metals(struct listing *listing,
                         const struct cg_setting *setting, enum cg_role role)
{
    const char *names[MOST];
    size_t count = cg_metals_names(listing->shipped, role, names, MOST);
    for (size_t i = 0; i < count; i++)
        offer(listing, setting, names[i]);
}

static void offer_faces(struct listing *listing,
                        const struct cg_setting *setting)
{
    for (size_t i = 0; i < listing->shipped->faces; i++)
        offer(listing, setting, listing->shipped->face[i].name);
}

static void offer_duties(struct listing *listing,
                         const struct cg_setting *setting)
{
    struct cg_data_names names;
    struct cg_error error;
    if (cg_data_list("duties", &names, &error) != CG_OK)
        return;
    for (size_t i = 0; i < names.count; i++)
        offer(listing, setting, names.list[i]);
}

static void offer_fuels(struct listing *listing,
                        const struct cg_setting *setting)
{
    size_t count;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (size_t i = 0; i < count; i++)
        offer(listing, setting, fuels[i].name);
}

static void offer_oils(struct listing *listing,
                       const struct cg_setting *setting)
{
    size_t count;
    const struct cg_oil *oils = cg_oils(&count);
    for (size_t i = 0; i < count; i++)
        offer(listing, setting, oils[i].name);
}

/* The names that a page offers, each with its list. */
static void put_names(struct listing *listing, const struct cg_setting *setting)
{
    static const struct {
        const char *path;
        enum cg_role role;
    } metals[] = {{"rings.top.material", CG_ROLE_RING},
                  {"rings.second.material", CG_ROLE_RING},
                  {"piston.alloy", CG_ROLE_PISTON},
                  {"bore.material", CG_ROLE_BORE},
                  {"bore.block_material", CG_ROLE_BLOCK}};
    static const struct {
        const char *path;
        void (*offer)(struct listing *, const struct cg_setting *);
    } lists[] = {{"rings.top.face", offer_faces},
                 {"duty.name", offer_duties},
                 {"fuel.name", offer_fuels},
                 {"cooling.oil_grade", offer_oils}};
    fputs(", \"choices\": [", stdout);
    cg_json_string(stdout, (const char *)listing->c + setting->offset);
    for (size_t i = 0; i < sizeof metals / sizeof metals[0]; i++)
        if (strcmp(metals[i].path, setting->path) == 0)
            offer_metals(listing, setting, metals[i].role);
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++)
        if (strcmp(lists[i].path, setting->path) == 0)
            lists[i].offer(listing, setting);
    putchar(']');
}

static void put_words(const struct cg_setting *setting)
{
    char word[CG_NAME_LENGTH];
    fputs(", \"choices\": [", stdout);
    for (int i = 0;; i++) {
        cg_setting_word(setting, i, word);
        if (cg_setting_choice(setting, word) != i)
            break;
        fputs(i > 0 ? ", " : "", stdout);
        cg_json_string(stdout, word);
    }
    putchar(']');
}

/* The band, as this engine has it. */
static void put_band(const struct cg_setting *setting, const struct cg_case *c)
{
    double high = setting->high;
    if (strcmp(setting->path, "fuel.lambda") == 0)
        high = fmin(high, cg_lambda_most(c));
    fputs(", \"low\": ", stdout);
    cg_json_number(stdout, setting->low);
    fputs(", \"high\": ", stdout);
    cg_json_number(stdout, high);
}

static void put_value(const struct cg_setting *setting, const struct cg_case *c)
{
    const struct cg_unit *unit = cg_setting_unit(setting, false);
    double si = cg_setting_get(setting, c);
    char text[TEXT];
    fputs(", \"value\": ", stdout);
    if (setting->kind == CG_NAME || setting->kind == CG_WORDS) {
        cg_json_string(stdout, (const char *)c + setting->offset);
        return;
    }
    if (setting->kind == CG_CHOICE) {
        cg_setting_word(setting, (int)si, text);
        cg_json_string(stdout, text);
        return;
    }
    if (setting->kind == CG_SWITCH) {
        fputs(si != 0.0 ? "true" : "false", stdout);
        return;
    }
    cg_setting_value_text(setting, c, false, text, sizeof text);
    if (isnan(si)) /* not given */
        fputs("null", stdout);
    else
        cg_json_number(stdout, cg_unit_from_si(unit, si));
    put_key("text", isnan(si) ? "" : text);
}

static void put_setting(struct listing *listing,
                        const struct cg_setting *setting)
{
    static const char *const kinds[] = {
        [CG_REAL] = "number",   [CG_COUNT] = "count", [CG_SWITCH] = "switch",
        [CG_CHOICE] = "choice", [CG_NAME] = "name",   [CG_WORDS] = "words"};
    const struct cg_unit *unit = cg_setting_unit(setting, false);
    char text[TEXT];
    fputs("{\"path\": ", stdout);
    cg_json_string(stdout, setting->path);
    cg_key_write(setting, NULL, true, text, sizeof text);
    put_key("key", text);
    put_key("kind", kinds[setting->kind]);
    put_key("unit", unit->suffix);
    put_key("about", setting->doc);
    cg_setting_band_text(setting, false, text, sizeof text);
    put_key("band", text);
    cg_setting_default_text(setting, false, text, sizeof text);
    put_key("default", text);
    if (setting->kind == CG_REAL || setting->kind == CG_COUNT)
        put_band(setting, listing->c);
    put_value(setting, listing->c);
    if (setting->kind == CG_NAME)
        put_names(listing, setting);
    else if (setting->kind == CG_CHOICE)
        put_words(setting);
    putchar('}');
}

static void put_all(struct listing *listing)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    const char *before = "[";
    for (size_t i = 0; i < count; i++) {
        if (!cg_setting_applies(&settings[i], listing->c))
            continue;
        puts(before);
        put_setting(listing, &settings[i]);
        before = ",";
    }
    puts("\n]");
}

enum cg_status cg_page_settings(const struct cg_options *options,
                                struct cg_error *error)
{
    struct cg_case c = {.courses = NULL};
    struct cg_metals shipped;
    enum cg_status status =
        cg_config_read(options->config, options->set, options->sets, &c, error);
    if (status != CG_OK)
        return status;
    status = cg_config_shipped(&shipped, error);
    if (status == CG_OK) {
        struct listing listing = {
            .options = options, .shipped = &shipped, .c = &c};
        put_all(&listing);
    }
    cg_metals_free(&shipped);
    cg_case_free(&c);
    return status;
}
