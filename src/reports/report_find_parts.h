/* The parts of the report of `find`, a file each.  None can fail but for memory
 * (cg_report_status). */
#ifndef CG_REPORT_FIND_PARTS_H
#define CG_REPORT_FIND_PARTS_H

#include "answer.h"
#include "find_chart.h"
#include "report.h"
#include "updated_case.h"

/* The figures for programs: the keys of summary.dat. */
void cg_report_find_keys(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer);

/* The engine, its parts, the duty. */
void cg_report_find_engine(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer);

/* What to file to, the verdict on what was given, and why. */
void cg_report_find_first(struct cg_report *report,
                          const struct cg_updated_case *updated,
                          const struct cg_answer *answer,
                          const struct cg_answer *without);

/* The second half of that: what it is for, verdicts, evidence, duties, notes. */
void cg_report_find_judged(struct cg_report *report,
                           const struct cg_updated_case *updated,
                           const struct cg_answer *answer,
                           const struct cg_answer *without);

/* Limits of the trade and the textbook that the duty passes, as notes. */
void cg_report_find_notes(struct cg_report *report, const struct cg_case *c,
                          const struct cg_answer *answer);

/* Their sources, and what boiling does, among the temperatures. */
void cg_report_find_limits(struct cg_report *report, const struct cg_case *c,
                           const struct cg_extremes *extremes);

/* The sum of the gap needed and the tightest instant. */
void cg_report_find_sum(struct cg_report *report, const struct cg_case *c,
                        const struct cg_answer *answer,
                        const struct cg_find_chart *charts);

/* Temperatures, full load, films, the ledger of heat. */
void cg_report_find_heat(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer);

/* Nitrous and spray at full load; nothing without them. */
void cg_report_find_brought(struct cg_report *report, const struct cg_case *c,
                            const struct cg_performance *full);

void cg_report_find_film(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer);

/* What makes it uncertain, the correlations, the samples. */
void cg_report_find_sure(struct cg_report *report,
                         const struct cg_updated_case *updated,
                         const struct cg_answer *answer,
                         const struct cg_find_chart *charts);

/* What evidence wants to be seen first; nothing without it. */
void cg_report_find_evidence_notes(struct cg_report *report,
                                   const struct cg_updated_case *updated,
                                   const struct cg_answer *answer,
                                   const struct cg_answer *without);

/* What was measured and what it taught; nothing without evidence. */
void cg_report_find_evidence(struct cg_report *report,
                             const struct cg_updated_case *updated,
                             const struct cg_answer *without);

/* What was taken of logged runs and long lists of segments, and what thinning
 * moves; nothing without them. */
void cg_report_find_logs(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer);

/* The skirt clearance as the config has it, or as it was chosen. */
void cg_report_find_skirt(struct cg_report *report, const struct cg_case *c,
                          const struct cg_skirt_answer *skirt);

void cg_report_find_piston(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer);

#endif
