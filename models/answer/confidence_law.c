/* The laws that samples are drawn from. */
#include <stdlib.h>
#include <string.h>

#include "confidence_work.h"
#include "law.h"

/* The calibrated pair with one's gas heat and the other's film; NULL: none. */
static const struct cg_law *pair(const struct cg_law *gas,
                                 const struct cg_law *film)
{
    size_t count;
    const struct cg_law *laws = cg_laws(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(laws[i].heat_transfer, gas->heat_transfer) == 0 &&
            laws[i].film_law == film->film_law)
            return &laws[i];
    return NULL;
}

/* What another law of the film makes of the closure [m]. */
static enum cg_status film_shift(const struct cg_spread *spread,
                                 const struct cg_law *own,
                                 const struct cg_law *with, double *shift,
                                 struct cg_error *error)
{
    struct cg_case other = spread->c;
    struct cg_duty_run *workspace = NULL;
    double closure;
    enum cg_status status = cg_spread_workspace(spread, &workspace, error);
    cg_law_take(own, with, &other);
    if (status == CG_OK)
        status = cg_spread_closure(&other, spread, NULL, workspace, &closure,
                                   error);
    cg_duty_run_free(workspace);
    if (status == CG_OK)
        *shift = closure - spread->closure;
    return status;
}

static enum cg_status add_law(struct cg_confidence_work *work,
                              const struct cg_law *own,
                              const struct cg_law *law, struct cg_error *error)
{
    struct cg_confidence_law *to = &work->of_law[work->laws++];
    to->c = work->spread->c;
    to->weight = law != NULL ? law->weight : 1.0;
    if (law != own) {
        const struct cg_law *near = pair(law, own), *film = pair(own, law);
        enum cg_status status = CG_NUMERICAL;
        if (law->film_law != own->film_law && near != NULL && film != NULL)
            status = film_shift(work->spread, own, film, &to->shift, error);
        if (status == CG_NO_MEMORY)
            return status;
        cg_law_take(own, status == CG_OK ? near : law, &to->c);
    }
    return cg_input_law_fill(&to->c, work->row, work->inputs, &to->law, error);
}

/* A law of the film other than the case's own is not run in each sample, for a
 * computed one would take most of the time: what it makes of the nominal closure
 * is added to samples by the case's own (cg_spread_laws adds likewise). */
enum cg_status cg_confidence_laws(struct cg_confidence_work *work,
                                  struct cg_error *error)
{
    size_t count;
    const struct cg_law *laws = cg_laws(&count),
                        *own = cg_law_of(&work->spread->c);
    work->of_law = calloc(count, sizeof *work->of_law);
    if (work->of_law == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = add_law(work, own, own, error);
    for (size_t i = 0; own != NULL && i < count && status == CG_OK; i++)
        if (&laws[i] != own && laws[i].weight > 0.0)
            status = add_law(work, own, &laws[i], error);
    return status;
}

size_t cg_confidence_law_drawn(const struct cg_confidence_work *work,
                               double part)
{
    size_t law = 0;
    for (; law + 1 < work->laws && part >= work->of_law[law].weight; law++)
        part -= work->of_law[law].weight;
    return law;
}
