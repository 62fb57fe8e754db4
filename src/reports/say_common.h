/* Sentences that several reports say, each told once. */
#ifndef CG_SAY_COMMON_H
#define CG_SAY_COMMON_H

#include <stdbool.h>

#include "answer.h"
#include "report.h"

/* By how much at most the first-order allowance falls short of the sampled one,
 * on the engines in configs/engines/ [m]: inputs in per cent are lognormal,
 * which bends the closure upwards.  Measured; tests/cli/run_samples.sh checks
 * it. */
#define CG_FIRST_ORDER_SHORT 0.03e-3

struct cg_sentence {
    char text[400];
};

/* What a gap given comes to, a verb and more: "fits", "is TOO SMALL", "is BELOW
 * THE SHOP RULE". */
const char *cg_say_fits(enum cg_fits fits, enum cg_advice_from from);

/* What stands beside the model: "shop rule", or "maker" where that says
 * more. */
const char *cg_say_rule(const struct cg_ring_advice *advice);

/* Where a figure to file to comes from, beside it: "the shop rule; the model
 * needs 0.35 mm".  `need` [m] and the duty that it is needed in. */
struct cg_sentence cg_say_from(const struct cg_ring_advice *advice, double need,
                               const char *duty, bool inch);

/* That the shop rule has an end, after its name. */
struct cg_sentence cg_say_rule_end(bool inch);

/* Where no gap that a config may give will do (verdict->beyond). */
struct cg_sentence cg_say_beyond(const struct cg_verdict *verdict,
                                 const struct cg_gap_sum *sum, bool inch);

/* What no gap needed has in it. */
const char *cg_say_left_out(const struct cg_case *c);

/* "coolant"; "air". */
const char *cg_say_outside(const struct cg_case *c);

/* "load 0.80"; "throttle shut". */
struct cg_sentence cg_say_load(double load);

/* That coldgap does not size skirts. */
const char *cg_say_no_skirts(void);

/* Where the model's cold skirt clearance lies: "below", "in" or "above" the
 * trade's band, which is given; "-" where the trade has none. */
const char *cg_say_skirt_lies(const struct cg_skirt_answer *skirt);

/* What the first-order allowance may lack. */
struct cg_sentence cg_say_first_order(bool inch);
void cg_say_gaps_first_order(struct cg_report *report);

/* Rows of cylinders, bore and stroke. */
void cg_say_size(struct cg_report *report, const struct cg_case *c);

/* Rows of air and choke, where there are such. */
void cg_say_cooling(struct cg_report *report, const struct cg_case *c);

/* A note: where in a barrel with a choke gaps are measured. */
void cg_say_gap_place(struct cg_report *report, const struct cg_case *c);

/* Rows: cylinders, bore, stroke, boost, duty. */
void cg_say_engine(struct cg_report *report, const struct cg_case *c);

#endif
