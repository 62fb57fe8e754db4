/* What the entries of the evidence see in their runs. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evidence_work.h"
#include "follow.h"
#include "growth.h"
#include "heat_balance.h"
#include "uncertain.h"

/* Slopes are taken between so many standard deviations up and down: wide against
 * the steps' errors and about as wide as what evidence leaves unknown, so that
 * a bend, as where the knock limit begins to retard the burn, counts by both its
 * sides and no posterior sits on the edge between them. */
#define SLOPE_STEP 0.5

/* Runs for slopes may err more in their steps: what is the same up and down
 * cancels. */
#define COARSER 8.0

/* A long course comes by many operating points, and its slopes are known as far as a
 * run in few rows tells them: they are kept while no unknown moves by more
 * standard deviations than this, half of the way they are taken over. */
#define SLOPE_KEPT (0.5 * SLOPE_STEP)

/* Watches a run for its entries. */
struct observer {
    const struct cg_evidence *evidence;
    const struct cg_case *c;
    const struct cg_duty_run *duty;
    size_t run;
    double *y;      /* [entries] */
    double *strain; /* [stations] */
    double time;    /* of the solver's instant before [s] */
    size_t entry[CG_EVIDENCE]; /* of each quantity followed */
    struct cg_follow follow;
};

/* Closure that leaves nothing open. */
static double closure_at(const struct observer *observer,
                         const double *temperature)
{
    const struct cg_thermal *thermal = observer->duty->thermal;
    cg_growth_bore(observer->c, thermal, temperature, observer->strain);
    double ring =
        cg_growth_ring(observer->c, thermal, temperature, CG_RING_TOP);
    return cg_growth_closure(observer->c, thermal, observer->strain, ring,
                             CG_RING_TOP, 0.0)
        .closure;
}

static double seen_at(const struct observer *observer,
                      const struct cg_evidence_entry *entry,
                      const double *temperature)
{
    const struct cg_thermal *thermal = observer->duty->thermal;
    switch (entry->what) {
    case CG_EVIDENCE_CROWN:
        return temperature[thermal->piston.node[0]];
    case CG_EVIDENCE_GROOVE_TOP:
        return temperature[thermal->piston.groove[CG_RING_TOP]];
    case CG_EVIDENCE_RING_TOP:
        return cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP);
    case CG_EVIDENCE_RING_SECOND:
        return cg_thermal_ring_mean(thermal, temperature, CG_RING_SECOND);
    case CG_EVIDENCE_LINER:
        return cg_thermal_bore_at(thermal, temperature, entry->depth);
    case CG_EVIDENCE_PROBE:
    case CG_EVIDENCE_COOLANT:
        break; /* read_steady */
    case CG_EVIDENCE_ENDS:
        return closure_at(observer, temperature);
    }
    return NAN;
}

/* The entries that show the highest of the duty. */
static void read_highest(void *context, const double *temperature,
                         double *value)
{
    const struct observer *observer = context;
    for (size_t k = 0; k < observer->follow.count; k++)
        value[k] = seen_at(observer,
                           &observer->evidence->entry[observer->entry[k]],
                           temperature);
}

/* The entries that tell their time, where it lies in the step that ends. */
static void read_timed(struct observer *observer,
                       const struct cg_instant *instant)
{
    for (size_t i = 0; i < observer->evidence->entries; i++) {
        const struct cg_evidence_entry *entry = &observer->evidence->entry[i];
        if (entry->run != observer->run || isnan(entry->time))
            continue;
        if (entry->time >= instant->time) {
            observer->y[i] = seen_at(observer, entry, instant->temperature);
        } else if (entry->time > observer->time) {
            struct cg_instant inside;
            cg_duty_run_inside(observer->duty, entry->time,
                               observer->follow.between, &inside);
            observer->y[i] = seen_at(observer, entry, inside.temperature);
        }
    }
    observer->time = instant->time;
}

static enum cg_status see(void *context, const struct cg_instant *instant,
                          struct cg_error *error)
{
    struct observer *observer = context;
    (void)error;
    cg_follow_see(&observer->follow, observer->duty, instant);
    read_timed(observer, instant);
    return CG_OK;
}

static void list_highest(struct observer *observer)
{
    struct cg_follow *follow = &observer->follow;
    follow->count = 0;
    for (size_t i = 0; i < observer->evidence->entries; i++) {
        const struct cg_evidence_entry *entry = &observer->evidence->entry[i];
        if (entry->run == observer->run && isnan(entry->time) &&
            !cg_evidence_is_steady(entry->what))
            observer->entry[follow->count++] = i;
    }
    follow->read = read_highest;
    follow->context = observer;
}

/* The entries that are read on the engine where the duty starts settled. */
static void read_steady(const struct observer *observer)
{
    const struct cg_duty_run *run = observer->duty;
    const struct cg_heat_balance balance = cg_heat_balance_at(
        observer->c, run->thermal, &run->point[run->start]);
    for (size_t i = 0; i < observer->evidence->entries; i++) {
        const struct cg_evidence_entry *entry = &observer->evidence->entry[i];
        if (entry->run != observer->run)
            continue;
        if (entry->what == CG_EVIDENCE_PROBE)
            observer->y[i] = balance.exhaust.reading;
        else if (entry->what == CG_EVIDENCE_COOLANT)
            observer->y[i] = balance.coolant / balance.fuel;
    }
}

/* Values of the entries of run number `number`. */
static enum cg_status observe_run(const struct cg_evidence *evidence,
                                size_t number, const struct cg_case *c,
                                struct cg_duty_run *run, double *y,
                                struct cg_error *error)
{
    struct observer observer = {.evidence = evidence,
                          .c = c,
                          .duty = run,
                          .run = number,
                          .y = y,
                          .time = -INFINITY};
    enum cg_status status =
        cg_follow_begin(run, CG_EVIDENCE, &observer.follow, error);
    list_highest(&observer);
    observer.strain =
        malloc(run->thermal->bore.grid.stations * sizeof *observer.strain);
    if (status == CG_OK && observer.strain == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (status == CG_OK)
        status = cg_duty_run_go(c, run, 0.0, see, &observer, NULL, error);
    for (size_t k = 0; k < observer.follow.count && status == CG_OK; k++)
        y[observer.entry[k]] = observer.follow.most[k];
    if (status == CG_OK)
        read_steady(&observer);
    free(observer.strain);
    cg_follow_free(&observer.follow);
    return status;
}

/* Where the conditions of a run begin among the unknowns. */
static size_t conditions_of(const struct cg_evidence_work *work, size_t run)
{
    return work->shared + run * (work->moving - work->shared);
}

/* The run's case with its inputs as the unknowns say. */
static struct cg_case case_at(const struct cg_evidence_work *work, size_t run,
                              const double *u)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    double own[CG_INPUTS] = {0.0}, score[CG_INPUTS];
    for (size_t k = 0; k < work->shared; k++)
        own[k] = work->wide * u[k];
    memcpy(own + work->shared, u + conditions_of(work, run),
           (work->moving - work->shared) * sizeof *u);
    cg_input_law_scores(&work->law, own, score);
    struct cg_case c = work->evidence->run[run];
    for (size_t i = 0; i < work->moving; i++)
        cg_uncertain_move(&inputs[work->row[i]], score[i], &c);
    return c;
}

enum cg_status cg_evidence_values(void *context, const double *u, double *y,
                                  struct cg_error *error)
{
    struct cg_evidence_work *work = context;
    for (size_t r = 0; r < work->evidence->runs; r++) {
        struct cg_case c = case_at(work, r, u);
        cg_duty_run_free(work->run[r]);
        work->run[r] = NULL;
        enum cg_status status = cg_duty_run_create(&c, &work->run[r], error);
        if (status == CG_OK)
            status = observe_run(work->evidence, r, &c, work->run[r], y, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}

/* Whether an unknown, place `own` in its run, leaves the cycle alone. */
static bool gas_side_same(const struct cg_evidence_work *work, size_t own)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = own; i < work->moving; i++)
        if (inputs[work->row[i]].gas_side && work->law.factor[i][own] != 0.0)
            return false;
    return true;
}

/* What is read on a steady engine hangs on the gas, which answers to the walls
 * too: a cycle for those of the varied run. */
static enum cg_status renew_steady(const struct cg_evidence *evidence,
                                   size_t r, const struct cg_case *c,
                                   struct cg_duty_run *run,
                                   struct cg_error *error)
{
    double change;
    for (size_t i = 0; i < evidence->entries; i++)
        if (evidence->entry[i].run == r &&
            cg_evidence_is_steady(evidence->entry[i].what))
            return cg_point_renew(c, run->thermal, &run->workspace,
                                  &run->point[run->start], &change, error);
    return CG_OK;
}

/* Values of run `r` with one unknown moved by `step`, run in `workspace`. */
static enum cg_status moved_values(const struct cg_evidence_work *work,
                                   size_t r, double *u, size_t unknown,
                                   double step, struct cg_duty_run *workspace,
                                   double *y, struct cg_error *error)
{
    const struct cg_duty_run *nominal = work->run[r];
    size_t own = unknown < work->shared
                     ? unknown
                     : work->shared + unknown - conditions_of(work, r);
    double kept = u[unknown];
    u[unknown] += step;
    struct cg_case c = case_at(work, r, u);
    u[unknown] = kept;
    c.solver.tolerance *= COARSER;
    enum cg_status status =
        cg_duty_run_vary(&c, nominal, gas_side_same(work, own) ? nominal : NULL,
                         workspace, error);
    if (status == CG_OK)
        status = renew_steady(work->evidence, r, &c, workspace, error);
    return status == CG_OK
               ? observe_run(work->evidence, r, &c, workspace, y, error)
               : status;
}

/* Slopes of the entries of run `r`, about work->at. */
static enum cg_status take_slopes(struct cg_evidence_work *work, size_t r,
                                  double *slope, struct cg_error *error)
{
    const struct cg_evidence *evidence = work->evidence;
    size_t unknowns = conditions_of(work, evidence->runs);
    size_t first = conditions_of(work, r), past = conditions_of(work, r + 1);
    struct cg_duty_run *workspace;
    enum cg_status status =
        cg_duty_run_lay_out(&evidence->run[r], &workspace, error);
    if (status != CG_OK)
        return status;
    for (size_t k = 0; k < unknowns; k++) {
        double up[CG_EVIDENCE], down[CG_EVIDENCE];
        if (k >= work->shared && !(k >= first && k < past))
            continue; /* another run's condition */
        status = moved_values(work, r, work->at, k, SLOPE_STEP, workspace, up,
                              error);
        if (status == CG_OK)
            status = moved_values(work, r, work->at, k, -SLOPE_STEP, workspace,
                                  down, error);
        if (status != CG_OK)
            break;
        for (size_t i = 0; i < evidence->entries; i++)
            if (evidence->entry[i].run == r)
                slope[i * unknowns + k] =
                    (up[i] - down[i]) / (2.0 * SLOPE_STEP);
    }
    cg_duty_run_free(workspace);
    return status;
}

/* Whether the slopes of a run were taken near by. */
static bool is_kept(const struct cg_evidence_work *work, size_t r)
{
    size_t unknowns = conditions_of(work, work->evidence->runs);
    const struct cg_course *course = work->evidence->run[r].duty.course;
    bool near = course != NULL && course->rows > CG_SEGMENTS &&
                work->kept_wide[r] == work->wide;
    for (size_t k = 0; k < unknowns && near; k++)
        near = fabs(work->at[k] - work->kept_at[r][k]) <= SLOPE_KEPT;
    return near;
}

/* Copies the rows of a run's entries. */
static void copy_rows(const struct cg_evidence_work *work, size_t r,
                      const double *from, double *to)
{
    size_t unknowns = conditions_of(work, work->evidence->runs);
    for (size_t i = 0; i < work->evidence->entries; i++)
        if (work->evidence->entry[i].run == r)
            memcpy(to + i * unknowns, from + i * unknowns,
                   unknowns * sizeof *to);
}

/* The slopes of a run, taken anew or kept. */
static enum cg_status slopes_of(struct cg_evidence_work *work, size_t r,
                                double *slope, struct cg_error *error)
{
    if (is_kept(work, r)) {
        copy_rows(work, r, work->kept, slope);
        return CG_OK;
    }
    enum cg_status status = take_slopes(work, r, slope, error);
    if (status != CG_OK)
        return status;
    copy_rows(work, r, slope, work->kept);
    memcpy(work->kept_at[r], work->at, sizeof work->at);
    work->kept_wide[r] = work->wide;
    return CG_OK;
}

enum cg_status cg_evidence_slopes(void *context, const double *u, double *slope,
                                  struct cg_error *error)
{
    struct cg_evidence_work *work = context;
    const struct cg_evidence *evidence = work->evidence;
    size_t unknowns = conditions_of(work, evidence->runs);
    memcpy(work->at, u, unknowns * sizeof *u);
    memset(slope, 0, evidence->entries * unknowns * sizeof *slope);
    for (size_t r = 0; r < evidence->runs; r++) {
        enum cg_status status = slopes_of(work, r, slope, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}
