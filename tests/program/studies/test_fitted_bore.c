/* What the fitting sheet asks in another bore, against the whole model run for
 * that bore. */
#include "case_of.h"
#include "check_close.h"
#include "fitting.h"
#include "setting.h"

/* Closure, spread and residual of the top ring, with engine.bore this many
 * times as large and all else as it was. */
static double need_of(const struct cg_case *c, double ratio)
{
    struct cg_case other = *c;
    struct cg_answer answer;
    struct cg_error error = {0};
    other.engine.bore *= ratio;
    struct cg_duty_run *run = run_of(&other);
    enum cg_status status =
        cg_answer_find(&other, run, 0.0, NULL, NULL, &answer, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_duty_run_free(run);
    return answer.verdict.need;
}

START_TEST(scaled_need_is_that_of_the_other_bore)
{
    const char *const engines[] = {IRON_SIX, BOOSTED_FOUR, PLAIN_FOUR};
    struct cg_case c = case_of(engines[_i], NULL, 0);
    struct cg_fit_asked asked = {.closure =
                                     need_of(&c, 1.0) - c.margin.residual,
                                 .minimum_hot_gap = c.margin.residual};
    for (double off = -CG_FIT_BORE_BAND; off <= 1.01 * CG_FIT_BORE_BAND;
         off += 0.5 * CG_FIT_BORE_BAND)
        check_within(cg_fit_need(&asked, 1.0 + off), need_of(&c, 1.0 + off),
                     3e-6, "what fitting.h promises");
}
END_TEST

START_TEST(every_engine_has_room)
{
    const struct cg_setting *cylinders = cg_setting_find("engine.cylinders");
    check_band(cylinders->high, 1, CG_FIT_CYLINDERS, "arrays of fitting.h");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fitted_bore");
    TCase *tcase = tcase_create("fitted_bore");
    tcase_set_timeout(tcase, 300);
    tcase_add_loop_test(tcase, scaled_need_is_that_of_the_other_bore, 0, 3);
    tcase_add_test(tcase, every_engine_has_room);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
