#include "text_file.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FIRST_ROOM = 16384, MOST_ROOM = 16 * 1024 * 1024 };

/* A folder opens like a file and fails only when it is read, so the reason is
 * taken from whichever call failed. */
static enum cg_status read_all(FILE *file, const char *path, char **text,
                               struct cg_error *error)
{
    size_t room = FIRST_ROOM, length = 0;
    for (;;) {
        char *larger = realloc(*text, room);
        if (larger == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory",
                                path);
        *text = larger;
        errno = 0;
        length += fread(larger + length, 1, room - 1 - length, file);
        if (ferror(file))
            return cg_error_set(error, CG_FILE, "%s: cannot read: %s", path,
                                strerror(errno));
        if (length < room - 1)
            break;
        if (room >= MOST_ROOM)
            return cg_error_set(error, CG_BAD_INPUT,
                                "%s: larger than 16 MB, not read",
                                path);
        room *= 2;
    }
    (*text)[length] = '\0';
    if (strlen(*text) != length)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: a zero byte inside, not a text file", path);
    return CG_OK;
}

enum cg_status cg_text_read(const char *path, char **text,
                            struct cg_error *error)
{
    errno = 0;
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        return cg_error_set(error, CG_FILE, "%s: cannot open: %s", path,
                            strerror(errno));
    char *content = NULL;
    enum cg_status status = read_all(file, path, &content, error);
    fclose(file);
    if (status == CG_OK)
        *text = content;
    else
        free(content);
    return status;
}
