/* Two builds compared: every setting by itself, metals and duties of one name,
 * and what evidence of the one is to the other. */
#include "build_change.h"
#include "case_of.h"
#include "check_close.h"

static struct cg_case then, now;
static struct cg_build_changes changes;

static void begin(void)
{
    then = now = case_of(BOOSTED_FOUR, NULL, 0);
}

/* With one duty to survive besides. */
static void begin_surviving(void)
{
    begin();
    then.survive.duties = now.survive.duties = 1;
    then.survive.duty[0] = now.survive.duty[0] = then.duty;
}

static void compare(void)
{
    cg_build_compare(&then, &now, &changes);
}

/* Whether the setting of that path is among the changes. */
static bool changed(const char *path)
{
    for (size_t i = 0; i < changes.count; i++)
        if (strcmp(changes.setting[i]->path, path) == 0)
            return true;
    return false;
}

START_TEST(the_same_case_has_no_changes)
{
    begin();
    compare();
    ck_assert(cg_build_same(&changes));
    ck_assert(!changes.parts && !changes.model);
    /* by another unit's rounding it is the same */
    then.engine.bore = 85.3e-3;
    now.engine.bore = 3.35826771654 * 0.0254;
    ck_assert(now.engine.bore != then.engine.bore);
    compare();
    ck_assert(cg_build_same(&changes));
    now.engine.bore = then.engine.bore * (1.0 + 1e-15);
    compare();
    ck_assert(cg_build_same(&changes));
}
END_TEST

/* Whatever row of the table is moved, that one is told, and no other. */
START_TEST(every_setting_is_seen)
{
    size_t count;
    const struct cg_setting *setting = &cg_settings(&count)[_i];
    if ((size_t)_i >= count)
        return;
    begin();
    if (setting->kind == CG_NAME || setting->kind == CG_WORDS) {
        char *text = (char *)&now + setting->offset;
        text[0] = text[0] == 'x' ? 'y' : 'x';
        text[1] = '\0';
    } else {
        double si = cg_setting_get(setting, &now);
        cg_setting_put(setting, &now,
                       setting->kind == CG_SWITCH ? (si == 0.0)
                       : isnan(si)                ? 1e-3
                       : setting->kind == CG_REAL ? si * 1.01 + 1e-9
                                                  : si + 1.0);
    }
    compare();
    ck_assert_msg(changes.count == 1, "%s: %zu changes", setting->path,
                  changes.count);
    ck_assert(changes.setting[0] == setting);
}
END_TEST

/* A default that hangs on the bore follows it; one that was set does not. */
START_TEST(defaults_follow)
{
    static const char *const small[] = {"engine.bore_mm=84",
                                        "rings.top.depth_mm=3.1"};
    then = case_of(BOOSTED_FOUR, NULL, 0);
    now = case_of(BOOSTED_FOUR, small, 2);
    compare();
    ck_assert(changed("engine.bore") && changed("rings.top.depth"));
    int by_default = 0;
    for (size_t i = 0; i < changes.count; i++) {
        const struct cg_setting *setting = changes.setting[i];
        if (changes.follows[i])
            ck_assert_int_eq((int)setting->rule, CG_PER_BORE);
        by_default += changes.follows[i];
        if (strcmp(setting->path, "engine.bore") == 0 ||
            strcmp(setting->path, "rings.top.depth") == 0)
            ck_assert(!changes.follows[i]);
    }
    ck_assert_int_gt(by_default, 3);
    ck_assert(changes.parts);
}
END_TEST

/* Of one name, and another thing: a user's own metal, face or duty. */
START_TEST(names_may_mean_other_things)
{
    begin();
    now.ring_material[CG_RING_TOP].expansion.value[0] *= 1.02;
    compare();
    ck_assert(changes.count == 0 && changes.matter[CG_MATTER_RING_TOP]);
    ck_assert(changes.parts && !cg_build_same(&changes));
    begin();
    now.ring_face[CG_RING_TOP].peak_pressure.high *= 1.1;
    compare();
    ck_assert(changes.matter[CG_MATTER_FACE]);
    begin();
    strcpy(now.ring_face[CG_RING_TOP].on[0], "other");
    compare();
    ck_assert(changes.matter[CG_MATTER_FACE]);
    begin();
    now.ring_face[CG_RING_TOP].bases++;
    compare();
    ck_assert(changes.matter[CG_MATTER_FACE]);
    begin();
    now.duty.segment[0].seconds += 1.0;
    compare();
    ck_assert(changes.matter[CG_MATTER_DUTY] && !changes.parts);
    /* of a duty to survive nothing is a setting */
    begin_surviving();
    compare();
    ck_assert(cg_build_same(&changes));
    now.survive.duty[0].start = now.survive.duty[0].start == CG_START_COLD
                                    ? CG_START_SETTLED
                                    : CG_START_COLD;
    compare();
    ck_assert(changes.count == 0 && changes.matter[CG_MATTER_SURVIVE]);
    begin_surviving();
    now.survive.duty[0].cruise_load += 0.1;
    compare();
    ck_assert(changes.matter[CG_MATTER_SURVIVE]);
    begin_surviving();
    now.survive.duty[0].cruise_speed += 1.0;
    compare();
    ck_assert(changes.matter[CG_MATTER_SURVIVE]);
    /* of the one asked for the start is one */
    begin();
    now.duty.cruise_load += 0.1;
    compare();
    ck_assert(changes.count == 1 && !changes.matter[CG_MATTER_DUTY]);
    /* another name is the setting's matter alone */
    begin();
    strcpy(now.ring_material[CG_RING_TOP].name, "other");
    now.ring_material[CG_RING_TOP].density *= 1.1;
    compare();
    ck_assert(!changes.matter[CG_MATTER_RING_TOP]);
}
END_TEST

START_TEST(what_other_parts_are)
{
    static const struct {
        const char *set;
        bool parts, model;
    } row[] = {
        {"charge.boost_kPa=150", false, false},
        {"fuel.lambda=0.8", false, false},
        {"rings.top.cold_gap_mm=0.5", false, false},
        {"engine.speed_rpm=7000", false, false},
        {"bore.finish.base_grit=150", false, false},
        {"cooling.coolant_C=80", false, false},
        {"combustion.heat_factor=1.2", false, true},
        {"rings.film_law=reynolds", false, true},
        {"piston.oil_jet=false", true, false},
        {"rings.top.width_mm=1.0", true, false},
        {"engine.compression_ratio=8.5", true, false},
        {"bore.wall_thickness_mm=3", true, false},
    };
    for (size_t i = 0; i < COUNT_OF(row); i++) {
        then = case_of(BOOSTED_FOUR, NULL, 0);
        now = case_of(BOOSTED_FOUR, &row[i].set, 1);
        compare();
        ck_assert_msg(changes.parts == row[i].parts, "%s: parts", row[i].set);
        ck_assert_msg(changes.model == row[i].model, "%s: model", row[i].set);
    }
}
END_TEST

START_TEST(proof_of_a_run)
{
    struct cg_evidence_entry entry = {.what = CG_EVIDENCE_ENDS,
                                      .cold_gap = 0.4e-3};
    double run = 0.21e-3;
    begin();
    compare();
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_HOLDS);
    ck_assert_int_eq((int)cg_build_proof(&entry, run, run, &changes),
                     CG_PROOF_HOLDS);
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.215e-3, &changes),
                     CG_PROOF_EASIER);
    changes.model = true;
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_MODEL);
    changes.parts = true;
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_PARTS);
    entry.engine = 1;
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_OTHER);
    entry.touched = true;
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_WARNS);
    entry.what = CG_EVIDENCE_CROWN;
    ck_assert_int_eq((int)cg_build_proof(&entry, run, 0.20e-3, &changes),
                     CG_PROOF_MEASURED);
    /* what is not a number proves nothing */
    entry = (struct cg_evidence_entry){.what = CG_EVIDENCE_ENDS};
    begin();
    compare();
    ck_assert_int_eq((int)cg_build_proof(&entry, NAN, 0.2e-3, &changes),
                     CG_PROOF_EASIER);
    ck_assert_int_eq((int)cg_build_proof(&entry, run, NAN, &changes),
                     CG_PROOF_EASIER);
}
END_TEST

int main(void)
{
    size_t settings;
    cg_settings(&settings);
    Suite *suite = suite_create("two builds");
    TCase *all = tcase_create("changes");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, the_same_case_has_no_changes);
    tcase_add_loop_test(all, every_setting_is_seen, 0, (int)settings);
    tcase_add_test(all, defaults_follow);
    tcase_add_test(all, names_may_mean_other_things);
    tcase_add_test(all, what_other_parts_are);
    tcase_add_test(all, proof_of_a_run);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
