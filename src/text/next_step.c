#define _POSIX_C_SOURCE 200809L /* stat */

#include "next_step.h"

#include <stdbool.h>
#include <stdio.h>
#include <sys/stat.h>

#include "data_folder.h"
#include "plain_text.h"

/* From a source tree's root the path is as short as the README writes it. */
static const char *shortest(const char *path)
{
    static const char *const from_root = "plots/draw.sh";
    struct stat here, there;
    bool same = stat(from_root, &here) == 0 && stat(path, &there) == 0 &&
                here.st_dev == there.st_dev && here.st_ino == there.st_ino;
    return same ? from_root : path;
}

void cg_next_step_pictures(const char *out)
{
    char path[CG_PATH_LENGTH];
    if (cg_plots_path("draw.sh", path))
        printf("Pictures: sh %s %s\n", cg_plain_word(shortest(path)).text,
               cg_plain_word(out).text);
}
