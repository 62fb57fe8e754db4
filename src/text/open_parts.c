#define _POSIX_C_SOURCE 200809L /* sigaction */
#include "open_parts.h"

#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static const int ends[] = {SIGINT, SIGTERM, SIGHUP, SIGPIPE};
enum { ENDS = sizeof ends / sizeof ends[0] };

static char open_part[CG_OPEN_PARTS][CG_OPEN_PART_PATH];
static volatile sig_atomic_t is_open[CG_OPEN_PARTS];
static char passing[CG_OPEN_PART_PATH]; /* "": no folder passes */
static volatile sig_atomic_t working;   /* 0: no child */
static sigset_t before_wait;

/* A folder goes when all in it has gone, so there are three rounds: its files,
 * its folders, itself. */
static void remove_and_end(int ended_by)
{
    if (working > 0 && kill((pid_t)working, SIGKILL) == 0)
        waitpid((pid_t)working, NULL, 0); /* it makes no more files */
    for (int i = 0; i < 3 * CG_OPEN_PARTS; i++) {
        const char *path = open_part[i % CG_OPEN_PARTS];
        if (is_open[i % CG_OPEN_PARTS] && unlink(path) != 0)
            rmdir(path);
    }
    signal(ended_by, SIG_DFL); /* ends the program as it would have */
    raise(ended_by);
}

/* Whoever watches a signal already, or ignores it, goes on doing so. */
static void catch_ends(void)
{
    struct sigaction action, before;
    memset(&action, 0, sizeof action);
    action.sa_handler = remove_and_end;
    sigfillset(&action.sa_mask);
    for (size_t i = 0; i < ENDS; i++)
        if (sigaction(ends[i], NULL, &before) == 0 &&
            before.sa_handler == SIG_DFL)
            sigaction(ends[i], &action, NULL);
}

void cg_open_parts_wait(void)
{
    sigset_t set;
    sigemptyset(&set);
    for (size_t i = 0; i < ENDS; i++)
        sigaddset(&set, ends[i]);
    sigprocmask(SIG_BLOCK, &set, &before_wait);
}

void cg_open_parts_go(void)
{
    sigprocmask(SIG_SETMASK, &before_wait, NULL);
}

void cg_open_parts_add(const char *path)
{
    catch_ends();
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

/* Whether a path is the passing folder or in it. */
static bool passes(const char *path)
{
    size_t length = strlen(passing);
    return length > 0 && strncmp(path, passing, length) == 0 &&
           (path[length] == '/' || path[length] == '\0');
}

void cg_open_parts_whole(const char *part, const char *final)
{
    cg_open_parts_drop(part);
    if (passes(final))
        cg_open_parts_add(final);
}

void cg_open_parts_pass(const char *folder)
{
    snprintf(passing, sizeof passing, "%s", folder);
    cg_open_parts_add(folder);
}

void cg_open_parts_passed(void)
{
    for (int i = 0; i < CG_OPEN_PARTS; i++)
        if (is_open[i] && passes(open_part[i]))
            is_open[i] = 0;
    passing[0] = '\0';
}

void cg_open_parts_child(pid_t child)
{
    working = child;
}
