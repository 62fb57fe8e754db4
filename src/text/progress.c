#define _POSIX_C_SOURCE 200809L /* isatty, fileno */
#include "progress.h"

#include <stdio.h>
#include <time.h>
#include <unistd.h>

double cg_wall_clock(void)
{
    struct timespec now;
    timespec_get(&now, TIME_UTC);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

void cg_progress_begin(struct cg_progress *progress, const char *what,
                       size_t done, size_t total, bool quiet)
{
    double now = cg_wall_clock();
    *progress = (struct cg_progress){what, done, done, total, now, now,
                                     !quiet && isatty(fileno(stderr)) != 0};
}

void cg_progress_tell(struct cg_progress *progress, size_t done)
{
    progress->done = done;
    double now = cg_wall_clock();
    if (!progress->on || now < progress->shown + 0.2)
        return;
    progress->shown = now;
    double made = (double)(done - progress->begun_at);
    double left = made > 0.0 ? (now - progress->start) *
                                   (double)(progress->total - done) / made
                             : 0.0;
    fprintf(stderr, "\r%zu of %zu %s, about %.0f s left   ", done,
            progress->total, progress->what, left);
    fflush(stderr);
}

void cg_progress_end(struct cg_progress *progress)
{
    if (progress->on)
        fprintf(stderr, "\r%60s\r", "");
}
