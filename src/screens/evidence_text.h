/* What evidence says and what it taught in words, for screen and page. */
#ifndef CG_EVIDENCE_TEXT_H
#define CG_EVIDENCE_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "updated_case.h"

enum { CG_EVIDENCE_TEXT = 96 };

/* "liner at 10 mm", "ends touched at 0.3 mm"; "212 C +- 5 K" of a
 * temperature. */
void cg_evidence_entry_text(const struct cg_evidence_entry *entry, bool inch,
                            char text[CG_EVIDENCE_TEXT]);
void cg_evidence_measured_text(const struct cg_evidence_entry *entry,
                               bool inch, char text[CG_EVIDENCE_TEXT]);

/* Whether an input of uncertain.h moved or narrowed enough to be shown, and it
 * against its setting, before and after: "x 1.13 +- 11 %". */
bool cg_evidence_moved(const struct cg_updated_case *updated, size_t input);
void cg_evidence_input_text(const struct cg_updated_case *updated, size_t input,
                            char before[CG_EVIDENCE_TEXT],
                            char after[CG_EVIDENCE_TEXT]);

/* What to say when none did. */
const char *cg_evidence_little(void);

/* What it holds for, a newline where a screen breaks it. */
const char *cg_evidence_holds(void);

#endif
