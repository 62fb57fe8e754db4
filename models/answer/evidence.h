/* What was measured on an engine teaches its model: the uncertain inputs
 * (uncertain.h) are moved and their spreads narrowed, with their joint law
 * (input_law.h) as what was known before (posterior.h).
 *
 * An entry is a temperature of one body, at an instant or the highest of the
 * duty; or what is read on the engine settled at one speed and load (a probe in
 * the exhaust collector, the coolant's share of the fuel's energy); or the sign
 * that the top ring's ends touched, or did not, at a known cold gap.  It was
 * found in a run: the engine through some duty.
 *
 * Inputs are of three kinds.  What the engine is (contacts, films, expansion,
 * the factor on the gas-side heat) is the same in every run, and is learned.
 * The conditions of a run (boost held, coolant, oil and air temperature) are
 * each run's own: they blur what a run says, and stay as uncertain as before.
 * Errors of the gap and bore as measured blur the sign alone.
 *
 * Every run is computed in full for its values, and varied by a part of a
 * standard deviation of each input for its slopes.
 *
 * Entries count as found independently of each other: one finding written down
 * twice narrows as if it had been made twice.
 *
 * Entries may be of other engines: they teach what engines share, which are the
 * same inputs, blurred by the scatter from engine to engine
 * (uncertainty.engine).  Of n entries of one other engine each takes n times
 * the scatter's variance, for they share it: all together they weigh as one.
 *
 * Ends that touched where the model leaves plenty do not contradict it: the
 * model is too low for the engine, and something that is not in it is at work.
 * The spreads of before are then widened (up to CG_EVIDENCE_WIDEST; the same
 * factor on all that the engine is, as R. T. Birge, Phys. Rev. 40 (1932) 207,
 * does with data that disagree by more than their errors), the inputs moved as
 * far as that takes them, straight on from the prior, and nothing is narrowed:
 * the closure of that run stays at least as uncertain as it was.  What is then
 * still missing is left to the gap itself (evidence_gap.h).
 *
 * Left out: whatever no input moves, such as differences around the
 * circumference, between cylinders, and of a plug's or probe's own place.
 */
#ifndef CG_EVIDENCE_H
#define CG_EVIDENCE_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"
#include "status.h"

enum {
    CG_EVIDENCE = CG_CLEAR_RUNS,
    CG_EVIDENCE_RUNS = 16,
    CG_EVIDENCE_FROM = 48,
    CG_EVIDENCE_DATE = 12,
    CG_EVIDENCE_LOG = 64
};

/* What a temperature that was measured can be, of gas and of any metal that is
 * to be run again: frozen to the reach of usual probes, and to where metal
 * softens in minutes (common practice, no source) [K]. */
#define CG_EVIDENCE_COLDEST 233.15
#define CG_EVIDENCE_HOTTEST_GAS 1573.15
#define CG_EVIDENCE_HOTTEST_METAL 973.15

enum cg_evidence_what {
    CG_EVIDENCE_CROWN,      /* at its centre, mean through its thickness */
    CG_EVIDENCE_GROOVE_TOP, /* piston at the top ring groove */
    CG_EVIDENCE_RING_TOP,   /* mean of the ring */
    CG_EVIDENCE_RING_SECOND,
    CG_EVIDENCE_LINER,   /* bore surface at `depth` */
    CG_EVIDENCE_PROBE,   /* reading of a probe in the exhaust collector */
    CG_EVIDENCE_COOLANT, /* heat to the coolant over the fuel's */
    CG_EVIDENCE_ENDS     /* of the top ring: touched or not */
};

struct cg_evidence_entry {
    enum cg_evidence_what what;
    size_t run;
    double temperature; /* measured [K] */
    double share;       /* of the fuel's energy, of the coolant [1] */
    double spread;      /* one standard deviation [K], of the gap [m], of the
                           share [1] */
    double time;        /* [s] into the duty; NaN: the highest of the duty */
    double depth;       /* below the deck, of the liner [m] */
    bool touched;
    double cold_gap; /* of the sign [m] */
    unsigned line;   /* where the user wrote it, for messages; 0: nowhere */
    char from[CG_EVIDENCE_FROM]; /* "builds[2]"; "": evidence[i] */
    char date[CG_EVIDENCE_DATE]; /* of the build; "": not given */
    size_t engine; /* 0: the engine itself, else another one's number */
    char log[CG_EVIDENCE_LOG];    /* that its temperature is of; "": typed */
    char column[CG_EVIDENCE_LOG]; /* in it, whose highest it is */
    double log_time;              /* of the log, when it was so high [s] */
};

struct cg_evidence {
    size_t entries;
    struct cg_evidence_entry entry[CG_EVIDENCE];
    size_t runs;
    struct cg_case *run; /* [runs], owned: the engine as it was measured */
    size_t engine[CG_EVIDENCE_RUNS]; /* that ran it, as in the entry */
    char notebook[CG_EVIDENCE_FROM]; /* that has the builds; "": none */
};

/* Default spreads of what is read on a steady engine, the model's own error in
 * them included (heat_balance.h, exhaust.h): wide; common practice, no source.
 */
#define CG_EVIDENCE_PROBE_SPREAD 40.0   /* [K] */
#define CG_EVIDENCE_COOLANT_SPREAD 0.25 /* of the share measured [1] */

/* Whether it is read on the engine while it runs at one speed and load, and not
 * found in a body. */
bool cg_evidence_is_steady(enum cg_evidence_what what);

/* How a temperature was found. */
struct cg_evidence_way {
    const char *name; /* "hardness" */
    double spread;    /* one standard deviation unless stated [K] */
    bool instants;    /* can tell the time; else shows the highest alone */
    const char *doc;
};

const struct cg_evidence_way *cg_evidence_ways(size_t *count);

/* "crown", ...; `ends` last. */
const char *cg_evidence_name(enum cg_evidence_what what);

/* What was learned.  Inputs are rows of cg_uncertains, in scores: standard
 * deviations of before. */
struct cg_learned {
    size_t entries;         /* 0: nothing to learn from, nothing changes */
    double mean[CG_INPUTS]; /* before: 0 */
    double covariance[CG_INPUTS][CG_INPUTS]; /* before: correlations */
    /* Of each entry, by the model [K], the share [1], or the hot gap left of a
     * sign [m]. */
    double before[CG_EVIDENCE], after[CG_EVIDENCE];
    /* Of a sign: the closure in its run, conditions as stated, by what was
     * learned [m]; else NaN. */
    double closure[CG_EVIDENCE];
    bool too_low;             /* the model is, for ends that touched */
    size_t lowest;            /* the entry that it is farthest too low for */
    struct cg_ends_case ends; /* by the engine's own entries */
};

/* Inputs moved by more than this many of their standard deviations of before
 * are not believed: the evidence or the config is wrong. */
#define CG_EVIDENCE_FARTHEST 4.0

/* Chance below which evidence is held to contradict the model or itself. */
#define CG_EVIDENCE_CHANCE 0.001

/* Where the model is too low the spreads are widened until ends that touched
 * are no more than this many standard deviations off; and by no more than
 * this. */
#define CG_EVIDENCE_LOW 2.0
#define CG_EVIDENCE_WIDEST 1.5

/* CG_BAD_INPUT, with the entries at odds, where they cannot be true at once:
 * ends that touched at a gap and stayed apart at a narrower one in no easier
 * run of the same engine, by a chance as below; and, touched or not as the
 * model is too low or not,
 * a measured value or sign that the prior and the rest of the evidence give a
 * chance below CG_EVIDENCE_CHANCE over the number of entries (Bonferroni), all
 * together below CG_EVIDENCE_CHANCE, or an input beyond CG_EVIDENCE_FARTHEST.
 * Else as cg_duty_run_create and cg_posterior_find. */
enum cg_status cg_evidence_learn(const struct cg_evidence *evidence,
                                 struct cg_learned *learned,
                                 struct cg_error *error);

/* How many entries are of other engines. */
size_t cg_evidence_others(const struct cg_evidence *evidence);

void cg_evidence_free(struct cg_evidence *evidence);

/* Moves the case's inputs, narrows their spreads and sets their correlations
 * as learned.  Cannot fail. */
void cg_learned_apply(const struct cg_learned *learned, struct cg_case *c);

#endif
