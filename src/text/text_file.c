#define _POSIX_C_SOURCE 200809L /* fdopen, fstat, O_CLOEXEC */

#include "text_file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "inputs.h"

enum { FIRST_CAPACITY = 16384, MOST_CAPACITY = 16 * 1024 * 1024 };

/* Line by line a file may be longer: the most points of a profile, 64 letters
 * each. */
#define MOST_LINES ((size_t)256 * 1024 * 1024)

#define ZERO_BYTE                                                              \
    "a zero byte, not a text file; text in UTF-16 is to be saved as UTF-8"

/* The names of what the program was started with open: whoever did that chose
 * to wait for what comes. */
static bool handed(const char *path)
{
    return strcmp(path, "/dev/stdin") == 0 ||
           strncmp(path, "/dev/fd/", 8) == 0;
}

/* Why what was opened is not to be read; NULL: it is. */
static const char *unfit(int descriptor, const char *path)
{
    struct stat what;
    if (fstat(descriptor, &what) != 0)
        return strerror(errno);
    if (S_ISDIR(what.st_mode))
        return strerror(EISDIR);
    if (S_ISREG(what.st_mode))
        return NULL;
    if (!handed(path))
        return "a pipe or a device; a regular file is allowed";
    int flags = fcntl(descriptor, F_GETFL);
    if (flags == -1 || fcntl(descriptor, F_SETFL, flags & ~O_NONBLOCK) == -1)
        return strerror(errno);
    return NULL;
}

FILE *cg_text_open(const char *path, struct cg_error *error)
{
    int descriptor = open(path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
    if (descriptor == -1) {
        int reason = errno;
        cg_error_set(error, CG_FILE, "%s: cannot open: %s", path,
                     strerror(reason));
        errno = reason;
        return NULL;
    }
    const char *why = unfit(descriptor, path);
    FILE *file = why == NULL ? fdopen(descriptor, "r") : NULL;
    if (file != NULL)
        return file;
    cg_error_set(error, CG_FILE, "%s: cannot read: %s", path,
                 why != NULL ? why : strerror(errno));
    close(descriptor);
    errno = EINVAL;
    return NULL;
}

/* Opens a file that the run is made from. */
static enum cg_status open_input(const char *path, FILE **file,
                                 struct cg_error *error)
{
    *file = cg_text_open(path, error);
    if (*file == NULL)
        return CG_FILE;
    if (cg_inputs_add(*file))
        return CG_OK;
    fclose(*file);
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: at most %d files are read in one run", path,
                        CG_INPUT_FILES);
}

static enum cg_status read_all(FILE *file, const char *path, char **text,
                               struct cg_error *error)
{
    size_t capacity = FIRST_CAPACITY, length = 0;
    for (;;) {
        char *larger = realloc(*text, capacity);
        if (larger == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory",
                                path);
        *text = larger;
        errno = 0;
        length += fread(larger + length, 1, capacity - 1 - length, file);
        if (ferror(file))
            return cg_error_set(error, CG_FILE, "%s: cannot read: %s", path,
                                strerror(errno));
        if (length < capacity - 1)
            break;
        if (capacity >= MOST_CAPACITY)
            return cg_error_set(error, CG_BAD_INPUT,
                                "%s: larger than 16 MB, not read",
                                path);
        capacity *= 2;
    }
    (*text)[length] = '\0';
    if (strlen(*text) != length)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: " ZERO_BYTE, path);
    return CG_OK;
}

enum cg_status cg_text_read(const char *path, char **text,
                            struct cg_error *error)
{
    FILE *file;
    char *content = NULL;
    enum cg_status status = open_input(path, &file, error);
    if (status != CG_OK)
        return status;
    status = read_all(file, path, &content, error);
    fclose(file);
    if (status == CG_OK)
        *text = content;
    else
        free(content);
    return status;
}

/* A line as it is put together from the blocks read. */
struct line {
    char text[CG_TEXT_LINE];
    size_t length, number;
};

static enum cg_status end_line(struct line *line, cg_text_take take,
                               void *context, struct cg_error *error)
{
    if (line->length > 0 && line->text[line->length - 1] == '\r')
        line->length--;
    line->text[line->length] = '\0';
    line->length = 0;
    return take(context, line->text, ++line->number, error);
}

static enum cg_status too_long(const char *path, const struct line *line,
                               struct cg_error *error)
{
    bool returns = memchr(line->text, '\r', line->length) != NULL;
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s:%zu: a line of more than %d letters%s", path,
                        line->number + 1, CG_TEXT_LINE - 1,
                        returns ? ", with carriage returns inside; lines that "
                                  "end with LF or CR LF are allowed, not with "
                                  "CR alone"
                                : "");
}

static enum cg_status take_block(const char *path, const char *block,
                                 size_t count, struct line *line,
                                 cg_text_take take, void *context,
                                 struct cg_error *error)
{
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < count && status == CG_OK; i++) {
        if (block[i] == '\n')
            status = end_line(line, take, context, error);
        else if (block[i] == '\0')
            status = cg_error_set(error, CG_BAD_INPUT,
                                  "%s:%zu: " ZERO_BYTE, path,
                                  line->number + 1);
        else if (line->length == CG_TEXT_LINE - 1)
            status = too_long(path, line, error);
        else
            line->text[line->length++] = block[i];
    }
    return status;
}

enum cg_status cg_text_lines(const char *path, cg_text_take take,
                             void *context, struct cg_error *error)
{
    char block[16384];
    struct line line = {.length = 0, .number = 0};
    size_t count, total = 0;
    FILE *file;
    enum cg_status status = open_input(path, &file, error);
    if (status != CG_OK)
        return status;
    do {
        errno = 0;
        count = fread(block, 1, sizeof block, file);
        total += count;
        status = take_block(path, block, count, &line, take, context, error);
        if (status == CG_OK && total > MOST_LINES)
            status = cg_error_set(error, CG_BAD_INPUT,
                                  "%s: larger than 256 MB, not read on", path);
    } while (status == CG_OK && count == sizeof block);
    if (status == CG_OK && ferror(file))
        status = cg_error_set(error, CG_FILE, "%s: cannot read: %s", path,
                              strerror(errno));
    if (status == CG_OK && line.length > 0)
        status = end_line(&line, take, context, error);
    fclose(file);
    return status;
}
