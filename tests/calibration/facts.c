#include "facts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const sights[] = {
    "ends",       "crown", "groove", "liner",        "liner_above_coolant",
    "ring_place", "walls_and_friction", "brake", "flux_exponent"};

static void refuse(const config_setting_t *at, const char *what)
{
    fprintf(stderr, "facts.cfg:%u: %s\n", config_setting_source_line(at),
            what);
    exit(2);
}

static const char *text_of(const config_setting_t *at, const char *key)
{
    const char *text;
    if (!config_setting_lookup_string(at, key, &text))
        refuse(at, key);
    return text;
}

static double number_of(const config_setting_t *at, const char *key)
{
    double number;
    if (!config_setting_lookup_float(at, key, &number))
        refuse(at, key);
    return number;
}

static double number_or(const config_setting_t *at, const char *key,
                        double otherwise)
{
    double number = otherwise;
    config_setting_lookup_float(at, key, &number);
    return number;
}

static bool switch_of(const config_setting_t *at, const char *key)
{
    int on = 0;
    config_setting_lookup_bool(at, key, &on);
    return on != 0;
}

static size_t texts_of(const config_setting_t *at, const char *key,
                       const char **text, size_t most)
{
    const config_setting_t *list = config_setting_get_member(at, key);
    size_t count = list != NULL ? (size_t)config_setting_length(list) : 0;
    if (count > most)
        refuse(at, key);
    for (size_t i = 0; i < count; i++)
        text[i] = config_setting_get_string_elem(list, (int)i);
    return count;
}

static enum fact_sees sees_of(const config_setting_t *at)
{
    const char *text = text_of(at, "sees");
    for (size_t i = 0; i < sizeof sights / sizeof sights[0]; i++)
        if (strcmp(sights[i], text) == 0)
            return (enum fact_sees)i;
    refuse(at, "sees");
    return SEES_ENDS;
}

static void read_fact(const config_setting_t *at, double ends_spread,
                      struct fact *fact)
{
    *fact = (struct fact){.name = text_of(at, "name"),
                          .kind = text_of(at, "kind"),
                          .grade = text_of(at, "grade"),
                          .source = text_of(at, "source"),
                          .held = switch_of(at, "held"),
                          .sees = sees_of(at),
                          .per_bmep = switch_of(at, "per_bmep"),
                          .constant_bmep = switch_of(at, "constant_bmep"),
                          .depth = number_or(at, "depth_mm", 0.0) * 1e-3,
                          .power = number_or(at, "power_kW", 0.0) * 1e3,
                          .load = number_or(at, "load", 1.0),
                          .change_load = number_or(at, "change_load", 0.0)};
    fact->builds = texts_of(at, "build", fact->build, SETS);
    fact->changes = texts_of(at, "change", fact->change, SETS);
    if (fact->sees == SEES_ENDS) {
        fact->one_sided = true;
        fact->value = number_of(at, "gap_mm") * 1e-3;
        fact->spread = ends_spread;
        return;
    }
    fact->one_sided = config_setting_get_member(at, "above") != NULL;
    fact->value = number_of(at, fact->one_sided ? "above" : "value");
    fact->spread = number_of(at, "spread");
}

static void read_constant(const config_setting_t *at, struct constant *constant)
{
    *constant = (struct constant){.input = text_of(at, "input"),
                                  .source = text_of(at, "source"),
                                  .low = number_of(at, "low"),
                                  .high = number_of(at, "high")};
    constant->settings = texts_of(at, "settings", constant->setting,
                                  SETTINGS);
    constant->middle = sqrt(constant->low * constant->high);
    constant->spread = log(constant->high / constant->low) / 4.0;
}

static const config_setting_t *list_of(const struct facts *facts,
                                       const char *key, size_t most,
                                       size_t *count)
{
    const config_setting_t *list = config_lookup(&facts->config, key);
    if (list == NULL)
        refuse(config_root_setting(&facts->config), key);
    *count = (size_t)config_setting_length(list);
    if (*count > most)
        refuse(list, "too many");
    return list;
}

void facts_read(const char *path, struct facts *facts)
{
    memset(facts, 0, sizeof *facts);
    config_init(&facts->config);
    if (!config_read_file(&facts->config, path)) {
        fprintf(stderr, "%s:%d: %s\n", path, config_error_line(&facts->config),
                config_error_text(&facts->config));
        exit(2);
    }
    const config_setting_t *root = config_root_setting(&facts->config);
    const config_setting_t *list =
        list_of(facts, "facts", FACTS, &facts->facts);
    double ends_spread = number_of(root, "ends_spread_mm") * 1e-3;
    for (size_t i = 0; i < facts->facts; i++)
        read_fact(config_setting_get_elem(list, (unsigned)i), ends_spread,
                  &facts->fact[i]);
    list = list_of(facts, "constants", CONSTANTS, &facts->constants);
    for (size_t i = 0; i < facts->constants; i++)
        read_constant(config_setting_get_elem(list, (unsigned)i),
                      &facts->constant[i]);
    facts->metals = texts_of(root, "ring_metals", facts->metal, METALS);
    facts->port_spread = number_of(root, "port_spread_pct");
    facts->least_weight = number_of(root, "least_weight");
    const config_setting_t *scatter = config_lookup(&facts->config, "scatter");
    double low = number_of(scatter, "low"), high = number_of(scatter, "high");
    facts->scatter_middle = sqrt(low * high);
    facts->scatter_spread = log(high / low) / 4.0;
}

void facts_free(struct facts *facts)
{
    config_destroy(&facts->config);
}

bool fact_changes(const struct fact *fact)
{
    return fact->changes > 0 || fact->change_load > 0.0;
}
