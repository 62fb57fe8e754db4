/* The keys of summary.dat; reports and sweeps read the same list. */
#ifndef CG_SUMMARY_H
#define CG_SUMMARY_H

#include <stddef.h>

#include "answer.h"
#include "table.h"

struct cg_summary_key {
    const char *key, *unit;
    double (*get)(const struct cg_case *c, const struct cg_answer *answer);
};

const struct cg_summary_key *cg_summary_keys(size_t *count);

/* Behind them, keys whose value is a text; a table holds it as one word. */
struct cg_summary_word {
    const char *key;
    const char *(*get)(const struct cg_answer *answer);
};

const struct cg_summary_word *cg_summary_words(size_t *count);

/* All of them as rows of a table of keys. */
void cg_summary_put(struct cg_table *table, const struct cg_case *c,
                    const struct cg_answer *answer);

#endif
