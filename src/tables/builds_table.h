/* The figures of a build that two are compared by, and the tables of two. */
#ifndef CG_BUILDS_TABLE_H
#define CG_BUILDS_TABLE_H

#include "builds.h"
#include "quantity.h"
#include "table_of.h"

/* One figure, or one word. */
struct cg_build_figure {
    const char *key, *label;
    enum cg_kind kind;                           /* CG_SHOW_WORDS: a word */
    double (*get)(const struct cg_build *build); /* SI */
    const char *(*word)(const struct cg_build *build);
};

const struct cg_build_figure *cg_build_figures(size_t *count);

/* Whether it is another then and now, as it is shown.  Cannot fail. */
bool cg_build_figure_moves(const struct cg_build_figure *figure,
                           const struct cg_builds *builds);

/* What a changed setting is, as a config writes it, "not given" where it is
 * not; `i` counts builds->changes.  Cannot fail. */
enum { CG_BUILD_VALUE = 320 };
struct cg_build_value {
    char text[CG_BUILD_VALUE];
};
struct cg_build_value cg_build_then(const struct cg_builds *builds, size_t i,
                                    bool inch);
struct cg_build_value cg_build_now(const struct cg_builds *builds, size_t i,
                                   bool inch);

/* builds.dat, build_changes.dat and build_proof.dat; without `builds` earlier
 * ones are removed. */
enum cg_status cg_builds_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_builds *builds,
                                      struct cg_error *error);

#endif
