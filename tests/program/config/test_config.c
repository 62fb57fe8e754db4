/* Reading configs that are right.  Wrong ones are in tests/bad. */
#define _POSIX_C_SOURCE 200809L /* mkdtemp */

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "check_close.h"
#include "config.h"
#include "data_folder.h"
#include "metals.h"
#include "options.h"
#include "setting.h"

#define DEFINITION "by definition"
#define ENGINE                                                              \
    "engine = { bore_mm = 86; stroke_mm = 86.0; speed_rpm = 6500; };\n"

static char folder[64];

static void make_folder(void)
{
    strcpy(folder, "/tmp/coldgap_test_XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
}

static void remove_folder(void)
{
    static const char *const names[] = {"a.cfg", "b.cfg", "parts/c.cfg",
                                        "parts"};
    char path[CG_PATH_LENGTH];
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        snprintf(path, sizeof path, "%s/%s", folder, names[i]);
        remove(path);
    }
    remove(folder);
}

static const char *in_folder(const char *name)
{
    static char path[CG_PATH_LENGTH];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    return path;
}

static void write_file(const char *name, const char *text)
{
    FILE *file = fopen(in_folder(name), "w");
    ck_assert_ptr_nonnull(file);
    fputs(text, file);
    ck_assert_int_eq(fclose(file), 0);
}

static void read_file(const char *path, const char *const *set, size_t sets,
                      struct cg_case *c)
{
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_config_read(path, set, sets, c, &error);
    ck_assert_msg(status == CG_OK, "%s: %s", path, error.text);
}

/* Reads a text as a config, with up to one override. */
static void read_text(const char *text, const char *set, struct cg_case *c)
{
    write_file("a.cfg", text);
    read_file(in_folder("a.cfg"), &set, set != NULL ? 1 : 0, c);
}

START_TEST(numbers_of_all_kinds)
{
    struct cg_case c;
    read_text("engine = { bore_mm = 86; stroke_mm = 86L; speed_rpm = 6.5e3;\n"
              "  cylinders = 6.0; };\n"
              "margin = { risk = 1e-3; };\n", NULL, &c);
    check_close(c.engine.bore, 0.086, 1e-14, DEFINITION);
    check_close(c.engine.stroke, 0.086, 1e-14, DEFINITION);
    check_close(c.engine.speed, 6500.0 / 60.0, 1e-14, DEFINITION);
    check_close(c.margin.risk, 0.001, 1e-14, DEFINITION);
    ck_assert_int_eq(c.engine.cylinders, 6);
}
END_TEST

START_TEST(units)
{
    struct cg_case c;
    read_text("engine = { bore_in = 3.386; stroke_um = 86000.0;\n"
              "  speed_rpm = 6500; };\n"
              "charge = { boost_psi = 17.4; ambient_F = 77.0;\n"
              "  ambient_pressure_bar = 0.98;\n"
              "  cooler_effectiveness_pct = 65.0; };\n"
              "rings = { top = { cold_gap_thou = 18.0; }; };\n"
              "cooling = { coolant_K = 363.15; coolant_film_kW_m2K = 5.5; };\n"
              "uncertainty = { coolant_K = 4.0; };\n"
              "solver = { table_step_min = 0.01; };\n", NULL, &c);
    check_close(c.engine.bore, 0.0860044, 1e-12, DEFINITION);
    check_close(c.engine.stroke, 0.086, 1e-12, DEFINITION);
    /* 1 psi = 6894.757 Pa */
    check_close(c.charge.boost, 119968.777, 1e-8,
                "NIST SP 811 (2008), pound-force per square inch");
    check_close(c.charge.ambient_temperature, 298.15, 1e-12, DEFINITION);
    check_close(c.charge.ambient_pressure, 98000.0, 1e-12, DEFINITION);
    check_close(c.charge.cooler_effectiveness, 0.65, 1e-12, DEFINITION);
    check_close(c.ring[CG_RING_TOP].cold_gap, 0.4572e-3, 1e-12, DEFINITION);
    check_close(c.cooling.coolant_temperature, 363.15, 1e-12, DEFINITION);
    check_close(c.cooling.coolant_coefficient, 5500.0, 1e-12, DEFINITION);
    check_close(c.uncertainty.coolant_temperature, 4.0, 1e-12, DEFINITION);
    check_close(c.solver.table_step, 0.6, 1e-12, DEFINITION);
}
END_TEST

START_TEST(defaults_follow_bore_and_stroke)
{
    struct cg_case c;
    read_text("engine = { bore_mm = 100; stroke_mm = 80; speed_rpm = 5000; };",
              NULL, &c);
    const struct cg_setting *rod = cg_setting_find("engine.rod");
    const struct cg_setting *land = cg_setting_find("piston.top_land");
    check_close(c.engine.rod, 0.080 * rod->fallback, 1e-12, "the table");
    check_close(c.piston.top_land, 0.100 * land->fallback, 1e-12,
                "the table");
    ck_assert(isnan(c.ring[CG_RING_TOP].cold_gap));
    ck_assert_str_eq(c.fuel.name, "gasoline");
    ck_assert_int_eq(c.bore.seat, CG_SEAT_PARENT);
    check_close(c.scale.film, 1.0, 0.0, DEFINITION);
}
END_TEST

/* An override stands instead of the file's value, also in another unit. */
START_TEST(overrides)
{
    static const char *const set[] = {
        "charge.boost_kPa=150.0", "piston.oil_jet=true", "bore.seat=wet",
        "fuel.name=methanol", "charge.boost_kPa=175.5", "engine.cylinders=8",
        "rings.top.cold_gap_in=0.02"};
    struct cg_case c;
    write_file("a.cfg", ENGINE "charge = { boost_psi = 10.0; };\n"
                               "piston = { oil_jet = false; };\n");
    read_file(in_folder("a.cfg"), set, sizeof set / sizeof set[0], &c);
    check_close(c.charge.boost, 175500.0, 1e-12, "the last one wins");
    ck_assert(c.piston.oil_jet);
    ck_assert_int_eq(c.bore.seat, CG_SEAT_WET);
    ck_assert_str_eq(c.fuel.name, "methanol");
    ck_assert_int_eq(c.engine.cylinders, 8);
    check_close(c.ring[CG_RING_TOP].cold_gap, 0.508e-3, 1e-12, DEFINITION);
}
END_TEST

/* Includes are taken from the config's folder, not from where we stand. */
START_TEST(includes)
{
    struct cg_case c;
    ck_assert_int_eq(mkdir(in_folder("parts"), 0700), 0);
    write_file("parts/c.cfg", "charge = { boost_kPa = 90.0; };\n");
    write_file("b.cfg", "@include \"parts/c.cfg\"\n"
                        "fuel = { lambda = 0.9; };\n");
    read_text(ENGINE "@include \"b.cfg\"\n", NULL, &c);
    check_close(c.charge.boost, 90e3, 1e-12, DEFINITION);
    check_close(c.fuel.lambda, 0.9, 1e-12, DEFINITION);
}
END_TEST

/* Byte mark, carriage returns, comments of all kinds, odd but right. */
START_TEST(odd_but_right)
{
    struct cg_case c;
    read_text("\xef\xbb\xbf// one\r\n/* 99999999999 @include */\r\n"
              "engine : { bore_mm = 86, stroke_mm = 86.,\r\n"
              " speed_rpm = 0x1964 # 6500\r\n }\r\n"
              "fuel = { name = \"gaso\" \"line\"; };\r\n", NULL, &c);
    check_close(c.engine.speed, 6500.0 / 60.0, 1e-14, DEFINITION);
    ck_assert_str_eq(c.fuel.name, "gasoline");
}
END_TEST

START_TEST(own_duty)
{
    struct cg_case c;
    static const char text[] = ENGINE
        "duty = { start = \"settled\"; segments = (\n"
        "  { seconds = 2.0; speed_rpm = 3000; load = 0.5; },\n"
        "  { seconds = 3; speed_pct = 50.0; speed_end_pct = 100.0; load = 0;\n"
        "    load_end = 1.0; heat_factor = 1.2; coolant_F = 212.0; } ); };\n";
    read_text(text, NULL, &c);
    ck_assert_int_eq(c.duty.segments, 2);
    ck_assert_str_eq(c.duty.name, "own");
    ck_assert_int_eq(c.duty.start, CG_START_SETTLED);
    const struct cg_segment *one = &c.duty.segment[0], *two = one + 1;
    check_close(one->seconds, 2.0, 0.0, DEFINITION);
    check_close(one->speed, 50.0, 1e-12, DEFINITION);
    check_close(one->speed_end, 50.0, 1e-12, DEFINITION);
    check_close(one->load_end, 0.5, 0.0, DEFINITION);
    check_close(one->heat_factor, 1.0, 0.0, DEFINITION);
    ck_assert(isnan(one->coolant_temperature));
    check_close(two->speed, 3250.0 / 60.0, 1e-12, DEFINITION);
    check_close(two->speed_end, 6500.0 / 60.0, 1e-12, DEFINITION);
    check_within(two->load, 0.0, 0.0, DEFINITION);
    check_close(two->load_end, 1.0, 0.0, DEFINITION);
    check_close(two->heat_factor, 1.2, 0.0, DEFINITION);
    check_close(two->coolant_temperature, 373.15, 1e-12, DEFINITION);

    /* A duty asked for on the command line stands instead. */
    read_text(text, "duty.name=tow_grade", &c);
    ck_assert_str_eq(c.duty.name, "tow_grade");
    check_close(c.duty.segment[0].load, 0.35, 1e-12, "configs/duties");
    ck_assert_int_eq(c.duty.start, CG_START_SETTLED); /* the user's */
}
END_TEST

/* Ramps must meet, or a kink in the file would be a typing error; a lift or a
 * new corner is a jump, allowed in two duties. */
static void check_shipped_duty(const char *name, double least, double most)
{
    struct cg_case c;
    char set[64];
    snprintf(set, sizeof set, "duty.name=%s", name);
    bool air = strstr(name, "_air") != NULL;
    bool nitrous = strcmp(name, "nitrous_pull") == 0;
    read_text(air       ? ENGINE "cooling = { medium = \"air\"; };"
              : nitrous ? ENGINE "nitrous = { flow_g_s = 30.0; };"
                        : ENGINE,
              set, &c);
    ck_assert_str_eq(c.duty.name, name);
    double seconds = 0.0, highest = 0.0;
    for (int i = 0; i < c.duty.segments; i++) {
        const struct cg_segment *s = &c.duty.segment[i];
        seconds += s->seconds;
        highest = fmax(highest, fmax(s->load, s->load_end));
        ck_assert_msg(s->speed <= c.engine.speed &&
                          s->speed_end <= c.engine.speed,
                      "%s, segment %d: above rated speed", name, i);
        /* Gears change, and with the foot off the engine falls away. */
        if (i > 0 && s->load > 0.0 && strcmp(name, "road_lap") != 0 &&
            strcmp(name, "drag_pass") != 0 && strcmp(name, "haul_grade") != 0)
            check_close(s->speed, (s - 1)->speed_end, 1e-12, name);
    }
    check_band(seconds, least, most, name);
    check_band(highest, 0.85, 1.0, name);
}

START_TEST(shipped_duties)
{
    static const struct {
        const char *name;
        double least, most;
    } duties[] = {{"dyno_pull", 10, 20},        {"drag_pass", 12, 17},
                  {"road_lap", 150, 220},       {"tow_grade", 540, 700},
                  {"settled", 10, 60},          {"cold_start_abuse", 20, 60},
                  {"lean_event", 8, 20},        {"three_pulls", 90, 120},
                  {"nitrous_pull", 8, 20},      {"cold_start_air", 20, 60},
                  {"slow_climb_air", 240, 300},
                  {"haul_grade", 1200, 1400},   {"rated_hour", 3600, 3700}};
    struct cg_data_names names;
    size_t count = sizeof duties / sizeof duties[0];
    for (size_t i = 0; i < count; i++)
        check_shipped_duty(duties[i].name, duties[i].least, duties[i].most);
    ck_assert_int_eq(cg_data_list("duties", &names, NULL), CG_OK);
    ck_assert_uint_eq(names.count, count); /* none goes untried */
}
END_TEST

START_TEST(duty_starts)
{
    struct cg_case c;
    read_text(ENGINE, "duty.name=cold_start_abuse", &c);
    ck_assert_int_eq(c.duty.start, CG_START_COLD);
    ck_assert_double_lt(c.duty.segment[0].coolant_temperature, 310.0);
    read_text(ENGINE, "duty.name=settled", &c);
    ck_assert_int_eq(c.duty.start, CG_START_SETTLED);
    read_text(ENGINE "duty = { name = \"settled\"; start = \"cold\"; };", NULL,
              &c);
    ck_assert_int_eq(c.duty.start, CG_START_COLD); /* the user's wins */
    read_text(ENGINE, "duty.name=lean_event", &c);
    double highest = 0.0;
    for (int i = 0; i < c.duty.segments; i++)
        highest = fmax(highest, c.duty.segment[i].knock_heat);
    check_close(highest, 1.35, 1e-12, "configs/duties");
}
END_TEST

START_TEST(shipped_engines)
{
    struct cg_data_names names;
    ck_assert_int_eq(cg_data_list("engines", &names, NULL), CG_OK);
    ck_assert_uint_ge(names.count, 4);
    int boosted = 0, belt = 0;
    bool seat[4] = {false, false, false, false};
    for (size_t i = 0; i < names.count; i++) {
        struct cg_case c;
        char path[CG_PATH_LENGTH];
        snprintf(path, sizeof path, "%s/engines/%s.cfg", CG_TEST_CONFIGS,
                 names.name[i]);
        read_file(path, NULL, 0, &c);
        boosted += c.charge.boost > 0.0;
        belt += c.charge.charger == CG_CHARGER_BELT;
        seat[c.bore.seat] = true;
        ck_assert_int_gt(c.duty.segments, 0);
    }
    ck_assert_int_lt(boosted, (int)names.count);
    ck_assert_int_ge(belt, 1);
    ck_assert(seat[CG_SEAT_PARENT] && seat[CG_SEAT_CAST_IN]);
    struct cg_case c;
    read_file(CG_TEST_CONFIGS "/example.cfg", NULL, 0, &c);
    ck_assert(!isnan(c.ring[CG_RING_TOP].cold_gap));
}
END_TEST

/* Every shipped material can be named, and carries what it should. */
START_TEST(materials_are_looked_up)
{
    struct cg_case c;
    read_text(ENGINE "bore = { seat = \"cast_in\"; };\n", NULL, &c);
    ck_assert_str_eq(c.piston_material.name, c.piston.alloy);
    ck_assert_str_eq(c.bore_material.name, "grey_iron");
    ck_assert_str_eq(c.block_material.name, "a356");
    for (int i = 0; i < CG_RINGS; i++)
        ck_assert_str_eq(c.ring_material[i].name, c.ring[i].material);
    check_band(cg_curve_at(&c.bore_material.expansion, 373.15), 9e-6, 13e-6,
               "cast iron; common practice, no source");
    check_band(c.piston_material.density, 2500.0, 2900.0,
               "aluminium; common practice, no source");
    check_band(cg_curve_at(&c.piston_material.modulus, 293.15), 60e9, 95e9,
               "aluminium; common practice, no source");
    check_band(c.ring_material[0].hot_limit, 450.0, 900.0,
               "ring steel; common practice, no source");
}
END_TEST

START_TEST(own_materials_win)
{
    struct cg_case c;
    read_text(ENGINE
              "ring_materials = ( {\n"
              "  name = \"plain_steel\"; use = [ \"ring\" ];\n"
              "  density_kg_m3 = 7777; poisson = 0.29;\n"
              "  expansion_C = [ 100.0, 400.0 ];\n"
              "  expansion_1e6_K = ( 11, 12.5 );\n"
              "  conductivity_C = [ 20 ]; conductivity_W_mK = [ 33 ];\n"
              "  heat_capacity_C = [ 20.0 ]; heat_capacity_J_kgK = [ 470.0 ];\n"
              "  modulus_C = [ 20.0 ]; modulus_GPa = [ 207.0 ];\n"
              "  hot_limit_C = 320.0; note = \"mine\"; } );\n",
              "rings.second.material=plain_steel", &c);
    const struct cg_material *mine = &c.ring_material[CG_RING_SECOND];
    check_close(mine->density, 7777.0, 0.0, DEFINITION);
    ck_assert_int_eq(mine->expansion.points, 2);
    check_close(mine->expansion.temperature[1], 673.15, 1e-12, DEFINITION);
    check_close(mine->expansion.value[1], 12.5e-6, 1e-12, DEFINITION);
    check_close(mine->modulus.value[0], 207e9, 1e-12, DEFINITION);
    check_close(mine->hot_limit, 593.15, 1e-12, DEFINITION);
}
END_TEST

/* Shipped materials read before are those that are read: the user's own still
 * wins, and a name unknown is told alike. */
START_TEST(shipped_materials_at_hand)
{
    static const char *const text =
        ENGINE "rings = { top = { face = \"uncoated\"; }; };\n"
               "bore_materials = ( {\n"
               "  name = \"grey_iron\"; use = [ \"bore\" ];\n"
               "  density_kg_m3 = 7333; poisson = 0.29;\n"
               "  expansion_C = [ 100.0 ]; expansion_1e6_K = [ 11 ];\n"
               "  conductivity_C = [ 20 ]; conductivity_W_mK = [ 33 ];\n"
               "  heat_capacity_C = [ 20.0 ]; heat_capacity_J_kgK = [ 470 ];\n"
               "  modulus_C = [ 20.0 ]; modulus_GPa = [ 107.0 ];\n"
               "  hot_limit_C = 320.0; } );\n";
    const char *const wrong[] = {"rings.top.material=cheese"};
    struct cg_metals shipped;
    struct cg_case read, at_hand;
    struct cg_error told, error;
    write_file("a.cfg", text);
    ck_assert_int_eq(cg_config_shipped(&shipped, &error), CG_OK);
    ck_assert_uint_gt(shipped.count, 10);
    ck_assert_uint_gt(shipped.faces, 2);
    for (int i = 0; i < 2; i++)
        ck_assert_int_eq(cg_config_try(in_folder("a.cfg"), NULL, 0,
                                       i == 0 ? NULL : &shipped,
                                       i == 0 ? &read : &at_hand, &error),
                         CG_OK);
    ck_assert_double_eq(at_hand.bore_material.density, 7333.0);
    for (int r = 0; r < CG_RINGS; r++)
        ck_assert_int_eq(memcmp(&at_hand.ring_material[r],
                                &read.ring_material[r],
                                sizeof read.ring_material[r]),
                         0);
    ck_assert_str_eq(at_hand.ring_face[CG_RING_TOP].name,
                     read.ring_face[CG_RING_TOP].name);
    ck_assert_int_eq(
        cg_config_try(in_folder("a.cfg"), wrong, 1, NULL, &read, &told),
        CG_BAD_INPUT);
    ck_assert_int_eq(
        cg_config_try(in_folder("a.cfg"), wrong, 1, &shipped, &read, &error),
        CG_BAD_INPUT);
    ck_assert_str_eq(error.text, told.text);
    cg_metals_free(&shipped);
}
END_TEST

/* Takes the # away from every setting of a template. */
static void uncomment(const char *from, const char *to)
{
    FILE *in = fopen(from, "r"), *out = fopen(to, "w");
    ck_assert(in != NULL && out != NULL);
    char line[512];
    while (fgets(line, sizeof line, in) != NULL) {
        char *at = line + strspn(line, " ");
        if (at[0] == '#' && islower((unsigned char)at[1]))
            *at = ' ';
        fputs(line, out);
    }
    fclose(in);
    ck_assert_int_eq(fclose(out), 0);
}

START_TEST(template_reads_back)
{
    struct cg_case c, all;
    struct cg_options options = {0};
    char plain[CG_PATH_LENGTH];
    strcpy(plain, in_folder("a.cfg"));
    fflush(stdout);
    int terminal = dup(STDOUT_FILENO);
    ck_assert_ptr_nonnull(freopen(plain, "w", stdout));
    enum cg_status status = cg_command_template(&options, NULL);
    fflush(stdout);
    dup2(terminal, STDOUT_FILENO);
    close(terminal);
    ck_assert_int_eq(status, CG_OK);

    read_file(plain, NULL, 0, &c);
    check_close(c.charge.boost, 120e3, 1e-12, "a boosted four");
    uncomment(plain, in_folder("b.cfg"));
    read_file(in_folder("b.cfg"), NULL, 0, &all);
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++) {
        double a = cg_setting_get(&settings[i], &c);
        double b = cg_setting_get(&settings[i], &all);
        if (settings[i].kind == CG_NAME || settings[i].kind == CG_WORDS)
            ck_assert_str_eq((char *)&c + settings[i].offset,
                             (char *)&all + settings[i].offset);
        else if (settings[i].rule == CG_OPTIONAL)
            ck_assert_msg(isnan(a) && !isnan(b), "%s", settings[i].path);
        else
            check_within(b, a, 1e-5 * fabs(a), settings[i].path);
    }
}
END_TEST

/* A failed reading leaves the caller's case alone. */
START_TEST(failure_changes_nothing)
{
    struct cg_case c;
    struct cg_error error = {CG_OK, ""};
    memset(&c, 0x5a, sizeof c);
    ck_assert_int_eq(cg_config_read(in_folder("none.cfg"), NULL, 0, &c, &error),
                     CG_FILE);
    ck_assert_int_eq(error.status, CG_FILE);
    ck_assert_ptr_nonnull(strstr(error.text, "none.cfg"));
    ck_assert_int_eq(cg_config_read(folder, NULL, 0, &c, &error), CG_FILE);
    for (size_t i = 0; i < sizeof c; i++)
        ck_assert_int_eq(((unsigned char *)&c)[i], 0x5a);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("config");
    TCase *tcase = tcase_create("config");
    setenv("COLDGAP_CONFIGS", CG_TEST_CONFIGS, 1);
    tcase_set_timeout(tcase, 60);
    tcase_add_checked_fixture(tcase, make_folder, remove_folder);
    tcase_add_test(tcase, numbers_of_all_kinds);
    tcase_add_test(tcase, units);
    tcase_add_test(tcase, defaults_follow_bore_and_stroke);
    tcase_add_test(tcase, overrides);
    tcase_add_test(tcase, includes);
    tcase_add_test(tcase, odd_but_right);
    tcase_add_test(tcase, own_duty);
    tcase_add_test(tcase, shipped_duties);
    tcase_add_test(tcase, duty_starts);
    tcase_add_test(tcase, shipped_engines);
    tcase_add_test(tcase, materials_are_looked_up);
    tcase_add_test(tcase, own_materials_win);
    tcase_add_test(tcase, shipped_materials_at_hand);
    tcase_add_test(tcase, template_reads_back);
    tcase_add_test(tcase, failure_changes_nothing);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
