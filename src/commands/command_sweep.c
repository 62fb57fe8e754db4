#define _POSIX_C_SOURCE 200809L /* sigaction */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "course_refine.h"
#include "metals.h"
#include "next_step.h"
#include "options.h"
#include "outputs.h"
#include "outside.h"
#include "plain_text.h"
#include "progress.h"
#include "report_sweep.h"
#include "say_common.h"
#include "setting_key.h"
#include "sweep_table.h"
#include "updated_case.h"
#include "threads.h"

/* Set by an interrupt; points not yet begun are then left. */
static volatile sig_atomic_t interrupted;

static void on_interrupt(int signal)
{
    (void)signal;
    interrupted = 1;
}

static void catch_interrupts(void)
{
    struct sigaction action;
    memset(&action, 0, sizeof action);
    action.sa_handler = on_interrupt;
    sigaction(SIGINT, &action, NULL);
    sigaction(SIGTERM, &action, NULL);
    sigaction(SIGHUP, &action, NULL);
}

/* What all points have alike. */
struct known {
    const struct cg_learned *learned; /* NULL: the axes change it */
    const struct cg_metals *shipped;
};

/* The case of one point, updated: by what is learned, or where the axes change
 * that anew. */
static enum cg_status read_point(const struct cg_options *options,
                                 const char *const *set, size_t sets,
                                 const struct known *known,
                                 struct cg_case *c, struct cg_error *error)
{
    if (known->learned != NULL) {
        enum cg_status status = cg_config_try(options->config, set, sets,
                                              known->shipped, c, error);
        if (status == CG_OK) {
            cg_learned_apply(known->learned, c);
            status = cg_course_refine(c, error);
        }
        return status;
    }
    struct cg_updated_case *updated = malloc(sizeof *updated);
    if (updated == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status =
        cg_updated_case_read(options->config, set, sets, true, updated, error);
    cg_updated_case_free(updated);
    if (status == CG_OK)
        *c = updated->c;
    else
        cg_case_free(&updated->c);
    free(updated);
    return status;
}

/* A gap that no config may give is no answer. */
static enum cg_status check_range(const struct cg_answer *answer,
                                  struct cg_error *error)
{
    bool top = answer->verdict.beyond;
    const struct cg_verdict *verdict =
        top ? &answer->verdict : &answer->second_verdict;
    if (!verdict->beyond)
        return CG_OK;
    return cg_error_set(
        error, CG_NOT_SAFE, "%s ring: %s", top ? "top" : "second",
        cg_say_beyond(verdict, top ? cg_answer_needed(answer) : &answer->second,
                      false)
            .text);
}

/* The answer at one point as a row; what cannot be computed is a row too. */
static void compute_row(const struct cg_options *options,
                        const struct cg_grid *grid, size_t point,
                        const struct known *known,
                        struct cg_sweep_row *row, struct cg_error *why)
{
    char text[CG_AXES][CG_SET_LENGTH];
    const char *set[CG_OPTION_REPEATS + CG_AXES];
    size_t sets = 0;
    struct cg_case c;
    struct cg_answer answer;
    struct cg_duty_run *run = NULL;
    struct cg_error error = {CG_OK, ""};

    *why = error;
    c.courses = NULL; /* none, should it not be read */
    cg_grid_sets(grid, point, text);
    for (size_t i = 0; i < options->sets; i++)
        set[sets++] = options->set[i];
    for (size_t i = 0; i < grid->axes; i++)
        set[sets++] = text[i];
    enum cg_status status =
        read_point(options, set, sets, known, &c, &error);
    if (status == CG_OK)
        status = cg_duty_run_create(&c, &run, &error);
    if (status == CG_OK)
        status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error);
    if (status == CG_OK)
        status = cg_answer_second(&c, run, &answer, &error);
    cg_duty_run_free(run);
    if (status == CG_OK)
        status = check_range(&answer, &error);
    cg_sweep_row_set(row, grid, point, &c, status == CG_OK ? &answer : NULL,
                     &error);
    cg_case_free(&c);
    if (status != CG_OK)
        *why = error;
}

/* Rows are computed side by side and written in order, so that the bytes do
 * not depend on the number of threads; *done counts those written, `failed`
 * those of them without an answer, and `why` keeps the first reason. */
static void compute_rows(const struct cg_options *options,
                         const struct cg_grid *grid,
                         const struct cg_part *part,
                         const struct known *known,
                         struct cg_table *table, size_t *done,
                         size_t *failed, struct cg_error *why,
                         struct cg_progress *progress)
{
    long first = (long)(part->first + *done), past = (long)part->past;
    size_t written = *done;
    bool stopped = false;
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic, 1) ordered \
    num_threads(cg_threads(options->threads))
#endif
    for (long point = first; point < past; point++) {
        struct cg_sweep_row row;
        struct cg_error trouble = {CG_OK, ""};
        bool made = !interrupted;
        if (made)
            compute_row(options, grid, (size_t)point, known, &row, &trouble);
#ifdef _OPENMP
#pragma omp ordered
#endif
        {
            stopped = stopped || !made;
            if (!stopped) {
                cg_sweep_row_write(table, &row);
                written++;
                if (trouble.text[0] != '\0' && (*failed)++ == 0)
                    *why = trouble;
                cg_progress_tell(progress, written);
            }
        }
    }
    *done = written;
}

/* Rows of an earlier run go on only if they are what this run would have made
 * of them: the config's name and the grid do not tell what stands in it. */
static enum cg_status check_earlier(const struct cg_options *options,
                                    const struct cg_grid *grid,
                                    const struct cg_part *part,
                                    const struct known *known,
                                    const struct cg_sweep_earlier *earlier,
                                    struct cg_error *error)
{
    for (int i = 0; i < 2 && earlier->rows > 0; i++) {
        size_t point = part->first + (i == 0 ? 0 : earlier->rows - 1);
        const struct cg_sweep_row *there =
            i == 0 ? &earlier->first : &earlier->last;
        struct cg_sweep_row row;
        struct cg_error why;
        compute_row(options, grid, point, known, &row, &why);
        if (strcmp(row.text, there->text) != 0 ||
            strcmp(row.why, there->why) != 0)
            return cg_error_set(error, CG_BAD_INPUT,
                                "--resume: row %zu of the table there is not "
                                "what this config and coldgap give; remove it "
                                "or choose another folder",
                                point - part->first + 1);
    }
    return CG_OK;
}

/* Whether --set gives that setting, in whatever unit. */
static bool is_set(const struct cg_options *options,
                   const struct cg_setting *setting)
{
    for (size_t i = 0; i < options->sets; i++) {
        char path[128];
        struct cg_key key;
        snprintf(path, sizeof path, "%.*s",
                 (int)strcspn(options->set[i], "="), options->set[i]);
        if (cg_key_find(path, &key, NULL, 0) && key.setting == setting)
            return true;
    }
    return false;
}

/* A misspelt setting spoils the whole sweep, and one given twice leaves open
 * which holds: say so before it begins. */
static enum cg_status check_axes(const struct cg_options *options,
                                 const struct cg_grid *grid,
                                 struct cg_error *error)
{
    struct cg_key key[CG_AXES];
    for (size_t axis = 0; axis < grid->axes; axis++) {
        const char *path = grid->axis[axis].path;
        char trouble[256];
        if (!cg_key_find(path, &key[axis], trouble, sizeof trouble))
            return cg_error_set(error, CG_BAD_INPUT, "--vary %s: %s", path,
                                trouble);
        for (size_t i = 0; i < axis; i++)
            if (key[i].setting == key[axis].setting)
                return cg_error_set(error, CG_BAD_INPUT,
                                    "--vary %s: varied already, as %s; once "
                                    "is allowed",
                                    path, grid->axis[i].path);
        if (is_set(options, key[axis].setting))
            return cg_error_set(error, CG_BAD_INPUT,
                                "--vary %s: --set gives this setting too; one "
                                "of the two is allowed",
                                path);
    }
    return CG_OK;
}

static const char *out_of(const struct cg_options *options)
{
    return options->out != NULL ? options->out : "out";
}

static void tell_next_step(const struct cg_part *part, const char *dir)
{
    if (part->of > 1)
        printf("All parts made: cat %s/sweep_*_of_%zu.dat > %s/sweep.dat\n",
               cg_plain_word(dir).text, part->of, cg_plain_word(dir).text);
    else
        cg_next_step_pictures(dir);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    return cg_report_sweep(report, context, error);
}

static enum cg_status write_report(const struct cg_options *options,
                                   const struct cg_table_of *of,
                                   const struct cg_case *base,
                                   const struct cg_grid *grid,
                                   const struct cg_part *part, size_t points,
                                   struct cg_error *error)
{
    const char *dir = out_of(options);
    char name[64];
    cg_part_name(part, name);
    struct cg_sweep_story story = {
        grid, dir, name, base, options->report != NULL || options->drawings};
    struct cg_outputs outputs = {.title = "Cold ring gap over varied settings",
                                 .of = of,
                                 .run = "sweep",
                                 .dir = dir,
                                 .tell = tell,
                                 .context = &story};
    enum cg_status status = cg_outputs_write(options, &outputs, error);
    if (status == CG_OK && cg_outputs_talk(options)) {
        printf("\n%zu points in %s/%s\n", points, cg_plain(dir).text, name);
        tell_next_step(part, dir);
    }
    return status;
}

static enum cg_status sweep(const struct cg_options *options,
                            const struct cg_case *base,
                            const struct cg_grid *grid,
                            const struct known *known,
                            struct cg_error *error)
{
    const char *dir = out_of(options);
    struct cg_part part;
    char name[64];
    struct cg_table *table = NULL;
    struct cg_progress progress;
    struct cg_sweep_earlier earlier;
    size_t failed = 0;
    struct cg_error why;
    struct cg_table_of of;
    cg_sweep_of(options->told, base, grid, &of);
    enum cg_status status = cg_part_set(grid->points, options->part,
                                        options->parts, &part, error);
    if (status == CG_OK)
        status = check_axes(options, grid, error);
    if (status != CG_OK)
        return status;
    cg_part_name(&part, name);
    status = cg_outputs_hold(options, dir, name, error);
    if (status == CG_OK)
        status = cg_sweep_table_open(dir, &of, grid, &part,
                                     options->resume, &table, &earlier, error);
    if (status != CG_OK)
        return status;
    status = check_earlier(options, grid, &part, known, &earlier, error);
    if (status != CG_OK)
        return cg_table_close(table, status, error);
    size_t total = part.past - part.first, done = earlier.rows;
    catch_interrupts();
    cg_progress_begin(&progress, "points", done, total, options->quiet);
    compute_rows(options, grid, &part, known, table, &done, &failed, &why,
                 &progress);
    cg_progress_end(&progress);
    status = cg_table_close(table, CG_OK, error);
    if (status != CG_OK)
        return status;
    if (done < total)
        return cg_error_set(error, CG_STOPPED,
                            "stopped after %zu of %zu points; %s/%s holds "
                            "them, the same command with --resume goes on",
                            done, total, dir, name);
    if (failed > 0 && failed == total && part.of == 1)
        return cg_error_set(error, why.status,
                            "no point of %zu has an answer; the first: %.400s",
                            total, why.text);
    return write_report(options, &of, base, grid, &part, total, error);
}

enum cg_status cg_command_sweep(const struct cg_options *options,
                                struct cg_error *error)
{
    struct cg_grid grid;
    struct cg_updated_case updated = {.learned = {.entries = 0}};
    struct cg_metals shipped = {.metal = NULL};
    struct known known = {&updated.learned, &shipped};
    enum cg_status status =
        cg_grid_read(options->vary, options->varies, &grid, error);
    if (status == CG_OK && options->report != NULL && options->parts > 1)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "sweep: --report is for a whole sweep, not for "
                              "one --part of it");
    if (status == CG_OK)
        status = cg_updated_case_read(options->config, options->set, options->sets,
                                false, &updated, error);
    for (size_t i = 0; i < grid.axes && updated.learned.entries > 0; i++)
        if (cg_updates_case(grid.axis[i].path))
            known.learned = NULL;
    if (status == CG_OK)
        status = cg_config_shipped(&shipped, error);
    if (status == CG_OK)
        status = sweep(options, &updated.c, &grid, &known, error);
    cg_metals_free(&shipped);
    cg_updated_case_free(&updated);
    cg_case_free(&updated.c);
    cg_grid_free(&grid);
    return status;
}
