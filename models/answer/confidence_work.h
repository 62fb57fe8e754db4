/* What a confidence works on.  Private to the confidence. */
#ifndef CG_CONFIDENCE_WORK_H
#define CG_CONFIDENCE_WORK_H

#include "confidence.h"
#include "input_law.h"
#include "spread.h"
#include "uncertain.h"

struct cg_confidence_work {
    const struct cg_case *c;
    struct cg_spread *spread;
    struct cg_sample *sample;
    unsigned long seed;
    /* Those with a spread; first the `moving` that move the case, then those
     * that add to the closure. */
    const struct cg_uncertain *input[CG_SAMPLE_INPUTS];
    size_t row[CG_SAMPLE_INPUTS]; /* of cg_uncertains */
    size_t inputs, moving;
    size_t laws; /* more than one: which is one more number drawn, the last */
    struct cg_confidence_law {
        double weight;
        struct cg_case c;        /* to be moved */
        double shift; /* what its law of the film makes besides [m] */
        struct cg_input_law law; /* how its inputs go together */
    } *of_law;                   /* [laws], the case's own first */
    bool gas_side_same; /* none of them moves the cycle */
};

struct cg_confidence_workspace {
    struct cg_duty_run *sample;
    struct cg_duty_run *swap; /* of the sample with one input swapped */
};

/* Fills of_law from work->c and the spread. */
enum cg_status cg_confidence_laws(struct cg_confidence_work *work,
                                  struct cg_error *error);

/* Which law a number between 0 and 1 draws. */
size_t cg_confidence_law_drawn(const struct cg_confidence_work *work,
                               double part);

/* Runs sample `item`; workspace->sample then holds its run. */
enum cg_status cg_confidence_sample(const struct cg_confidence_work *work,
                                    struct cg_confidence_workspace *workspace,
                                    size_t item, double *closure,
                                    struct cg_error *error);

#endif
