/* Group evidence as it is read, and what --set has to do with it. */
#define _POSIX_C_SOURCE 200809L /* mkstemp */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>

#include "calibrated.h"
#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "updated_case.h"

#define WRITTEN "as written"

#define ENGINE                                                              \
    "engine = { bore_mm = 86.0; stroke_mm = 86.0; speed_rpm = 6000; };\n"   \
    "charge = { boost_kPa = 120.0; };\nduty = { name = \"settled\"; };\n"

static char path[] = "/tmp/coldgap_evidence_XXXXXX";

static void write_config(const char *evidence)
{
    strcpy(path + strlen(path) - 6, "XXXXXX");
    FILE *file = fdopen(mkstemp(path), "w");
    ck_assert_ptr_nonnull(file);
    fprintf(file, "%sevidence = ( %s );\n", ENGINE, evidence);
    fclose(file);
}

static struct cg_evidence evidence_of(const char *text)
{
    struct cg_evidence evidence;
    struct cg_case c;
    struct cg_error error = {0};
    write_config(text);
    enum cg_status status =
        cg_config_read_evidence(path, NULL, 0, &c, &evidence, &error);
    remove(path);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return evidence;
}

START_TEST(temperatures)
{
    struct cg_evidence found = evidence_of(
        "{ what = \"groove_top\"; temperature_F = 473.0; how = \"hardness\"; },"
        "{ what = \"liner\"; depth_mm = 12.0; temperature_C = 150.0;"
        "  spread_K = 3.5; at_s = 4.0; },"
        "{ what = \"crown\"; temperature_K = 540.0; how = \"thermocouple\";"
        "  at_min = 0.1; spread_K = 2.0; }");
    ck_assert_uint_eq(found.entries, 3);
    ck_assert_uint_eq(found.runs, 1);
    const struct cg_evidence_entry *at = found.entry;
    ck_assert_int_eq(at[0].what, CG_EVIDENCE_GROOVE_TOP);
    check_within(at[0].temperature, 245.0 + CG_ZERO_CELSIUS, 1e-9, WRITTEN);
    check_close(at[0].spread, 15.0, 1e-12, "hardness");
    ck_assert(isnan(at[0].time));
    ck_assert_int_eq(at[1].what, CG_EVIDENCE_LINER);
    check_close(at[1].depth, 0.012, 1e-12, WRITTEN);
    check_close(at[1].spread, 3.5, 1e-12, WRITTEN);
    check_close(at[1].time, 4.0, 1e-12, WRITTEN);
    check_close(at[2].time, 6.0, 1e-12, WRITTEN);
    check_close(at[2].spread, 2.0, 1e-12, WRITTEN);
    check_close(at[2].temperature, 540.0, 1e-12, WRITTEN);
    cg_evidence_free(&found);
}
END_TEST

START_TEST(read_on_the_engine)
{
    struct cg_evidence found = evidence_of(
        "{ what = \"exhaust_probe\"; temperature_C = 930.0;"
        "  speed_rpm = 5000; load = 1.0; },"
        "{ what = \"coolant_share\"; share_pct = 16.0;"
        "  speed_rpm = 5000; load = 1.0; },"
        "{ what = \"coolant_share\"; share_pct = 16.0; spread_pct = 1.5;"
        "  speed_rpm = 3000; load = 1.0; }");
    ck_assert_uint_eq(found.runs, 2);
    const struct cg_evidence_entry *at = found.entry;
    ck_assert_int_eq(at[0].what, CG_EVIDENCE_PROBE);
    check_within(at[0].temperature, 930.0 + CG_ZERO_CELSIUS, 1e-9, WRITTEN);
    check_close(at[0].spread, CG_EVIDENCE_PROBE_SPREAD, 1e-12, "by default");
    ck_assert_int_eq(at[1].what, CG_EVIDENCE_COOLANT);
    check_close(at[1].share, 0.16, 1e-12, WRITTEN);
    check_close(at[1].spread, 0.16 * CG_EVIDENCE_COOLANT_SPREAD, 1e-12,
                "by default");
    check_close(at[2].spread, 0.015, 1e-12, WRITTEN);
    cg_evidence_free(&found);
}
END_TEST

/* Runs like one another are one. */
START_TEST(runs)
{
    struct cg_evidence found = evidence_of(
        "{ touched = false; cold_gap_mm = 0.45; duty = \"drag_pass\";"
        "  boost_psi = 20.0; },"
        "{ touched = true; cold_gap_thou = 10.0; spread_thou = 1.0; },"
        "{ what = \"crown\"; temperature_C = 200.0; how = \"thermal_plug\";"
        "  boost_kPa = 120.0; duty = \"settled\"; },"
        "{ what = \"crown\"; temperature_C = 200.0; how = \"thermal_plug\";"
        "  speed_pct = 50.0; load = 0.5; coolant_C = 80.0; ambient_C = 5.0; },"
        "{ what = \"ring_top\"; temperature_C = 160.0; how = \"hardness\";"
        "  boost_psi = 20.0; duty = \"drag_pass\"; }");
    ck_assert_uint_eq(found.runs, 3);
    const struct cg_evidence_entry *at = found.entry;
    ck_assert_uint_eq(at[0].run, at[4].run);
    ck_assert_uint_eq(at[1].run, at[2].run);
    ck_assert(at[0].run != at[1].run && at[3].run != at[1].run &&
              at[3].run != at[0].run);
    ck_assert(!at[0].touched && at[1].touched);
    check_close(at[0].cold_gap, 0.45e-3, 1e-12, WRITTEN);
    check_close(at[0].spread, hypot(0.01e-3, CG_PI * 0.005e-3), 1e-12,
                "gap and bore as measured");
    check_close(at[1].spread, 25.4e-6, 1e-12, WRITTEN);
    const struct cg_case *drag = &found.run[at[0].run];
    check_close(drag->charge.boost, 20.0 * 6894.757293168361, 1e-12, WRITTEN);
    ck_assert_int_gt(drag->duty.segments, 1);
    const struct cg_case *own = &found.run[at[1].run];
    check_close(own->charge.boost, 120e3, 1e-12, WRITTEN);
    ck_assert_str_eq(own->duty.name, "settled");
    const struct cg_case *steady = &found.run[at[3].run];
    ck_assert_int_eq(steady->duty.start, CG_START_SETTLED);
    ck_assert_int_eq(steady->duty.segments, 1);
    check_close(steady->duty.segment[0].speed, 50.0, 1e-12, WRITTEN);
    check_close(steady->duty.segment[0].load, 0.5, 1e-12, WRITTEN);
    check_close(steady->cooling.coolant_temperature, 353.15, 1e-12, WRITTEN);
    check_close(steady->charge.ambient_temperature, 278.15, 1e-12, WRITTEN);
    cg_evidence_free(&found);
}
END_TEST

static struct cg_updated_case updated_by(const char *set, bool quiet)
{
    struct cg_updated_case updated;
    struct cg_error error = {0};
    enum cg_status status = cg_updated_case_read(
        path, &set, set != NULL ? 1 : 0, quiet, &updated, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return updated;
}

/* What is asked does not change what was measured; how it is modelled does. */
START_TEST(sets_ask_and_do_not_teach)
{
    static const struct {
        const char *set;
        bool teaches;
    } cases[] = {{"charge.boost_kPa=180", false},
                 {"duty.name=drag_pass", false},
                 {"rings.top.material=plain_steel", false},
                 {"combustion.efficiency_pct=90", false},
                 {"combustion.heat_transfer=annand", true},
                 {"combustion.heat_factor=1.1", true},
                 {"uncertainty.heat_factor_pct=10", true},
                 {"solver.stations=20", true}};
    write_config("{ what = \"groove_top\"; temperature_C = 270.0;"
                 "  how = \"thermocouple\"; }");
    struct cg_updated_case plain = updated_by(NULL, false);
    ck_assert_double_eq(plain.prior.combustion.heat_factor,
                        CG_CALIBRATED_COMBUSTION_HEAT_FACTOR);
    ck_assert_double_ne(plain.c.combustion.heat_factor,
                        CG_CALIBRATED_COMBUSTION_HEAT_FACTOR);
    ck_assert_double_lt(plain.c.uncertainty.heat_factor,
                        plain.prior.uncertainty.heat_factor);
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        struct cg_updated_case other = updated_by(cases[i].set, true);
        ck_assert_msg(cg_updates_case(cases[i].set) == cases[i].teaches, "%s",
                      cases[i].set);
        ck_assert_msg((memcmp(plain.learned.mean, other.learned.mean,
                              sizeof plain.learned.mean) != 0) ==
                          cases[i].teaches,
                      "%s", cases[i].set);
        if (!cases[i].teaches)
            ck_assert_double_eq(plain.c.combustion.heat_factor,
                                other.c.combustion.heat_factor);
        cg_updated_case_free(&other);
    }
    cg_updated_case_free(&plain);
    remove(path);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("evidence_config");
    TCase *all = tcase_create("evidence_config");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 120);
    tcase_add_test(all, temperatures);
    tcase_add_test(all, read_on_the_engine);
    tcase_add_test(all, runs);
    tcase_add_test(all, sets_ask_and_do_not_teach);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
