#define _POSIX_C_SOURCE 200809L /* O_DIRECTORY, O_CLOEXEC */
#include "hold.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "open_parts.h"

enum { TRIES = 16 }; /* at a folder that others make and remove meanwhile */

/* Whether the folder still stands at its path, which may be a link. */
static bool stands(const struct cg_hold *hold)
{
    struct stat own, there;
    return fstat(hold->folder, &own) == 0 && stat(hold->path, &there) == 0 &&
           own.st_dev == there.st_dev && own.st_ino == there.st_ino;
}

static enum cg_status busy(const struct cg_hold *hold, struct cg_error *error)
{
    return cg_error_set(error, CG_FILE,
                        "%s: another run is writing into this folder; wait for "
                        "its end, or choose another folder",
                        hold->path);
}

/* One try; *again: the folder went while it was opened. */
static enum cg_status try_hold(bool shared, struct cg_hold *hold, bool *again,
                               struct cg_error *error)
{
    enum cg_status status = cg_part_file_folder(hold->path, &hold->made, error);
    if (status != CG_OK)
        return status;
    hold->folder = open(hold->path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    *again = hold->folder < 0 && errno == ENOENT;
    if (hold->folder < 0)
        return cg_part_file_trouble(hold->path, "write into it", error);
    /* Where the file system knows no locks, the parts meet all the same. */
    if (flock(hold->folder, (shared ? LOCK_SH : LOCK_EX) | LOCK_NB) != 0 &&
        errno == EWOULDBLOCK)
        status = busy(hold, error);
    else
        *again = !stands(hold);
    if (status == CG_OK && !*again)
        return CG_OK;
    close(hold->folder);
    hold->folder = -1;
    return status;
}

enum cg_status cg_hold_begin(const char *dir, bool shared, struct cg_hold *hold,
                             struct cg_error *error)
{
    enum cg_status status = CG_OK;
    bool again = true;
    hold->folder = -1;
    if (snprintf(hold->path, sizeof hold->path, "%s", dir) >= CG_PART_FILE_PATH)
        return cg_error_set(error, CG_FILE, "%.40s...: the name is too long",
                            dir);
    cg_open_parts_wait();
    for (int i = 0; i < TRIES && again; i++) {
        again = false;
        status = try_hold(shared, hold, &again, error);
    }
    hold->made = hold->made && !shared; /* else others count on it */
    if (status == CG_OK && hold->made)
        cg_open_parts_add(hold->path);
    cg_open_parts_go();
    if (status == CG_OK && hold->folder < 0)
        status = busy(hold, error);
    return status;
}

void cg_hold_end(struct cg_hold *hold)
{
    if (hold->folder < 0)
        return;
    if (hold->made) {
        rmdir(hold->path); /* stays with anything in it */
        cg_open_parts_drop(hold->path);
    }
    close(hold->folder);
    hold->folder = -1;
}
