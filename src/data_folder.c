#define _POSIX_C_SOURCE 200809L /* opendir */

#include "data_folder.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int exists(const char *folder)
{
    DIR *dir = opendir(folder);
    if (dir == NULL)
        return 0;
    closedir(dir);
    return 1;
}

const char *cg_data_folder(void)
{
    const char *chosen = getenv("COLDGAP_CONFIGS");
    if (chosen != NULL && chosen[0] != '\0')
        return chosen;
    return exists(CG_CONFIGS_BUILD) ? CG_CONFIGS_BUILD : CG_CONFIGS_INSTALL;
}

enum cg_status cg_data_path(const char *folder, const char *name,
                            char path[CG_PATH_LENGTH], struct cg_error *error)
{
    int length = snprintf(path, CG_PATH_LENGTH, "%s/%s/%s.cfg",
                          cg_data_folder(), folder, name);
    if (length < 0 || length >= CG_PATH_LENGTH)
        return cg_error_set(error, CG_BAD_INPUT,
                            "the path of the shipped configs is too long");
    return CG_OK;
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
    char path[CG_PATH_LENGTH];
    int length = snprintf(path, sizeof path, "%s/%s", cg_data_folder(), folder);
    DIR *dir = length > 0 && length < CG_PATH_LENGTH ? opendir(path) : NULL;
    if (dir == NULL)
        return cg_error_set(error, CG_FILE,
                            "%s: cannot open the shipped configs: %s", path,
                            strerror(errno));
    names->count = 0;
    for (struct dirent *entry; (entry = readdir(dir)) != NULL;)
        keep_name(names, entry->d_name);
    closedir(dir);
    qsort(names->name, names->count, sizeof names->name[0], by_name);
    for (size_t i = 0; i < names->count; i++)
        names->list[i] = names->name[i];
    return CG_OK;
}
