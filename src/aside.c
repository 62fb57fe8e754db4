#define _POSIX_C_SOURCE 200809L /* sigaction, unlink */
#include "aside.h"

#include <errno.h>
#include <signal.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Parts that are open now, for a signal that ends the program to remove. */
enum { OPEN_MOST = 8 };
static char open_part[OPEN_MOST][CG_ASIDE_PATH];
static volatile sig_atomic_t is_open[OPEN_MOST];

static void remove_and_end(int ended_by)
{
    for (int i = 0; i < OPEN_MOST; i++)
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

/* Keeps the name; with none of the places free a signal leaves that part. */
static void note_open(const char *part)
{
    watch_ends();
    for (int i = 0; i < OPEN_MOST; i++)
        if (!is_open[i]) {
            strcpy(open_part[i], part);
            is_open[i] = 1;
            return;
        }
}

static void note_closed(const char *part)
{
    for (int i = 0; i < OPEN_MOST; i++)
        if (is_open[i] && strcmp(open_part[i], part) == 0)
            is_open[i] = 0;
}

enum cg_status cg_aside_trouble(const char *path, const char *verb,
                                struct cg_error *error)
{
    return cg_error_set(error, CG_FILE, "%s: could not %s: %s", path, verb,
                        strerror(errno));
}

enum cg_status cg_aside_open(const char *dir, const char *name,
                             struct cg_aside *aside, struct cg_error *error)
{
    int length = snprintf(aside->final, CG_ASIDE_PATH, "%s/%s", dir, name);
    if (length < 0 || length > CG_ASIDE_PATH - 8)
        return cg_error_set(error, CG_FILE, "%s: the name is too long", dir);
    if (mkdir(dir, 0777) != 0 && errno != EEXIST)
        return cg_aside_trouble(dir,
                         errno == ENOENT
                             ? "create the folder (make the one above first)"
                             : "create the folder",
                         error);
    snprintf(aside->part, CG_ASIDE_PATH, "%.*s.part", CG_ASIDE_PATH - 8,
             aside->final);
    note_open(aside->part);
    aside->file = fopen(aside->part, "w");
    if (aside->file != NULL)
        return CG_OK;
    note_closed(aside->part);
    return cg_aside_trouble(aside->part, "write", error);
}

enum cg_status cg_aside_close(struct cg_aside *aside, enum cg_status status,
                              struct cg_error *error)
{
    int bad = ferror(aside->file);
    if (fclose(aside->file) != 0)
        bad = 1;
    if (status == CG_OK && bad)
        status = cg_aside_trouble(aside->part, "write", error);
    if (status == CG_OK && rename(aside->part, aside->final) != 0)
        status = cg_aside_trouble(aside->final, "write", error);
    if (status != CG_OK)
        remove(aside->part);
    note_closed(aside->part);
    return status;
}
