#include <stdio.h>
#include <string.h>

#include "pages.h"
#include "roff.h"
#include "setting.h"
#include "setting_key.h"
#include "setting_text.h"

enum { LINE = 256 };

static void print_head(void)
{
    printf(".TH COLDGAP.CFG 5 \"\" \"coldgap " CG_VERSION
           "\" \"File Formats\"\n");
    cg_roff_section("NAME");
    printf("coldgap.cfg \\- an engine, its duty and the margin wanted, for "
           "coldgap\n");
    cg_roff_section("DESCRIPTION");
    cg_roff_text(
        "A libconfig file of groups, each setting written in its group:\n");
    cg_roff_lines("engine = { bore_mm = 85.3; stroke_mm = 87.7;\n"
                  "           speed_rpm = 6800; };\n"
                  "charge = { boost_psi = 17.0; };\n"
                  "rings = { top = { material = \"plain_steel\"; }; };\n"
                  "@include \"my_ring.cfg\"\n");
    cg_roff_text(
        "A few settings are required; everything else has a default.\n"
        "The ending of a name is its unit: a length may be given in mm, um, "
        "in or thou,\na pressure in kPa, bar, psi or MPa, a temperature in C, "
        "F or K.\nOne quantity given twice, a misspelt name or a value out of "
        "its band is an error.\nOn the command line the same names stand with "
        "their groups:\n");
    cg_roff_lines("--set charge.boost_kPa=180\n");
    cg_roff_text("Of one name given there again the last holds; the same "
                 "setting in another unit,\nor varied too, is an error.\n"
                 "A config may hold 1 MB and 100 files included in all, 200 "
                 "settings in a group.\nFiles are regular ones; /dev/stdin is "
                 "read too.\n");
    cg_roff_text(
        "A duty of your own is a list of segments; speeds and loads run in "
        "straight lines\nfrom a value to its _end (left out: held):\n");
    cg_roff_lines(
        "duty = { segments = (\n"
        "    { seconds = 20.0; speed_rpm = 3000; load = 0.2; },\n"
        "    { seconds = 12.0; speed_rpm = 3000; speed_end_pct = 100.0;\n"
        "      load = 1.0; heat_factor = 1.0; coolant_C = 90.0; } ); };\n");
    cg_roff_text("Of an engine that air cools no coolant is given: air_pct is "
                 "then the share of\ncooling.air_speed that a segment has.\n");
    cg_roff_text(
        "Or it is a logged run, a table of text whose columns you name by "
        "their headings;\na duty NAME that is not shipped is looked for in "
        "NAME.cfg beside the config:\n");
    cg_roff_lines(
        "duty = { log = \"pull.csv\";\n"
        "    columns = { time_s = \"Time\"; speed_rpm = \"RPM\"; boost_kPa = "
        "\"Boost\";\n"
        "      lambda = \"Lambda\"; coolant_C = \"Coolant\"; }; };\n");
    cg_roff_text(
        "A segment in which the engine knocks says knock_heat, how many times "
        "the gas heat\nthat gives: 1.1 to 2.2 by one simulation, read of at "
        "second hand; none was measured.\n");
    cg_roff_text(
        "A segment with nitrous = 1.0 has nitrous.flow on, or that share of "
        "it.\n");
    cg_roff_text(
        "Metals of your own stand in lists ring_materials, piston_alloys and "
        "bore_materials,\nwritten as those shipped in configs/materials/.\n");
}

/* The name before the last dot: "rings.top" of rings.top.width. */
static void group_of(const char *path, char group[LINE])
{
    const char *dot = strrchr(path, '.');
    snprintf(group, LINE, "%.*s", dot != NULL ? (int)(dot - path) : 0, path);
}

static void print_setting(const struct cg_setting *setting)
{
    char key[LINE], band[LINE], fallback[LINE];
    cg_key_write(setting, NULL, true, key, sizeof key);
    cg_setting_band_text(setting, false, band, sizeof band);
    cg_setting_default_text(setting, false, fallback, sizeof fallback);
    cg_roff_tag(key, NULL);
    cg_roff_text(setting->doc);
    printf(": ");
    cg_roff_text(band);
    printf("; ");
    cg_roff_text(fallback);
    printf(".\n");
}

void cg_page_config(void)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    char last[LINE] = "", group[LINE];
    print_head();
    cg_roff_section("SETTINGS");
    cg_roff_text("With what each may be, and what holds where it is left "
                 "out.\n");
    for (size_t i = 0; i < count; i++) {
        group_of(settings[i].path, group);
        if (strcmp(group, last) != 0) {
            printf(".SS ");
            cg_roff_text(group);
            printf("\n");
        }
        strcpy(last, group);
        print_setting(&settings[i]);
    }
    cg_roff_section("SEE ALSO");
    printf(".BR coldgap (1);\n.B coldgap template\n"
           "prints these settings as a file to start from.\n");
}
