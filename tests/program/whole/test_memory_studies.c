/* Memory that runs out at any allocation of what is made of many answers:
 * ceilings, lessons, evidence, the choice of parts, gas past the rings. */
#include <string.h>

#include <gsl/gsl_errno.h>

#include "alloy_choice.h"
#include "bore_finish.h"
#include "finish_order.h"
#include "ceiling.h"
#include "check_close.h"
#include "evidence.h"
#include "find_chart.h"
#include "gap_price.h"
#include "lesson.h"
#include "ring_choice.h"
#include "scarce_memory.h"
#include "seal_study.h"
#include "seal_tradeoff.h"
#include "sweep_chart.h"

static struct cg_case c;
static double need; /* of gap, without boost [m] */

/* With this little gap less than the case's boost is the ceiling, so that it
 * is searched for and the time to touch is looked up. */
static enum cg_status ceiling(struct cg_error *error)
{
    struct cg_ceiling found;
    return cg_ceiling_find(&c, need + 2e-6, &found, error);
}

static enum cg_status lesson(struct cg_error *error)
{
    struct cg_lesson found;
    return cg_lesson_find(&c, &found, error);
}

/* Two sights, one a sign, of two inputs. */
static enum cg_status learn(struct cg_error *error)
{
    struct cg_learned learned;
    struct cg_case run = c;
    memset(&run.uncertainty, 0, sizeof run.uncertainty);
    run.uncertainty.heat_factor = c.uncertainty.heat_factor;
    run.uncertainty.coolant_temperature = c.uncertainty.coolant_temperature;
    struct cg_evidence evidence = {
        .entries = 2,
        .entry = {{.what = CG_EVIDENCE_GROOVE_TOP,
                   .temperature = 480.0,
                   .spread = 100.0,
                   .time = NAN},
                  {.what = CG_EVIDENCE_ENDS,
                   .cold_gap = 0.3e-3,
                   .spread = 0.05e-3,
                   .time = NAN}},
        .runs = 1,
        .run = &run};
    return cg_evidence_learn(&evidence, &learned, error);
}

/* One ring, at the case's boost, at none and at the highest. */
static enum cg_status choose_ring(struct cg_error *error)
{
    struct cg_choice_study *study = NULL;
    const struct cg_ring_choice *choices;
    size_t count;
    double reached;
    enum cg_status status =
        cg_choice_begin(&c, &c.ring_material[CG_RING_TOP], 1,
                        &c.ring_face[CG_RING_TOP], 1, &study, error);
    if (status != CG_OK)
        return status;
    cg_choice_run(study, 0);
    cg_choice_run(study, 1);
    cg_choice_run(study, cg_choice_items(study) - 1);
    status = cg_choice_end(study, &choices, &count, &reached, error);
    cg_choice_free(study);
    return status;
}

static enum cg_status choose_alloy(struct cg_error *error)
{
    struct cg_alloy_choice choice;
    return cg_alloy_choice_run(&c, &c.piston_material, &choice, error);
}

static enum cg_status judge_finish(struct cg_error *error)
{
    struct cg_core core = {.rk = 0.5e-6, .rpk = 0.15e-6, .rvk = 1.8e-6,
                           .mr1 = 0.08, .mr2 = 0.79, .oil = 0.189e-6};
    struct cg_finish_verdict verdict;
    return cg_finish_judge(&c, &core, true, &verdict, error);
}

static enum cg_status order_finish(struct cg_error *error)
{
    struct cg_finish_order order;
    return cg_finish_order_find(&c, 1, &order, error);
}

static enum cg_status study_seal(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    struct cg_seal_study *study = NULL;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status == CG_OK)
        status = cg_seal_study_create(&c, run, &study, error);
    cg_seal_study_free(study);
    cg_duty_run_free(run);
    return status;
}

static enum cg_status tradeoff(struct cg_error *error)
{
    struct cg_tradeoff found = {.boost = c.charge.boost};
    return cg_seal_tradeoff(&c, 0.4e-3, 0.41e-3, 1.2, &found, error);
}

/* A wide top ring in a cylinder of its own. */
static enum cg_status price(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    struct cg_gap_prices prices;
    struct cg_fitting fitting = {.cylinders = 1};
    fitting.count[CG_FIT_TOO_WIDE] = 1;
    fitting.asked[0].at_least = fitting.asked[1].at_least = 0.4e-3;
    fitting.cylinder[0].ring[0] = (struct cg_fit){
        .state = CG_FIT_TOO_WIDE, .gap = 0.8e-3, .asked = 0.4e-3};
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status == CG_OK)
        status = cg_gap_prices_find(&c, run, &fitting, &prices, error);
    cg_duty_run_free(run);
    return status;
}

/* The pictures of find in a report, and that of a sweep over boost. */
static enum cg_status show(const struct cg_find_chart *of,
                           struct cg_error *error)
{
    static char *(*const draw[])(const struct cg_find_chart *of,
                                 struct cg_find_chart_words *words) = {
        cg_find_chart_growth, cg_find_chart_gap, cg_find_chart_bore,
        cg_find_chart_shares};
    struct cg_sweep_boost point[] = {{50e3, 4e-4, 2e-4, 1e-4, 5e-5},
                                     {0.0, 3e-4, 1e-4, 1e-4, 5e-5}};
    struct cg_sweep_boosts boosts = {point, 2, &c, false};
    struct cg_report *report = NULL;
    char words[512];
    enum cg_status status =
        cg_report_create("title", "run", false, &report, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < COUNT_OF(draw); i++)
        cg_find_chart_show(report, of, "key", "title", draw[i], "words");
    char *svg = cg_sweep_chart_boost(&boosts, words);
    cg_report_drawn(report, "boost", svg, "title", "figure", words);
    free(svg);
    status = cg_report_status(report, error);
    cg_report_free(report);
    return status;
}

static enum cg_status draw_charts(struct cg_error *error)
{
    static struct cg_answer answer;
    struct cg_history history;
    struct cg_duty_run *run = NULL;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_history_begin(&c, run, &history, error);
    if (status == CG_OK) {
        status = cg_answer_find(&c, run, history.interval, cg_history_observe,
                                &history, &answer, error);
        struct cg_find_chart of = {&c, &answer, &history, false};
        if (status == CG_OK)
            status = show(&of, error);
        cg_history_free(&history);
    }
    cg_duty_run_free(run);
    return status;
}

static const struct job jobs[] = {
    {"ceiling", ceiling},         {"lesson", lesson},
    {"evidence", learn},          {"ring", choose_ring},
    {"alloy", choose_alloy},      {"finish", judge_finish},
    {"seal", study_seal},         {"trade", tradeoff},
    {"price", price},             {"order", order_finish},
    {"charts", draw_charts}};

START_TEST(memory_runs_out)
{
    struct cg_ceiling_point at_none;
    c = case_of(BOOSTED_FOUR, NULL, 0);
    c.solver.stations = 8;
    c.solver.crank_step_deg = 2.0;
    hold(&c, 0.5, 1.0);
    ck_assert_int_eq(cg_ceiling_at(&c, 0.0, &at_none, NULL), CG_OK);
    need = at_none.need;
    check_scarce(&jobs[_i]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("memory of studies");
    TCase *all = tcase_create("memory");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 600);
    tcase_add_loop_test(all, memory_runs_out, 0, (int)COUNT_OF(jobs));
    suite_add_tcase(suite, all);
    return check_run(suite);
}
