/* Growth and gap over the duty asked for. */
#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "find_chart.h"

/* Of each instant of the table, and of the tightest, in order of time. */
struct course {
    size_t count;
    double *time, *gap, *ring, *bore; /* [s], [m]; one block, begun by time */
    double *closed, *opened; /* the lower edge of the closure, the upper of what
                                opens: the ring's growth where there is none */
};

static void add(const struct cg_find_chart *of, struct course *course,
                double time, double gap, double ring)
{
    size_t i = course->count++;
    course->time[i] = time + cg_find_chart_begin(of);
    course->gap[i] = gap;
    course->ring[i] = ring;
    course->bore[i] = ring - (of->answer->verdict.gap - gap);
    course->closed[i] = fmin(ring, course->bore[i]);
    course->opened[i] = fmax(ring, course->bore[i]);
}

static void add_tightest(const struct cg_find_chart *of, struct course *course)
{
    const struct cg_extremes *e = &of->answer->extremes;
    add(of, course, e->time, of->answer->verdict.gap - e->closure_then,
        e->ring_growth);
}

/* False: out of memory. */
static bool course_create(const struct cg_find_chart *of, struct course *course)
{
    const struct cg_history *history = of->history;
    size_t room = history->moments + 1;
    double tightest = of->answer->extremes.time;
    double around = CG_PI * of->c->engine.bore;
    double *block = malloc(6 * room * sizeof *block);
    if (block == NULL)
        return false;
    *course = (struct course){0,
                              block,
                              block + room,
                              block + 2 * room,
                              block + 3 * room,
                              block + 4 * room,
                              block + 5 * room};
    for (size_t i = 0; i < history->moments; i++) {
        const struct cg_moment *at = &history->moment[i];
        double least, at_top;
        if (course->count == i && at->time >= tightest)
            add_tightest(of, course);
        cg_history_gaps(history, at, of->answer->verdict.gap, &least, &at_top);
        add(of, course, at->time, least, around * at->ring_strain);
    }
    if (course->count == history->moments)
        add_tightest(of, course);
    return true;
}

/* Whether the two part by more than a line's breadth. */
static bool parts(const struct course *course, const double *edge)
{
    double most = 0.0, high = 0.0;
    for (size_t i = 0; i < course->count; i++) {
        most = fmax(most, fabs(course->ring[i] - edge[i]));
        high = fmax(high, fmax(fabs(course->ring[i]), fabs(course->bore[i])));
    }
    return most > 0.02 * high;
}

static void add_band(struct cg_chart *chart, const struct course *course,
                     const double *edge, enum cg_grey fill, const char *label)
{
    if (parts(course, edge))
        chart->band[chart->bands++] = (struct cg_chart_band){
            course->time, edge, course->ring, course->count, fill, label};
}

static struct cg_text length(const struct cg_find_chart *of, double metres)
{
    return cg_quantity_one(cg_quantity(CG_SHOW_GAP, metres), of->inch);
}

static void say_growth(const struct cg_find_chart *of,
                       struct cg_find_chart_words *words)
{
    const struct cg_extremes *e = &of->answer->extremes;
    snprintf(words->text, sizeof words->text,
             "What ring and bore grow around the bore over the duty %s. At the "
             "tightest instant, %.4g s, the ring has grown %s and the bore "
             "where it is tightest %s: %s %s.",
             of->c->duty.name, e->time + cg_find_chart_begin(of),
             length(of, e->ring_growth).text,
             length(of, e->ring_growth - e->closure_then).text,
             e->closure_then >= 0.0 ? "a closure of" : "the gap opens by",
             length(of, fabs(e->closure_then)).text);
}

char *cg_find_chart_growth(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words)
{
    const struct cg_extremes *e = &of->answer->extremes;
    struct cg_find_chart_lines lines = cg_find_chart_lines(of);
    struct course course;
    char closure[64];
    if (!course_create(of, &course))
        return NULL;
    snprintf(closure, sizeof closure, "%s %s",
             e->closure_then >= 0.0 ? "closure" : "opens",
             length(of, fabs(e->closure_then)).text);
    struct cg_chart chart = {
        .title = "Growth of ring and bore",
        .head = lines.head,
        .of = lines.of,
        .words = words->text,
        .inch = of->inch,
        .from_zero = true,
        .x = {cg_find_chart_time(of), CG_SHOW_TIME},
        .y = {"growth around the bore", CG_SHOW_GAP},
        .curve = {{course.time, course.ring, course.count, CG_DASH_SOLID,
                   "ring"},
                  {course.time, course.bore, course.count, CG_DASH_DASHED,
                   of->c->bore.choke.narrower > 0.0 ? "bore, choke taken off"
                                                    : "bore"}},
        .curves = 2,
        .mark = {{e->time + cg_find_chart_begin(of),
                  e->ring_growth - e->closure_then, e->ring_growth, closure}},
        .marks = 1};
    say_growth(of, words);
    add_band(&chart, &course, course.closed, CG_GREY_MIDDLE,
             e->closure_then >= 0.0 ? NULL : "closure");
    add_band(&chart, &course, course.opened, CG_GREY_LIGHT,
             e->closure_then < 0.0 ? NULL : "the gap opens");
    char *svg = cg_chart_draw(&chart);
    free(course.time);
    return svg;
}

/* The least gap, where it is, and how far that is from the minimum. */
static void mark_least(const struct cg_find_chart *of, double least,
                       struct cg_chart *chart, char label[2][96])
{
    const struct cg_extremes *e = &of->answer->extremes;
    double residual = of->c->margin.residual;
    double time = e->time + cg_find_chart_begin(of);
    snprintf(label[0], 96, "least %s at %.4g s",
             length(of, least).text, time);
    snprintf(label[1], 96, "%s %s",
             least >= residual ? "margin" : "below the minimum by",
             length(of, fabs(least - residual)).text);
    chart->mark[0] = (struct cg_chart_mark){time, least, NAN, label[0]};
    chart->mark[1] = (struct cg_chart_mark){time, residual, least, label[1]};
    chart->marks = 2;
}

char *cg_find_chart_gap(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words)
{
    double residual = of->c->margin.residual;
    double least = of->answer->verdict.gap - of->answer->extremes.closure_then;
    const double level[2] = {residual, residual}, none[2] = {0.0, 0.0};
    struct cg_find_chart_lines lines = cg_find_chart_lines(of);
    struct course course;
    char label[2][96];
    if (!course_create(of, &course))
        return NULL;
    const double ends[2] = {course.time[0], course.time[course.count - 1]};
    struct cg_chart chart = {
        .title = "Top ring: gap left while hot",
        .head = lines.head,
        .of = lines.of,
        .words = words->text,
        .inch = of->inch,
        .from_zero = true,
        .x = {cg_find_chart_time(of), CG_SHOW_TIME},
        .y = {"hot gap, middle estimate", CG_SHOW_GAP},
        .curve = {{course.time, course.gap, course.count, CG_DASH_SOLID,
                   "hot gap where it is least"},
                  {ends, level, 2, CG_DASH_DASHED, "minimum hot gap"},
                  {ends, none, 2, CG_DASH_DOTTED, "ends touch"}},
        .curves = least < 0.0 ? 3 : 2};
    mark_least(of, least, &chart, label);
    snprintf(words->text, sizeof words->text,
             "The top ring's hot gap over the duty %s by the middle estimate, "
             "where it is least; %s, %s. The minimum hot gap is %s.",
             of->c->duty.name, label[0], label[1], length(of, residual).text);
    char *svg = cg_chart_draw(&chart);
    free(course.time);
    return svg;
}
