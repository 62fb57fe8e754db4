#include "spread.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "input_law.h"
#include "uncertain.h"

/* Steps of the moved runs may err more than those of the nominal run: it
 * moves a shift by less than 1 % (tested). */
#define COARSER 16.0

enum { FEWEST_STATIONS = 12 };

static int fewer(int cells, int part, int fewest)
{
    int wanted = (cells + part - 1) / part;
    return cells < fewest ? cells : wanted > fewest ? wanted : fewest;
}

static int larger_first(const void *a, const void *b)
{
    const struct cg_contribution *x = a, *y = b;
    double dx = fabs(x->shift), dy = fabs(y->shift);
    return (dx < dy) - (dx > dy);
}

/* The cells of the spread. */
static void coarsen(struct cg_solver_case *solver)
{
    solver->stations = fewer(solver->stations, 2, FEWEST_STATIONS);
    solver->block_cells = fewer(solver->block_cells, 3, 1);
    solver->rough_cycles = true;
    solver->tolerance *= COARSER;
}

enum cg_status cg_spread_workspace(const struct cg_spread *spread,
                              struct cg_duty_run **workspace,
                              struct cg_error *error)
{
    return cg_duty_run_lay_out(&spread->c, workspace, error);
}

/* The base from the nominal run, in fewer cells. */
static enum cg_status vary_base(const struct cg_duty_run *nominal,
                                struct cg_spread *made, struct cg_error *error)
{
    enum cg_status status = cg_spread_workspace(made, &made->base, error);
    return status == CG_OK ? cg_duty_run_vary(&made->c, nominal, NULL,
                                              made->base, error)
                           : status;
}

/* The base of a long course: what its tightest instant sees of it. */
static enum cg_status see_base(const struct cg_duty_run *nominal,
                               struct cg_spread *made, struct cg_error *error)
{
    struct cg_course *seen = NULL;
    struct cg_duty_run *full = NULL;
    enum cg_status status =
        cg_course_seen(made->c.duty.course, nominal->tightest, CG_SEEN_MEANS,
                       &made->courses, &seen, error);
    made->c.duty.course = seen;
    if (status == CG_OK)
        status = cg_duty_run_create(&made->c, &full, error);
    if (status == CG_OK)
        status = vary_base(full, made, error);
    cg_duty_run_free(full);
    return status;
}

enum cg_status cg_spread_create(const struct cg_case *c,
                                const struct cg_duty_run *nominal,
                                double closure, struct cg_spread **spread,
                                struct cg_error *error)
{
    struct cg_spread *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->c = *c;
    made->closure = closure;
    coarsen(&made->c.solver);
    bool sees =
        c->duty.course != NULL && nominal->pieces > CG_SPREAD_PIECES;
    enum cg_status status = sees ? see_base(nominal, made, error)
                                 : vary_base(nominal, made, error);
    if (status == CG_OK)
        status = cg_answer_closures(&made->c, made->base, &made->at, error);
    if (status == CG_OK)
        status = cg_duty_run_keep_factors(made->base, error);
    if (status != CG_OK) {
        cg_spread_free(made);
        return status;
    }
    *spread = made;
    return CG_OK;
}

void cg_spread_free(struct cg_spread *spread)
{
    if (spread == NULL)
        return;
    cg_duty_run_free(spread->base);
    cg_courses_free(spread->courses);
    free(spread);
}

/* What a moved case comes to in these cells. */
static enum cg_status see_moved(const struct cg_case *c,
                                const struct cg_spread *spread,
                                const struct cg_duty_run *gas_side,
                                struct cg_duty_run *workspace,
                                struct cg_extremes *extremes,
                                struct cg_error *error)
{
    enum cg_status status =
        cg_duty_run_vary(c, spread->base, gas_side, workspace, error);
    if (status == CG_OK)
        status = cg_answer_closures(c, workspace, extremes, error);
    return status;
}

enum cg_status cg_spread_closure(const struct cg_case *c,
                                 const struct cg_spread *spread,
                                 const struct cg_duty_run *gas_side,
                                 struct cg_duty_run *workspace, double *closure,
                                 struct cg_error *error)
{
    struct cg_extremes extremes;
    enum cg_status status =
        see_moved(c, spread, gas_side, workspace, &extremes, error);
    if (status == CG_OK)
        *closure = spread->closure + (extremes.closure - spread->at.closure);
    return status;
}

static enum cg_status shift_of(const struct cg_spread *spread,
                               struct cg_duty_run *workspace,
                               const struct cg_uncertain *input,
                               struct cg_contribution *to,
                               struct cg_error *error)
{
    double sigma = cg_uncertain_spread(input, &spread->c);
    struct cg_extremes moved_to;
    to->shift = to->skirt_shift = 0.0;
    if (sigma == 0.0)
        return CG_OK;
    if (input->direct) {
        to->shift = cg_uncertain_added(input, &spread->c, spread->closure);
        return CG_OK;
    }
    struct cg_case moved = spread->c;
    cg_uncertain_move(input, 1.0, &moved);
    enum cg_status status =
        see_moved(&moved, spread, input->gas_side ? NULL : spread->base,
                  workspace, &moved_to, error);
    if (status == CG_OK) {
        to->shift = moved_to.closure - spread->at.closure;
        to->skirt_shift = moved_to.skirt.closure - spread->at.skirt.closure;
    }
    return status;
}

/* Variance s' R s of the shifts s, and each input's share of it, s_i (R s)_i:
 * GUM (JCGM 100:2008), eq. 16; the share is the structural and correlative
 * part of G. Li et al., "Global sensitivity analysis for systems with
 * independent and/or correlated inputs", J. Phys. Chem. A 114 (2010). */
static double share_out(const struct cg_case *c, size_t count,
                        struct cg_contribution *contribution)
{
    double variance = 0.0;
    for (size_t i = 0; i < count; i++) {
        double together = 0.0;
        for (size_t j = 0; j < count; j++)
            together += cg_input_correlation(c, i, j) * contribution[j].shift;
        contribution[i].share = contribution[i].shift * together;
        variance += contribution[i].share;
    }
    for (size_t i = 0; i < count && variance > 0.0; i++)
        contribution[i].share /= variance;
    return variance;
}

/* Bore and piston are both measured; expansion moves the growth itself. */
static double skirt_sigma(const struct cg_case *c,
                          const struct cg_answer *answer)
{
    const struct cg_uncertainty_case *u = &c->uncertainty;
    double expansion =
        c->margin.skirt_expansion * answer->extremes.skirt.growth;
    double variance =
        2.0 * u->bore_size * u->bore_size + expansion * expansion;
    const struct cg_contribution *of = answer->contribution;
    for (size_t i = 0; i < answer->contributions; i++)
        for (size_t j = 0; j < answer->contributions; j++)
            variance += cg_input_correlation(c, i, j) * of[i].skirt_shift *
                        of[j].skirt_shift;
    return sqrt(fmax(variance, 0.0));
}

/* Which law is right is one more that is not known: what the laws' own closures
 * differ, and what they are more or less uncertain than the case's own. */
static void add_law(struct cg_answer *answer)
{
    struct cg_contribution *law = &answer->contribution[answer->contributions];
    double own = answer->sigma * answer->sigma;
    if (answer->laws.parts < 2)
        return;
    assert(answer->contributions < CG_INPUTS);
    answer->sigma = cg_normals_sd(&answer->laws);
    double all = answer->sigma * answer->sigma;
    for (size_t i = 0; i < answer->contributions; i++)
        answer->contribution[i].share *= own / all;
    *law = (struct cg_contribution){
        .name = CG_LAW_NAME,
        .doc = "law of gas heat and film",
        .shift = sqrt(fmax(all - own, 0.0)),
        .share = 1.0 - own / all,
        .total_effect = NAN,
        .total_effect_error = NAN};
    answer->contributions++;
}

/* Inputs of another medium or kind of ignition are none of this engine's. */
static void keep_own(const struct cg_case *c, struct cg_answer *answer)
{
    size_t kept = 0;
    for (size_t i = 0; i < answer->contributions; i++)
        if (cg_uncertain_of(c, answer->contribution[i].name))
            answer->contribution[kept++] = answer->contribution[i];
    answer->contributions = kept;
}

enum cg_status cg_spread_first_order(const struct cg_spread *spread,
                                     struct cg_duty_run *workspace,
                                     struct cg_answer *answer,
                                     struct cg_error *error)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    assert(count <= CG_INPUTS);
    for (size_t i = 0; i < count; i++) {
        struct cg_contribution *to = &answer->contribution[i];
        to->name = inputs[i].name;
        to->doc = cg_uncertain_doc(&inputs[i], &spread->c);
        to->total_effect = to->total_effect_error = NAN;
        enum cg_status status =
            shift_of(spread, workspace, &inputs[i], to, error);
        if (status != CG_OK)
            return status;
    }
    answer->contributions = count;
    /* Rounding may leave less than nothing where shifts cancel. */
    answer->sigma =
        sqrt(fmax(share_out(&spread->c, count, answer->contribution), 0.0));
    answer->skirt.sigma = skirt_sigma(&spread->c, answer);
    enum cg_status status = cg_spread_laws(spread, workspace, answer, error);
    if (status != CG_OK)
        return status;
    add_law(answer);
    qsort(answer->contribution, count, sizeof answer->contribution[0],
          larger_first);
    keep_own(&spread->c, answer);
    return CG_OK;
}

/* The closure with either block wall, where none was given. */
static enum cg_status see_block(const struct cg_spread *spread,
                                struct cg_duty_run *workspace,
                                struct cg_band *block, struct cg_error *error)
{
    const double wall[2] = {CG_BLOCK_MOST, CG_BLOCK_LEAST};
    const struct cg_bore_case *bore = &spread->c.bore;
    double closure[2] = {NAN, NAN};
    enum cg_status status = CG_OK;
    bool let_in = bore->seat == CG_SEAT_CAST_IN || bore->seat == CG_SEAT_PRESSED;
    for (int i = 0; bore->block_taken && let_in && i < 2 && status == CG_OK;
         i++) {
        struct cg_case moved = spread->c;
        moved.bore.block_thickness = wall[i];
        status = cg_spread_closure(&moved, spread, spread->base, workspace,
                                   &closure[i], error);
    }
    *block = (struct cg_band){fmin(closure[0], closure[1]),
                              fmax(closure[0], closure[1])};
    return status;
}

enum cg_status cg_spread_find(const struct cg_case *c,
                              const struct cg_duty_run *run,
                              struct cg_answer *answer, struct cg_error *error)
{
    struct cg_spread *spread = NULL;
    struct cg_duty_run *workspace = NULL;
    enum cg_status status =
        cg_spread_create(c, run, answer->extremes.closure, &spread, error);
    if (status == CG_OK)
        status = cg_spread_workspace(spread, &workspace, error);
    if (status == CG_OK)
        status = cg_spread_first_order(spread, workspace, answer, error);
    if (status == CG_OK)
        status = see_block(spread, workspace, &answer->block, error);
    cg_duty_run_free(workspace);
    cg_spread_free(spread);
    return status;
}
