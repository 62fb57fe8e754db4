/* The closure by each law of gas heat and film, as calibrated. */
#include <assert.h>
#include <math.h>

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

enum cg_status cg_spread_laws(const struct cg_spread *spread,
                              struct cg_duty_run *workspace,
                              struct cg_answer *answer, struct cg_error *error)
{
    size_t count;
    const struct cg_law *laws = cg_laws(&count), *own = cg_law_of(&spread->c);
    double lost = 0.0;
    answer->laws.parts = 0;
    answer->correlations = 0;
    if (own == NULL) { /* the builder's own choice, not calibrated */
        add_part(1.0, 0.0, answer->sigma, &answer->laws);
        return CG_OK;
    }
    for (size_t i = 0; i < count; i++) {
        double closure = spread->closure;
        struct cg_case other = spread->c;
        enum cg_status status = CG_OK;
        if (laws[i].weight == 0.0)
            continue;
        if (&laws[i] != own) {
            cg_law_take(own, &laws[i], &other);
            status = cg_spread_closure(&other, spread, NULL, workspace,
                                       &closure, error);
        }
        if (status == CG_NO_MEMORY)
            return status;
        note_closure(&laws[i], own, status == CG_OK ? closure : NAN, answer);
        if (status == CG_OK)
            add_part(laws[i].weight, closure - spread->closure,
                     sigma_of(spread, &other, answer), &answer->laws);
        else
            lost += laws[i].weight;
    }
    if (answer->laws.parts == 0)
        add_part(0.0, 0.0, answer->sigma, &answer->laws);
    hand_over(lost, FAR_OUT, &answer->laws);
    return CG_OK;
}
