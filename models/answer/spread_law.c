/* The closure by each law of gas heat and film, as calibrated. */
#include <assert.h>
#include <math.h>
#include <string.h>

#include "input_law.h"
#include "law.h"
#include "spread.h"
#include "uncertain.h"

/* Of the closure by another law: the shifts are those of the case's own, as
 * wide and as correlated as the other's constants. */
static double sigma_of(const struct cg_spread *spread,
                       const struct cg_case *other,
                       const struct cg_answer *answer)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    double shift[CG_INPUTS], variance = 0.0;
    for (size_t i = 0; i < count; i++) {
        double own = cg_uncertain_spread(&inputs[i], &spread->c);
        shift[i] = own > 0.0 ? answer->contribution[i].shift *
                                   cg_uncertain_spread(&inputs[i], other) / own
                             : 0.0;
    }
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < count; j++)
            variance +=
                shift[i] * cg_input_correlation(other, i, j) * shift[j];
    return sqrt(fmax(variance, 0.0));
}

/* One law that could not be computed weighs where it hurts: on the widest. */
static void hand_over(double weight, double z, struct cg_normals *laws)
{
    size_t widest = 0;
    for (size_t i = 1; i < laws->parts; i++)
        if (laws->mean[i] + z * laws->sd[i] >
            laws->mean[widest] + z * laws->sd[widest])
            widest = i;
    laws->weight[widest] += weight;
}

static void add_part(double weight, double mean, double sd,
                     struct cg_normals *laws)
{
    laws->weight[laws->parts] = weight;
    laws->mean[laws->parts] = mean;
    laws->sd[laws->parts++] = sd;
}

/* The laws of gas heat with the case's own of the film, as calibrated. */
static void note_closure(const struct cg_law *law, const struct cg_law *own,
                         double closure, struct cg_answer *answer)
{
    if (law->film_law != own->film_law)
        return;
    assert(answer->correlations < CG_CORRELATIONS);
    answer->correlation[answer->correlations++] =
        (struct cg_correlation_answer){law->heat_transfer, closure};
}

/* Standard normal quantile at which the widest law is looked for. */
#define FAR_OUT 3.0

static bool same_gas(const struct cg_law *a, const struct cg_law *b)
{
    return strcmp(a->heat_transfer, b->heat_transfer) == 0;
}

/* The closure by a law that is not the case's own. */
static enum cg_status run_law(const struct cg_spread *spread,
                              const struct cg_law *own,
                              const struct cg_law *law,
                              struct cg_duty_run *workspace, double *closure,
                              struct cg_error *error)
{
    struct cg_case other = spread->c;
    cg_law_take(own, law, &other);
    enum cg_status status =
        cg_spread_closure(&other, spread, NULL, workspace, closure, error);
    if (status != CG_OK)
        *closure = NAN;
    return status == CG_NO_MEMORY ? status : CG_OK;
}

/* Of a law that differs in both: what either alone makes, added. */
static double added(const struct cg_spread *spread, const struct cg_law *own,
                    const struct cg_law *law, const double *closure)
{
    size_t count;
    double sum = -spread->closure;
    const struct cg_law *laws = cg_laws(&count);
    for (size_t i = 0; i < count; i++)
        if (same_gas(&laws[i], law) != same_gas(&laws[i], own) &&
            (laws[i].film_law == (same_gas(&laws[i], law) ? own->film_law
                                                          : law->film_law)))
            sum += closure[i];
    return sum;
}

/* Closures by all laws; NaN: could not be computed. */
static enum cg_status closures_of(const struct cg_spread *spread,
                                  const struct cg_law *own,
                                  struct cg_duty_run *workspace,
                                  double closure[CG_NORMALS_PARTS],
                                  struct cg_error *error)
{
    size_t count;
    const struct cg_law *laws = cg_laws(&count);
    assert(count <= CG_NORMALS_PARTS);
    for (size_t i = 0; i < count; i++) {
        enum cg_status status = CG_OK;
        bool film = laws[i].film_law == own->film_law;
        closure[i] = spread->closure;
        if (film != same_gas(&laws[i], own))
            status = run_law(spread, own, &laws[i], workspace, &closure[i],
                             error);
        if (status != CG_OK)
            return status;
    }
    for (size_t i = 0; i < count; i++)
        if (laws[i].film_law != own->film_law && !same_gas(&laws[i], own))
            closure[i] = added(spread, own, &laws[i], closure);
    return CG_OK;
}

enum cg_status cg_spread_laws(const struct cg_spread *spread,
                              struct cg_duty_run *workspace,
                              struct cg_answer *answer, struct cg_error *error)
{
    size_t count;
    const struct cg_law *laws = cg_laws(&count), *own = cg_law_of(&spread->c);
    double lost = 0.0, closure[CG_NORMALS_PARTS] = {0.0};
    answer->laws.parts = 0;
    answer->correlations = 0;
    if (own == NULL) { /* the builder's own choice, not calibrated */
        add_part(1.0, 0.0, answer->sigma, &answer->laws);
        return CG_OK;
    }
    enum cg_status status =
        closures_of(spread, own, workspace, closure, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < count; i++) {
        struct cg_case other = spread->c;
        if (&laws[i] != own)
            cg_law_take(own, &laws[i], &other);
        note_closure(&laws[i], own, closure[i], answer);
        if (isnan(closure[i]))
            lost += laws[i].weight;
        else
            add_part(laws[i].weight, closure[i] - spread->closure,
                     sigma_of(spread, &other, answer), &answer->laws);
    }
    if (answer->laws.parts == 0)
        add_part(0.0, 0.0, answer->sigma, &answer->laws);
    hand_over(lost, FAR_OUT, &answer->laws);
    return CG_OK;
}
