/* Speed of a whole find, and of its samples. */
#define _XOPEN_SOURCE 700
#include "bench_find.h"

#include <fcntl.h>
#include <math.h>
#include <spawn.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "answer.h"
#include "bench_scale.h"
#include "bench_solver.h"
#include "config.h"
#include "options.h"
#include "sampling.h"

extern char **environ;

enum { REPEATS = 51, SAMPLES = 2000, THREADS = 2, SAMPLE_REPEATS = 3 };

struct duty {
    const char *name, *config;
};

static const struct duty duties[] = {
    {"settled, 20 s of full load held", CG_BENCH_OWN "/settled.cfg"},
    {"settled, 20 s pull, 40 to 100 %", CG_BENCH_OWN "/pull.cfg"},
    {"cruise, 20 s of full load held", CG_BENCH_OWN "/hold.cfg"},
    {"dyno_pull, ramps, 17.5 s", CG_BENCH_OWN "/dyno.cfg"},
};

static void read_case(const struct duty *duty, struct cg_case *c)
{
    struct cg_error error;
    if (cg_config_read(duty->config, NULL, 0, c, &error) != CG_OK)
        bench_fail(error.text);
}

static void solve(const struct cg_case *c, struct cg_duty_run **run,
                  struct cg_answer *answer)
{
    struct cg_error error;
    if (cg_duty_run_create(c, run, &error) != CG_OK ||
        cg_answer_find(c, *run, 0.0, NULL, NULL, answer, &error) != CG_OK)
        bench_fail(error.text);
}

/* Median CPU of reading, and of computing, in one process [s]. */
static void time_inside(const struct duty *duty, double *reading,
                        double *computing)
{
    double read[REPEATS], computed[REPEATS];
    for (int i = 0; i < REPEATS; i++) {
        struct cg_case c;
        struct cg_duty_run *run;
        struct cg_answer answer;
        double before = bench_now();
        read_case(duty, &c);
        double between = bench_now();
        solve(&c, &run, &answer);
        computed[i] = bench_now() - between;
        read[i] = between - before;
        cg_duty_run_free(run);
    }
    *reading = bench_median(read, REPEATS);
    *computing = bench_median(computed, REPEATS);
}

static double children_cpu(void)
{
    struct rusage usage;
    getrusage(RUSAGE_CHILDREN, &usage);
    return (double)usage.ru_utime.tv_sec + (double)usage.ru_stime.tv_sec +
           1e-6 * (double)(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
}

static void run_program(char *const *arguments)
{
    pid_t child;
    int how;
    posix_spawn_file_actions_t quiet;
    if (posix_spawn_file_actions_init(&quiet) != 0 ||
        posix_spawn_file_actions_addopen(&quiet, STDOUT_FILENO, "/dev/null",
                                         O_WRONLY, 0) != 0 ||
        posix_spawn(&child, CG_BENCH_PROGRAM, &quiet, NULL, arguments,
                    environ) != 0 ||
        waitpid(child, &how, 0) != child || !WIFEXITED(how) ||
        WEXITSTATUS(how) > 1)
        bench_fail("coldgap itself failed");
    posix_spawn_file_actions_destroy(&quiet);
}

/* Median CPU of the program, user and system, its start included [s]. */
static double time_program(char *const *arguments)
{
    double seconds[REPEATS];
    for (int i = 0; i < REPEATS; i++) {
        double before = children_cpu();
        run_program(arguments);
        seconds[i] = children_cpu() - before;
    }
    return bench_median(seconds, REPEATS);
}

static double time_find(const struct duty *duty)
{
    char *arguments[] = {"coldgap", "find", (char *)duty->config, "-q", NULL};
    return time_program(arguments);
}

void bench_find(void)
{
    char *version[] = {"coldgap", "--version", NULL};
    printf("\nA whole find, median CPU of %d [ms]; the program's start alone "
           "takes %.2f\n%-34s  %8s  %8s  %8s\n", REPEATS,
           1e3 * time_program(version), "duty", "reading", "finding",
           "program");
    for (size_t i = 0; i < sizeof duties / sizeof *duties; i++) {
        double reading, computing;
        time_inside(&duties[i], &reading, &computing);
        printf("%-34s  %8.2f  %8.2f  %8.2f\n", duties[i].name, 1e3 * reading,
               1e3 * computing, 1e3 * time_find(&duties[i]));
        fflush(stdout);
    }
}

struct sampling_time {
    double wall, cpu; /* [s], of the shortest run */
};

static struct sampling_time time_samples(const struct cg_case *c,
                                         const struct cg_duty_run *run,
                                         struct cg_answer *answer, int threads)
{
    struct cg_options options = {.quiet = true, .threads = threads};
    struct sampling_time least = {INFINITY, INFINITY};
    for (int i = 0; i < SAMPLE_REPEATS; i++) {
        struct cg_confidence_work *work;
        struct cg_error error;
        double wall = bench_wall(), cpu = bench_now();
        if (cg_confidence_begin(c, run, answer->extremes.closure, SAMPLES, 1,
                                &work, &error) != CG_OK ||
            cg_sampling_run(&options, work, answer, &error) != CG_OK)
            bench_fail(error.text);
        least.wall = fmin(least.wall, bench_wall() - wall);
        least.cpu = fmin(least.cpu, bench_now() - cpu);
        cg_confidence_free(work);
    }
    return least;
}

/* Efficiency means little while the machine has other work. */
void bench_samples(void)
{
    printf("\n%d samples and what their shares need, best of %d\n"
           "%-34s  %10s  %10s  %10s  %10s  %10s\n", SAMPLES, SAMPLE_REPEATS,
           "duty", "CPU each", "1 thread", "2 threads", "efficiency",
           "10000 on 2");
    for (size_t i = 0; i < sizeof duties / sizeof *duties; i++) {
        struct cg_case c;
        struct cg_duty_run *run;
        struct cg_answer answer;
        read_case(&duties[i], &c);
        solve(&c, &run, &answer);
        struct sampling_time one = time_samples(&c, run, &answer, 1);
        struct sampling_time two = time_samples(&c, run, &answer, THREADS);
        printf("%-34s  %7.3f ms  %8.3f s  %8.3f s  %10.2f  %8.1f s\n",
               duties[i].name, 1e3 * one.cpu / SAMPLES, one.wall, two.wall,
               one.wall / (THREADS * two.wall),
               10000.0 / SAMPLES * two.wall);
        fflush(stdout);
        cg_duty_run_free(run);
    }
}
