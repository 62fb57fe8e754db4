#define _POSIX_C_SOURCE 200809L /* lstat, fdopen, O_NOFOLLOW, O_CLOEXEC */
#include "part_file.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "inputs.h"
#include "open_parts.h"

enum { TRIES = 16 }; /* at a part that others make and remove meanwhile */

enum cg_status cg_part_file_trouble(const char *path, const char *verb,
                                    struct cg_error *error)
{
    return cg_error_set(error, CG_FILE, "%s: could not %s: %s", path, verb,
                        strerror(errno));
}

enum cg_status cg_part_file_folder(const char *dir, bool *made,
                                   struct cg_error *error)
{
    *made = mkdir(dir, 0777) == 0;
    if (*made || errno == EEXIST)
        return CG_OK;
    return cg_part_file_trouble(
        dir,
        errno == ENOENT ? "create the folder (make the one above first)"
                        : "create the folder",
        error);
}

static enum cg_status set_names(const char *dir, const char *name,
                                struct cg_part_file *part_file,
                                struct cg_error *error)
{
    int length =
        snprintf(part_file->final, CG_PART_FILE_PATH, "%s/%s", dir, name);
    if (length < 0 || length > CG_PART_FILE_PATH - 8)
        return cg_error_set(error, CG_FILE, "%s: the name is too long", dir);
    snprintf(part_file->part, CG_PART_FILE_PATH, "%.*s.part",
             CG_PART_FILE_PATH - 8, part_file->final);
    return CG_OK;
}

static const char *kind(mode_t mode)
{
    if (S_ISLNK(mode))
        return "a symbolic link";
    if (S_ISDIR(mode))
        return "a folder";
    return S_ISFIFO(mode) ? "a named pipe" : "a device or socket";
}

static enum cg_status may_replace(const char *path, struct cg_error *error)
{
    struct stat there;
    if (lstat(path, &there) != 0)
        return errno == ENOENT ? CG_OK
                               : cg_part_file_trouble(path, "write", error);
    if (!S_ISREG(there.st_mode))
        return cg_error_set(error, CG_FILE,
                            "%s: could not write: it is %s, and only a plain "
                            "file is replaced",
                            path, kind(there.st_mode));
    if (cg_inputs_has(&there))
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: this run is made from that file and does not "
                            "write over it; choose another folder or name",
                            path);
    return CG_OK;
}

enum cg_status cg_part_file_may(const char *dir, const char *name,
                                struct cg_error *error)
{
    struct cg_part_file part_file;
    enum cg_status status = set_names(dir, name, &part_file, error);
    if (status == CG_OK)
        status = may_replace(part_file.final, error);
    if (status == CG_OK)
        status = may_replace(part_file.part, error);
    return status;
}

bool cg_part_file_is_at(int file, const char *path)
{
    struct stat own, there;
    return fstat(file, &own) == 0 && lstat(path, &there) == 0 &&
           own.st_dev == there.st_dev && own.st_ino == there.st_ino;
}

/* False when another run holds it.  Where the file system knows no locks nobody
 * holds anything. */
static bool hold(int file)
{
    return flock(file, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK;
}

static enum cg_status busy(const struct cg_part_file *part_file,
                           struct cg_error *error)
{
    return cg_error_set(error, CG_FILE,
                        "%s: another run is writing it; wait for its end, or "
                        "choose another folder or name",
                        part_file->final);
}

/* Opens and holds the part that a killed run left; -1 when there is none. */
static enum cg_status take_left(const struct cg_part_file *part_file, int *left,
                                struct cg_error *error)
{
    *left = -1;
    enum cg_status status = may_replace(part_file->part, error);
    if (status != CG_OK)
        return status;
    int file =
        open(part_file->part, O_RDWR | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
    if (file < 0)
        return errno == ENOENT
                   ? CG_OK
                   : cg_part_file_trouble(part_file->final, "write", error);
    if (!hold(file))
        status = busy(part_file, error);
    else if (cg_part_file_is_at(file,
                                part_file->part)) /* not renamed meanwhile */
        *left = file;
    if (*left < 0)
        close(file);
    return status;
}

/* Makes the part and holds it.  Whoever holds what stands under its name, and
 * nobody else, renames or removes it. */
static enum cg_status make_part(const struct cg_part_file *part_file, int *made,
                                struct cg_error *error)
{
    for (int i = 0; i < TRIES; i++) {
        int left;
        enum cg_status status = take_left(part_file, &left, error);
        if (status != CG_OK)
            return status;
        if (left >= 0 && unlink(part_file->part) != 0)
            status = cg_part_file_trouble(part_file->part, "remove", error);
        if (left >= 0)
            close(left);
        if (status != CG_OK)
            return status;
        *made =
            open(part_file->part,
                 O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
        if (*made >= 0 && hold(*made) &&
            cg_part_file_is_at(*made, part_file->part))
            return CG_OK;
        if (*made >= 0)
            close(*made);
        else if (errno != EEXIST)
            return cg_part_file_trouble(part_file->final, "write", error);
    }
    return busy(part_file, error);
}

static enum cg_status open_part(struct cg_part_file *part_file,
                                struct cg_error *error)
{
    int made = -1;
    enum cg_status status = may_replace(part_file->final, error);
    if (status == CG_OK)
        status = make_part(part_file, &made, error);
    if (status != CG_OK)
        return status;
    part_file->lock = fcntl(made, F_DUPFD_CLOEXEC, 0);
    part_file->file = part_file->lock >= 0 ? fdopen(made, "w") : NULL;
    if (part_file->file != NULL) {
        cg_open_parts_add(part_file->part);
        return CG_OK;
    }
    status = cg_part_file_trouble(part_file->final, "write", error);
    unlink(part_file->part);
    close(made);
    if (part_file->lock >= 0)
        close(part_file->lock);
    return status;
}

/* Removes the folder that was made for a file of which nothing came. */
static void unmake(struct cg_part_file *part_file)
{
    if (!part_file->made)
        return;
    *strrchr(part_file->final, '/') = '\0';
    rmdir(part_file->final);
}

enum cg_status cg_part_file_open(const char *dir, const char *name,
                                 struct cg_part_file *part_file,
                                 struct cg_error *error)
{
    enum cg_status status = set_names(dir, name, part_file, error);
    if (status == CG_OK)
        status = cg_part_file_folder(dir, &part_file->made, error);
    if (status != CG_OK)
        return status;
    cg_open_parts_wait();
    status = open_part(part_file, error);
    cg_open_parts_go();
    if (status != CG_OK)
        unmake(part_file);
    return status;
}

enum cg_status cg_part_file_open_at(const char *path,
                                    struct cg_part_file *part_file,
                                    struct cg_error *error)
{
    char dir[CG_PART_FILE_PATH] = ".";
    const char *slash = strrchr(path, '/');
    const char *name = slash != NULL ? slash + 1 : path;
    size_t length = slash == path ? 1 : (size_t)(name - path);
    if (length >= sizeof dir)
        return cg_error_set(error, CG_FILE, "%.40s...: the name is too long",
                            path);
    if (slash != NULL) {
        memcpy(dir, path, length);
        dir[length > 1 ? length - 1 : length] = '\0';
    }
    return cg_part_file_open(dir, name, part_file, error);
}

enum cg_status cg_part_file_close(struct cg_part_file *part_file,
                                  enum cg_status status, struct cg_error *error)
{
    int bad = ferror(part_file->file);
    if (fclose(part_file->file) != 0)
        bad = 1;
    if (status == CG_OK && bad)
        status = cg_part_file_trouble(part_file->final, "write", error);
    if (status == CG_OK)
        status = may_replace(part_file->final, error);
    cg_open_parts_wait();
    if (status == CG_OK && rename(part_file->part, part_file->final) != 0)
        status = cg_part_file_trouble(part_file->final, "write", error);
    if (status == CG_OK) {
        cg_open_parts_whole(part_file->part, part_file->final);
    } else {
        remove(part_file->part);
        cg_open_parts_drop(part_file->part);
        unmake(part_file);
    }
    cg_open_parts_go();
    close(part_file->lock);
    return status;
}

enum cg_status cg_part_file_rescue(const char *dir, const char *name,
                                   bool (*goes_on)(FILE *left,
                                                   const char *final),
                                   struct cg_error *error)
{
    struct cg_part_file part_file;
    int file = -1;
    enum cg_status status = set_names(dir, name, &part_file, error);
    if (status == CG_OK)
        status = may_replace(part_file.final, error);
    if (status == CG_OK)
        status = take_left(&part_file, &file, error);
    if (status != CG_OK || file < 0)
        return status;
    FILE *left = fdopen(file, "r");
    if (left == NULL) {
        close(file);
        return cg_part_file_trouble(part_file.part, "read", error);
    }
    if (goes_on(left, part_file.final))
        rename(part_file.part, part_file.final);
    fclose(left);
    return CG_OK;
}
