/* sweep.dat: one row a point, written as the points are finished, in order. */
#ifndef CG_SWEEP_TABLE_H
#define CG_SWEEP_TABLE_H

#include <stdbool.h>

#include "answer.h"
#include "grid.h"
#include "table.h"

/* Which rows this run owns: [first, past) of the grid's points. */
struct cg_part {
    size_t number, of; /* K of N; 1 of 1 for the whole */
    size_t first, past;
};

/* Part K of N: whole blocks, so that the parts' tables in order are the whole
 * table.  CG_BAD_INPUT unless 1 <= K <= N. */
enum cg_status cg_part_set(size_t points, size_t number, size_t of,
                           struct cg_part *part, struct cg_error *error);

/* Name of the part's table: "sweep.dat", or "sweep_02_of_10.dat". */
void cg_part_name(const struct cg_part *part, char name[64]);

/* A finished point as one line: the varied values, every summary key, and a
 * word for the outcome, "ok" or, without an answer, what it was; the reason
 * then stands in a comment above the line. */
struct cg_sweep_row {
    char text[2048];
    char why[512]; /* "": there is an answer */
};

void cg_sweep_row_write(struct cg_table *table, const struct cg_sweep_row *row);

/* The reason in such a comment, within the line; NULL for any other line. */
const char *cg_sweep_why(const char *line);

/* What was taken over from an earlier table. */
struct cg_sweep_earlier {
    size_t rows;
    struct cg_sweep_row first, last; /* of them */
};

/* What a sweep is of: `base`, the case before the settings vary. */
void cg_sweep_of(const char *config, const struct cg_case *base,
                 const struct cg_grid *grid, struct cg_table_of *of);

/* Opens the table in `dir`; each part has its head, and `cat` makes the whole,
 * with heads in between that are comments.  `resume`: takes over the whole rows
 * of an earlier, shorter table of the same grid and of, also of one that a
 * killed run left as NAME.part; CG_BAD_INPUT when that table is of another
 * sweep. */
enum cg_status
cg_sweep_table_open(const char *dir, const struct cg_table_of *of,
                    const struct cg_grid *grid, const struct cg_part *part,
                    bool resume, struct cg_table **table,
                    struct cg_sweep_earlier *earlier, struct cg_error *error);

/* With `answer` NULL: `why` there is none. */
void cg_sweep_row_set(struct cg_sweep_row *row, const struct cg_grid *grid,
                      size_t point, const struct cg_case *c,
                      const struct cg_answer *answer,
                      const struct cg_error *why);

/* A row of the table taken apart again. */
enum { CG_SWEEP_KEYS = 64, CG_SWEEP_WORDS = 4 };
struct cg_sweep_point {
    const char *setting[CG_AXES];   /* the varied values, as given */
    double value[CG_SWEEP_KEYS];    /* as cg_summary_keys lists them; NaN */
    const char *word[CG_SWEEP_WORDS]; /* as cg_summary_words lists them */
    const char *outcome;            /* a word, "ok" */
};

/* Splits a line of the table in place.  False when it is no row of this
 * grid's. */
bool cg_sweep_row_split(char *line, const struct cg_grid *grid,
                        struct cg_sweep_point *point);

/* A word by its key's name; "" for a key that is not there. */
const char *cg_sweep_word(const struct cg_sweep_point *point, const char *key);

/* A value by its key's name; NaN for a key that is not there. */
double cg_sweep_value(const struct cg_sweep_point *point, const char *key);

#endif
