/* A report as one JSON object (RFC 8259), for programs. */
#ifndef CG_WRITE_JSON_H
#define CG_WRITE_JSON_H

#include <stdio.h>

#include "report.h"

/* Writes
 *   {"program": "coldgap", "version": ..., "run": ..., "title": ...,
 *    "cautions": [...], "summary": {KEY: {"value": ..., "unit": ...}},
 *    "first": [ITEM, ...], "rest": [ITEM, ...]}
 * An item has "is": one of answer verdict note say section part row table
 * figure step blank lines; with `drawings`, in place of a figure that the
 * program has drawn, a drawing: "name", "title", "words" for those who do not see
 * it, and "svg", a document by itself.  A quantity has "value" and "unit" in SI, and
 * "metric" and "inch" as shown.  A value that is not known is null.  UTF-8;
 * control characters and what is no UTF-8 are escaped or replaced.  Errors: as
 * cg_report_status; look at the file's error flag for the rest. */
enum cg_status cg_write_json(FILE *out, const struct cg_report *report,
                             bool drawings, struct cg_error *error);

#endif
