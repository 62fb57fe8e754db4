/* template: a config to start from, written from the table of settings.
 *
 * A boosted four is filled in; every other setting stands as a comment with
 * its default: taking the # away changes nothing, but for a cold_gap. */
#include <stdio.h>
#include <string.h>

#include "cautions.h"
#include "evidence.h"
#include "options.h"
#include "setting.h"
#include "setting_key.h"
#include "setting_text.h"

enum { KEY_COLUMN = 40, LINE = 160 };

/* What the invented four says itself, in the unit shown first. */
struct sample {
    const char *path;
    double value;
    const char *text; /* of a name, choice or switch */
};

static const struct sample samples[] = {
    {"engine.bore", 85.3, NULL},
    {"engine.stroke", 87.7, NULL},
    {"engine.compression_ratio", 9.1, NULL},
    {"engine.cylinders", 4.0, NULL},
    {"engine.speed", 6800.0, NULL},
    {"charge.boost", 120.0, NULL},
    {"charge.charger", 1.0, "turbine"},
    {"fuel.name", 0.0, "gasoline"},
    {"fuel.lambda", 0.82, NULL},
    {"piston.alloy", 0.0, "2618"},
    {"piston.oil_jet", 1.0, "true"},
    {"rings.top.material", 0.0, "nitrided_stainless"},
    {"bore.material", 0.0, "grey_iron"},
    {"bore.seat", 1.0, "cast_in"},
    {"bore.block_material", 0.0, "a356"},
    {"duty.name", 0.0, "dyno_pull"},
    {"margin.residual", 0.05, NULL},
};

static const struct sample *find_sample(const char *path)
{
    for (size_t i = 0; i < sizeof samples / sizeof samples[0]; i++)
        if (strcmp(samples[i].path, path) == 0)
            return &samples[i];
    return NULL;
}

static void put_samples(struct cg_case *c)
{
    for (size_t i = 0; i < sizeof samples / sizeof samples[0]; i++) {
        const struct cg_setting *setting = cg_setting_find(samples[i].path);
        const struct cg_unit *unit =
            cg_unit_find(setting->dimension, setting->unit);
        cg_setting_put(setting, c, cg_unit_to_si(unit, samples[i].value));
        if (setting->kind == CG_NAME)
            strcpy((char *)c + setting->offset, samples[i].text);
    }
}

static void print_setting(const struct cg_setting *setting,
                          const struct cg_case *c, bool inch,
                          const char *indent)
{
    char key[64], value[LINE], left[2 * LINE], band[LINE], fallback[LINE];
    bool active = find_sample(setting->path) != NULL;
    cg_key_write(setting, cg_setting_unit(setting, inch), false, key,
                 sizeof key);
    cg_setting_value_text(setting, c, inch, value, sizeof value);
    cg_setting_band_text(setting, inch, band, sizeof band);
    cg_setting_default_text(setting, inch, fallback, sizeof fallback);
    snprintf(left, sizeof left, "%s%s%s = %s;", indent, active ? "" : "#", key,
             value);
    printf("%-*s # %s; %s; %s\n", KEY_COLUMN, left, setting->doc, band,
           fallback);
}

/* The two names a path may begin with: "rings" and "top" of rings.top.width;
 * the second is empty in a plain group. */
struct group {
    char outer[CG_NAME_LENGTH], inner[CG_NAME_LENGTH];
};

static struct group group_of(const char *path)
{
    struct group group = {"", ""};
    size_t outer = strcspn(path, ".");
    const char *rest = path + outer + 1;
    size_t inner = strcspn(rest, ".");
    snprintf(group.outer, sizeof group.outer, "%.*s", (int)outer, path);
    if (rest[inner] == '.')
        snprintf(group.inner, sizeof group.inner, "%.*s", (int)inner, rest);
    return group;
}

/* What a row cannot say, under its group's opening brace. */
static void print_group_note(const char *group)
{
    if (strcmp(group, "uncertainty") == 0)
        printf("    # Those in pct multiply and are lognormal, so that they "
               "stay positive; the\n    # others add and are normal (common "
               "practice, no source).  All are\n    # independent, but for "
               "pairs that you state, by their names without unit:\n"
               "    # correlations = ( { a = \"heat_factor\"; b = \"film\"; "
               "r = 0.4; } );\n");
}

/* Closes and opens braces between two settings. */
static void print_braces(const struct group *last, const struct group *next)
{
    bool outer = strcmp(last->outer, next->outer) != 0;
    bool inner = outer || strcmp(last->inner, next->inner) != 0;
    if (inner && last->inner[0] != '\0')
        printf("    };\n");
    if (outer && last->outer[0] != '\0')
        printf("};\n\n");
    if (outer && next->outer[0] != '\0')
        printf("%s = {\n", next->outer);
    if (outer)
        print_group_note(next->outer);
    if (inner && next->inner[0] != '\0')
        printf("    %s = {\n", next->inner);
}

/* What is a list, and so no setting: shown, not set. */
static void print_evidence(bool inch)
{
    size_t count;
    const struct cg_evidence_way *ways = cg_evidence_ways(&count);
    printf("\n# What was measured on this engine teaches the model, and so "
           "narrows what it allows for:\n# a temperature (what:");
    for (int what = 0; what < CG_EVIDENCE_PROBE; what++)
        printf(" %s", cg_evidence_name((enum cg_evidence_what)what));
    printf(";\n# liner with depth), or whether the top ring's ends touched "
           "at a cold gap; at a\n# steady speed_rpm and load also "
           "exhaust_probe, temperature_C in the collector\n# (+- %g K), and "
           "coolant_share, share_pct of the fuel's energy (+- %g %% of it).\n"
           "# how says how, and so how well (one standard "
           "deviation; common practice, no source):\n",
           CG_EVIDENCE_PROBE_SPREAD, 100.0 * CG_EVIDENCE_COOLANT_SPREAD);
    for (size_t i = 0; i < count; i++)
        printf("#   %-14s %2.0f K  %s\n", ways[i].name, ways[i].spread,
               ways[i].doc);
    printf("# or give spread_K.  Without at_s it is the hottest of the duty.  "
           "Found in another\n# run than this config's: duty, or speed_rpm "
           "and load when settled; boost,\n# coolant and ambient, with units.\n"
           "# evidence = (\n"
           "#     { what = \"groove_top\"; %s; how = \"hardness\"; },\n"
           "#     { touched = false; %s; duty = \"drag_pass\"; "
           "%s; }\n# );\n"
           "# Of a logged run: a column's heading, column_C, in place of "
           "temperature_C.\n",
           inch ? "temperature_F = 473.0" : "temperature_C = 245.0",
           inch ? "cold_gap_thou = 18.0" : "cold_gap_mm = 0.45",
           inch ? "boost_psi = 22.0" : "boost_kPa = 150.0");
    printf("# More of it comes from a shop's notebook, a list of builds of "
           "this engine and of\n# others, which count by "
           "uncertainty.engine_pct.  It is a file beside this one:\n"
           "#   builds = ( { engine = \"my_engine.cfg\"; date = "
           "\"2026-03-14\";\n"
           "#                found = ( { as in evidence } ); } );\n"
           "# and without a config of the engine, in its place, "
           "set = ( \"engine.bore_mm=86\", ... );\n"
           "# evidence_from = \"shop.cfg\";\n");
}

static void print_head(void)
{
    printf("# A config for coldgap: an invented boosted four.  Keep it as a "
           "file, then\n#     coldgap find FILE\n#\n"
           "# Change what is yours.  Each line with a # in front of its name "
           "is a\n# setting left at its default; take the # away to change "
           "it.  A length may\n# be given in mm, um, in or thou, a pressure "
           "in kPa, bar, psi or MPa, a\n# temperature in C, F or K: the "
           "name's ending says which.\n#\n# %s\n\n",
           cg_cautions_short());
}

enum cg_status cg_command_template(const struct cg_options *options,
                                   struct cg_error *error)
{
    (void)error;
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    struct cg_case c;
    cg_case_begin(&c);
    put_samples(&c);
    (void)cg_case_complete(&c);
    print_head();
    struct group last = {"", ""}, none = {"", ""};
    for (size_t i = 0; i < count; i++) {
        struct group next = group_of(settings[i].path);
        print_braces(&last, &next);
        print_setting(&settings[i], &c, options->inch,
                      next.inner[0] != '\0' ? "        " : "    ");
        last = next;
    }
    print_braces(&last, &none);
    print_evidence(options->inch);
    return CG_OK;
}
