/* How far long work has come, on a terminal's stderr: nothing elsewhere. */
#ifndef CG_PROGRESS_H
#define CG_PROGRESS_H

#include <stdbool.h>
#include <stddef.h>

struct cg_progress {
    const char *what; /* "points" */
    size_t done, begun_at, total;
    double start, shown; /* [s] */
    bool on;
};

/* Wall clock [s] since some fixed time. */
double cg_wall_clock(void);

/* Begins at `done` of `total`; silent when quiet or stderr is no terminal. */
void cg_progress_begin(struct cg_progress *progress, const char *what,
                       size_t done, size_t total, bool quiet);
/* Tells, at most five times a second, and clears the line at the end. */
void cg_progress_tell(struct cg_progress *progress, size_t done);
void cg_progress_end(struct cg_progress *progress);

#endif
