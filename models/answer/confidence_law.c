/* The laws that samples are drawn from. */
#include <stdlib.h>

#include "confidence_work.h"
#include "law.h"

static enum cg_status add_law(struct cg_confidence_work *work,
                              const struct cg_law *own,
                              const struct cg_law *law, struct cg_error *error)
{
    struct cg_confidence_law *to = &work->of_law[work->laws++];
    to->c = work->spread->c;
    to->weight = law != NULL ? law->weight : 1.0;
    if (law != own)
        cg_law_take(own, law, &to->c);
    return cg_input_law_fill(&to->c, work->row, work->inputs, &to->law, error);
}

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
