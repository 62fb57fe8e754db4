#include "text_file.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "inputs.h"

enum { FIRST_ROOM = 16384, MOST_ROOM = 16 * 1024 * 1024 };

/* Opens a file that the run is made from. */
static enum cg_status open_input(const char *path, FILE **file,
                                 struct cg_error *error)
{
    errno = 0;
    *file = fopen(path, "rb");
    if (*file == NULL)
        return cg_error_set(error, CG_FILE, "%s: cannot open: %s", path,
                            strerror(errno));
    if (cg_inputs_add(*file))
        return CG_OK;
    fclose(*file);
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: at most %d files are read in one run", path,
                        CG_INPUTS);
}

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
                                  "%s:%zu: a zero byte, not a text file",
                                  path, line->number + 1);
        else if (line->length == CG_TEXT_LINE - 1)
            status = cg_error_set(error, CG_BAD_INPUT,
                                  "%s:%zu: a line of more than %d letters",
                                  path, line->number + 1, CG_TEXT_LINE - 1);
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
    size_t count;
    FILE *file;
    enum cg_status status = open_input(path, &file, error);
    if (status != CG_OK)
        return status;
    do {
        errno = 0;
        count = fread(block, 1, sizeof block, file);
        status = take_block(path, block, count, &line, take, context, error);
    } while (status == CG_OK && count == sizeof block);
    if (status == CG_OK && ferror(file))
        status = cg_error_set(error, CG_FILE, "%s: cannot read: %s", path,
                              strerror(errno));
    if (status == CG_OK && line.length > 0)
        status = end_line(&line, take, context, error);
    fclose(file);
    return status;
}
