#define _XOPEN_SOURCE 700 /* opendir, readlink, realpath */

#include "data_folder.h"

#include <dirent.h>
#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Without opendir, which wants memory: a lack of it is not a lack of files. */
static bool exists(const char *folder)
{
    struct stat what;
    return stat(folder, &what) == 0 && S_ISDIR(what.st_mode);
}

/* The folder the running program stands in; false where the system does not
 * tell (it does on Linux). */
static bool program_folder(char folder[CG_PATH_LENGTH])
{
    ssize_t length = readlink("/proc/self/exe", folder, CG_PATH_LENGTH - 1);
    if (length <= 0)
        return false;
    folder[length] = '\0';
    char *slash = strrchr(folder, '/');
    if (slash == NULL)
        return false;
    *slash = '\0';
    return true;
}

static bool beside_program(const char *program, const char *place,
                           char path[CG_PATH_LENGTH])
{
    int length = snprintf(path, CG_PATH_LENGTH, "%s/%s", program, place);
    return length > 0 && length < CG_PATH_LENGTH && exists(path);
}

void cg_data_folder(char path[CG_PATH_LENGTH])
{
    const char *chosen = getenv("COLDGAP_CONFIGS");
    if (chosen == NULL || chosen[0] == '\0') {
        char program[CG_PATH_LENGTH];
        if (program_folder(program) &&
            (beside_program(program, CG_CONFIGS_FROM_PROGRAM, path) ||
             beside_program(program, "configs", path)))
            return;
        chosen = exists(CG_CONFIGS_INSTALL) ? CG_CONFIGS_INSTALL
                                            : "/usr/share/coldgap/configs";
    }
    snprintf(path, CG_PATH_LENGTH, "%s", chosen);
}

enum cg_status cg_data_path(const char *folder, const char *name,
                            char path[CG_PATH_LENGTH], struct cg_error *error)
{
    char data[CG_PATH_LENGTH];
    cg_data_folder(data);
    int length =
        snprintf(path, CG_PATH_LENGTH, "%s/%s/%s.cfg", data, folder, name);
    if (length < 0 || length >= CG_PATH_LENGTH)
        return cg_error_set(error, CG_BAD_INPUT,
                            "the path of the shipped configs is too long");
    return CG_OK;
}

void cg_plots_folder(char path[CG_PATH_LENGTH])
{
    const char *chosen = getenv("COLDGAP_PLOTS");
    if (chosen != NULL && chosen[0] != '\0')
        snprintf(path, CG_PATH_LENGTH, "%s", chosen);
    else if (!cg_plots_path(".", path))
        path[0] = '\0';
}

bool cg_plots_path(const char *name, char path[CG_PATH_LENGTH])
{
    char data[CG_PATH_LENGTH];
    cg_data_folder(data);
    char *real = realpath(data, NULL); /* a build folder's is a link */
    char *slash = real != NULL ? strrchr(real, '/') : NULL;
    int length = -1;
    if (slash != NULL)
        length = snprintf(path, CG_PATH_LENGTH, "%.*s/plots/%s",
                          (int)(slash - real), real, name);
    free(real);
    return length > 0 && length < CG_PATH_LENGTH && access(path, R_OK) == 0;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(a, b);
}

static void keep_name(struct cg_data_names *names, const char *file)
{
    size_t length = strlen(file);
    if (length <= 4 || strcmp(file + length - 4, ".cfg") != 0 ||
        length - 4 >= sizeof names->name[0] || names->count == CG_DATA_NAMES)
        return;
    char *name = names->name[names->count++];
    memcpy(name, file, length - 4);
    name[length - 4] = '\0';
}

enum cg_status cg_data_list(const char *folder, struct cg_data_names *names,
                            struct cg_error *error)
{
    char data[CG_PATH_LENGTH], path[CG_PATH_LENGTH];
    cg_data_folder(data);
    int length = snprintf(path, sizeof path, "%s/%s", data, folder);
    DIR *dir = length > 0 && length < CG_PATH_LENGTH ? opendir(path) : NULL;
    if (dir == NULL)
        return cg_error_set(error, CG_FILE,
                            "%s: cannot open the shipped configs: %s; "
                            "COLDGAP_CONFIGS may name their folder",
                            path, strerror(errno));
    names->count = 0;
    for (struct dirent *entry; (entry = readdir(dir)) != NULL;)
        keep_name(names, entry->d_name);
    closedir(dir);
    qsort(names->name, names->count, sizeof names->name[0], by_name);
    for (size_t i = 0; i < names->count; i++)
        names->list[i] = names->name[i];
    return CG_OK;
}
