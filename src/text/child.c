#define _XOPEN_SOURCE 700 /* fork, setenv */

#include "child.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "open_parts.h"

static bool is_program(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISREG(about.st_mode) &&
           access(path, X_OK) == 0;
}

bool cg_child_find(const char *name, char *path, size_t size)
{
    const char *at = getenv("PATH");
    while (at != NULL && *at != '\0') {
        size_t length = strcspn(at, ":");
        if (at[0] == '/' && length + strlen(name) + 2 <= size) {
            memcpy(path, at, length);
            snprintf(path + length, size - length, "/%s", name);
            if (is_program(path))
                return true;
        }
        at += length + (at[length] == ':');
    }
    return false;
}

/* Only what is allowed after fork in a program with threads. */
static void become(const char *folder, char *const *words)
{
    int nothing = open("/dev/null", O_RDWR);
    if (nothing < 0 || dup2(nothing, 0) < 0 || dup2(nothing, 1) < 0 ||
        dup2(nothing, 2) < 0 || chdir(folder) != 0)
        _exit(127);
    alarm(CG_CHILD_SECONDS); /* outlives exec */
    execv(words[0], words);
    _exit(127);
}

int cg_child_run(const char *folder, char *const *words)
{
    int status;
    if (setenv("LC_ALL", "C.UTF-8", 1) != 0)
        return -1;
    fflush(NULL); /* nothing of ours is written twice */
    pid_t child = fork();
    if (child == 0)
        become(folder, words);
    if (child < 0)
        return -1;
    cg_open_parts_child(child);
    pid_t ended;
    do
        ended = waitpid(child, &status, 0);
    while (ended < 0 && errno == EINTR);
    cg_open_parts_child(0);
    if (ended < 0)
        return -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}
