#define _POSIX_C_SOURCE 200809L /* sigaction */
#include "open_parts.h"

#include <signal.h>
#include <string.h>
#include <unistd.h>

static char open_part[CG_OPEN_PARTS][CG_OPEN_PART_PATH];
static volatile sig_atomic_t is_open[CG_OPEN_PARTS];

static void remove_and_end(int ended_by)
{
    for (int i = 0; i < CG_OPEN_PARTS; i++)
        if (is_open[i])
            unlink(open_part[i]);
    signal(ended_by, SIG_DFL); /* ends the program as it would have */
    raise(ended_by);
}

/* Whoever watches a signal already, or ignores it, goes on doing so. */
static void watch_ends(void)
{
    static const int ends[] = {SIGINT, SIGTERM, SIGHUP, SIGPIPE};
    struct sigaction action, before;
    memset(&action, 0, sizeof action);
    action.sa_handler = remove_and_end;
    sigfillset(&action.sa_mask);
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++)
        if (sigaction(ends[i], NULL, &before) == 0 &&
            before.sa_handler == SIG_DFL)
            sigaction(ends[i], &action, NULL);
}

void cg_open_parts_add(const char *path)
{
    watch_ends();
    for (int i = 0; i < CG_OPEN_PARTS; i++)
        if (!is_open[i]) {
            strcpy(open_part[i], path);
            is_open[i] = 1;
            return;
        }
}

void cg_open_parts_drop(const char *path)
{
    for (int i = 0; i < CG_OPEN_PARTS; i++)
        if (is_open[i] && strcmp(open_part[i], path) == 0)
            is_open[i] = 0;
}
