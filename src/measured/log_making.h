/* A course being made of the rows of a log: between log_course.c, log_fill.c,
 * log_run.c and log_highest.c. */
#ifndef CG_LOG_MAKING_H
#define CG_LOG_MAKING_H

#include "log_rows.h"

struct cg_log_making {
    const char *path;
    const struct cg_case *c;
    const struct cg_log_column *column;
    struct cg_log_rows rows;
    size_t first, last; /* of the rows taken */
    struct cg_log_note note;
    struct cg_problems *problems;
};

/* Of a row: its time [s] and place, and its load [1]. */
double cg_log_time(const struct cg_log_making *making, size_t row);
struct cg_where cg_log_at(const struct cg_log_making *making, size_t row);
double cg_log_load(const struct cg_log_making *making, const double *value);

/* Whether that column is named. */
bool cg_log_asked(const struct cg_log_making *making, enum cg_logged q);

/* Rows that a logger missed are a gap of every column: longer ones are told. */
void cg_log_check_steps(struct cg_log_making *making);

/* Fills the gaps of column q; longer ones are told. */
void cg_log_fill(struct cg_log_making *making, int q);

/* Leaves idling at both ends out but for a little, and all of an engine that
 * stands; sets `first` and `last`.  A log without a run is told. */
void cg_log_trim(struct cg_log_making *making);

/* Tells what the model cannot run, of the rows taken. */
void cg_log_check_run(struct cg_log_making *making);

/* What is asked for beside the run; `course` has all rows taken. */
void cg_log_find_highest(struct cg_log_making *making,
                         const struct cg_course *course);

#endif
