/* A config written anew with some settings changed.
 *
 * What the old one says is taken over, includes and lists too, but for its
 * comments and for what was found in the old engine (evidence, evidence_from),
 * which is no longer that engine.  A changed line says in a comment what it
 * was. */
#ifndef CG_CONFIG_CHANGED_H
#define CG_CONFIG_CHANGED_H

#include <stdbool.h>
#include <stdio.h>

#include "setting.h"
#include "status.h"

enum { CG_CHANGED_TEXT = 512 };

struct cg_config_change {
    const struct cg_setting *setting;
    const struct cg_case *c;       /* which has its value; the caller's */
    char comment[CG_CHANGED_TEXT]; /* as it is; made plain here */
};

/* Writes the config `from` so changed to `out`; each setting once among the
 * changes, numbers in the unit shown first, names and words as data.
 * *left_out: whether evidence was.  CG_BAD_INPUT, CG_FILE and CG_NO_MEMORY as
 * cg_config_read; a full disk shows at `out`. */
enum cg_status cg_config_changed_write(FILE *out, const char *from,
                                       const struct cg_config_change *change,
                                       size_t changes, bool *left_out,
                                       struct cg_error *error);

#endif
