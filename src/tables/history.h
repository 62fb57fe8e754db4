/* What a duty run leaves for the tables: the instants of the history and, for
 * pictures along the stroke, the state of the bore at each of them.
 */
#ifndef CG_HISTORY_H
#define CG_HISTORY_H

#include <stddef.h>

#include "answer.h"
#include "case.h"
#include "duty_run.h"

struct cg_moment {
    double time, load, speed, manifold_pressure;
    double crown, groove_top, ring_top, ring_second; /* [K] */
    double ring_strain;      /* top ring [1] */
    struct cg_clearance clearance; /* of the piston */
    double skirt;            /* where it is gauged [K] */
    double *bore_strain;     /* [stations] */
    double *bore_temperature;/* surface [stations] [K] */
};

struct cg_history {
    const struct cg_case *c;
    const struct cg_duty_run *run;
    double interval;
    struct cg_moment *moment;
    size_t moments, capacity;
    double *depth; /* [depths], below the deck [m], for pictures along the
                      stroke: where the top ring turns, the stations between,
                      and where it turns below */
    size_t depths;
    struct cg_moment tightest; /* snapshot at the largest closure so far */
};

enum cg_status cg_history_begin(const struct cg_case *c,
                                const struct cg_duty_run *run,
                                struct cg_history *history,
                                struct cg_error *error);
void cg_history_free(struct cg_history *history);

/* An observer for cg_answer_extremes: keeps the table's instants and the
 * tightest. context is the history. */
enum cg_status cg_history_observe(void *context,
                                const struct cg_instant *instant,
                                struct cg_error *error);

/* Smallest hot gap over the top ring's travel and hot gap at its top [m] for
 * a cold gap [m]. */
void cg_history_gaps(const struct cg_history *history,
                     const struct cg_moment *moment, double cold_gap,
                     double *least, double *at_top);

#endif
