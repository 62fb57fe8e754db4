/* Memory that runs out at any allocation of an answer, its samples, a bore's
 * finish: nothing is left behind or torn down twice (valgrind and the
 * sanitizers look). */
#include "check_close.h"
#include "confidence.h"
#include "honing.h"
#include "posterior.h"
#include "sample.h"
#include "scarce_memory.h"
#include "surface.h"

static struct cg_case c;

static enum cg_status find(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    static struct cg_answer answer;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, error);
    cg_duty_run_free(run);
    return status;
}

static enum cg_status find_with_film(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    c.film_law = CG_FILM_REYNOLDS;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    c.film_law = CG_FILM_CONSTANT;
    if (status == CG_OK)
        cg_duty_run_free(run);
    return status;
}

static enum cg_status begin_samples(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    struct cg_confidence_work *work = NULL;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status != CG_OK)
        return status;
    struct cg_confidence_workspace *workspace = NULL;
    status = cg_confidence_begin(&c, run, 0.2e-3, 16, 1, &work, error);
    if (status == CG_OK)
        status = cg_confidence_workspace_create(work, &workspace, error);
    cg_confidence_workspace_free(workspace);
    cg_confidence_free(work);
    cg_duty_run_free(run);
    return status;
}

enum { POINTS = 4000 };
static double trace[POINTS];

static enum cg_status measure(enum cg_filter filter, struct cg_error *error)
{
    struct cg_profile profile = {
        .height = trace, .points = POINTS, .spacing = 1e-6};
    struct cg_surface *surface = NULL;
    enum cg_status status =
        cg_surface_measure(&profile, filter, 0.25e-3, &surface, error);
    if (status == CG_OK)
        cg_surface_free(surface);
    return status;
}

static enum cg_status standard(struct cg_error *error)
{
    return measure(CG_FILTER_STANDARD, error);
}

static enum cg_status robust(struct cg_error *error)
{
    return measure(CG_FILTER_ROBUST, error);
}

static enum cg_status hone(struct cg_error *error)
{
    static double height[50 * 50];
    struct cg_honing honing = {180, 600, 0.5, 45.0};
    return cg_honing_cut(&honing, 50, 50, 5e-6, 1, height, error);
}

/* y = u, measured once, and once a sign. */
static enum cg_status copy(void *context, const double *u, double *y,
                           struct cg_error *error)
{
    (void)context, (void)error;
    y[0] = y[1] = u[0];
    return CG_OK;
}

static enum cg_status even(void *context, const double *u, double *slope,
                           struct cg_error *error)
{
    (void)context, (void)u, (void)error;
    slope[0] = slope[1] = 1.0;
    return CG_OK;
}

static enum cg_status fit(struct cg_error *error)
{
    static const struct cg_sight sight[] = {{CG_SIGHT_VALUE, 0.5, 1.0},
                                            {CG_SIGHT_BELOW, 0.3, 1.0}};
    static const bool all[] = {true, true};
    struct cg_posterior_model model = {1, 2, sight, 1e-6, NULL, copy, even};
    struct cg_posterior *posterior = NULL;
    double number;
    enum cg_status status = cg_posterior_create(&model, &posterior, error);
    if (status == CG_OK)
        status = cg_posterior_find(&model, posterior, error);
    if (status == CG_OK)
        status = cg_posterior_deviation(&model, posterior, 0, all, &number,
                                        error);
    if (status == CG_OK)
        status = cg_posterior_chance(&model, posterior, &number, error);
    cg_posterior_free(posterior);
    return status;
}

static const struct job jobs[] = {
    {"find", find},         {"film", find_with_film},
    {"standard", standard}, {"robust", robust},
    {"hone", hone},         {"samples", begin_samples},
    {"posterior", fit}};

static void prepare(void)
{
    c = case_of(BOOSTED_FOUR, NULL, 0);
    c.solver.stations = 8;
    c.solver.crank_step_deg = 2.0;
    hold(&c, 0.5, 1.0);
    for (size_t i = 0; i < POINTS; i++)
        trace[i] = 1e-6 * sin(0.3 * (double)i) * cos(0.011 * (double)i);
}

START_TEST(memory_runs_out)
{
    prepare();
    check_scarce(&jobs[_i]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("memory");
    TCase *all = tcase_create("memory");
    tcase_set_timeout(all, 600);
    tcase_add_loop_test(all, memory_runs_out, 0, (int)COUNT_OF(jobs));
    suite_add_tcase(suite, all);
    return check_run(suite);
}
