#include "aside.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

#include "open_parts.h"

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
    cg_open_parts_add(aside->part);
    aside->file = fopen(aside->part, "w");
    if (aside->file != NULL)
        return CG_OK;
    cg_open_parts_drop(aside->part);
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
    cg_open_parts_drop(aside->part);
    return status;
}
