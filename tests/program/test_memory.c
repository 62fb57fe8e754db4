/* Memory that runs out at any allocation: the status says so, nothing is left
 * behind or torn down twice (valgrind and the sanitizers look), and the same
 * job runs well afterwards.
 *
 * The linker puts the functions below in place of the library's (--wrap). */
#include <stdlib.h>
#include <string.h>

#include "case_of.h"
#include "ceiling.h"
#include "check_close.h"
#include "confidence.h"
#include "honing.h"
#include "sample.h"
#include "surface.h"

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);

static long left = -1; /* allocations still to be granted; < 0: all */
static bool refused;

static bool granted(void)
{
    if (left < 0)
        return true;
    if (left-- > 0)
        return true;
    left = -1; /* one refusal a run */
    refused = true;
    return false;
}

void *__wrap_malloc(size_t size)
{
    return granted() ? __real_malloc(size) : NULL;
}

void *__wrap_calloc(size_t count, size_t size)
{
    return granted() ? __real_calloc(count, size) : NULL;
}

void *__wrap_realloc(void *old, size_t size)
{
    return granted() ? __real_realloc(old, size) : NULL;
}

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

static enum cg_status needed(struct cg_error *error)
{
    double need;
    return cg_gap_needed(&c, 50e3, &need, error);
}

static enum cg_status begin_samples(struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    struct cg_confidence_work *work = NULL;
    enum cg_status status = cg_duty_run_create(&c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_confidence_begin(&c, run, 0.2e-3, 16, 1, &work, error);
    if (status == CG_OK)
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

static const struct job {
    const char *name;
    enum cg_status (*run)(struct cg_error *error);
} jobs[] = {{"find", find},         {"film", find_with_film},
            {"needed", needed},     {"samples", begin_samples},
            {"standard", standard}, {"robust", robust},
            {"hone", hone}};

static void prepare(void)
{
    c = case_of(BOOSTED_FOUR, NULL, 0);
    c.solver.stations = 8;
    c.solver.crank_step_deg = 2.0;
    hold(&c, 0.5, 1.0);
    for (size_t i = 0; i < POINTS; i++)
        trace[i] = 1e-6 * sin(0.3 * (double)i) * cos(0.011 * (double)i);
}

/* Every allocation up to the hundredth, then one in twenty. */
START_TEST(memory_runs_out)
{
    const struct job *job = &jobs[_i];
    struct cg_error error;
    long runs = 0;
    prepare();
    for (long granted_first = 0;; runs++) {
        left = granted_first;
        refused = false;
        error = (struct cg_error){CG_OK, ""};
        enum cg_status status = job->run(&error);
        left = -1;
        if (!refused) {
            ck_assert_msg(status == CG_OK, "%s: %s", job->name, error.text);
            break;
        }
        ck_assert_msg(status == CG_NO_MEMORY,
                      "%s, allocation %ld refused: status %d, \"%s\"",
                      job->name, granted_first + 1, (int)status, error.text);
        ck_assert(error.text[0] != '\0' && error.status == CG_NO_MEMORY);
        granted_first += granted_first < 100 ? 1 : 1 + granted_first / 20;
    }
    printf("%s: memory ran out in %ld places\n", job->name, runs);
    ck_assert_int_gt(runs, 2);
    error = (struct cg_error){CG_OK, ""};
    ck_assert_msg(job->run(&error) == CG_OK, "%s again: %s", job->name,
                  error.text);
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
