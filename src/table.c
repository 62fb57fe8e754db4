#include "table.h"

#include <errno.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "cautions.h"

enum { PATH_ROOM = 4096 };

struct cg_table {
    FILE *file;
    size_t blocks;
    char part[PATH_ROOM], final[PATH_ROOM];
};

static enum cg_status trouble(const char *path, const char *verb,
                              struct cg_error *error)
{
    return cg_error_set(error, CG_FILE, "%s: could not %s: %s", path, verb,
                        strerror(errno));
}

static void write_head(FILE *file, const struct cg_table_head *head)
{
    fprintf(file, "# %s\n", head->title);
    fprintf(file, "# coldgap %s, config %s\n", CG_VERSION, head->config);
    fprintf(file, "# %s\n", cg_cautions_short());
    if (head->columns != NULL)
        fprintf(file, "# %s\n", head->columns);
}

enum cg_status cg_table_open(const char *dir, const char *name,
                             const struct cg_table_head *head,
                             struct cg_table **table, struct cg_error *error)
{
    struct cg_table *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = CG_OK;
    int length = snprintf(made->final, PATH_ROOM, "%s/%s", dir, name);
    if (length < 0 || length > PATH_ROOM - 8) {
        status = cg_error_set(error, CG_FILE, "%s: the name is too long", dir);
    } else if (mkdir(dir, 0777) != 0 && errno != EEXIST) {
        status = trouble(dir,
                         errno == ENOENT
                             ? "create the folder (make the one above first)"
                             : "create the folder",
                         error);
    } else {
        snprintf(made->part, PATH_ROOM, "%.*s.part", PATH_ROOM - 8,
                 made->final);
        made->file = fopen(made->part, "w");
        if (made->file == NULL)
            status = trouble(made->part, "write", error);
    }
    if (status != CG_OK) {
        free(made);
        return status;
    }
    if (head->title != NULL)
        write_head(made->file, head);
    *table = made;
    return CG_OK;
}

enum cg_status cg_table_drop(const char *dir, const char *name,
                             struct cg_error *error)
{
    char path[PATH_ROOM];
    int length = snprintf(path, sizeof path, "%s/%s", dir, name);
    if (length < 0 || length >= PATH_ROOM)
        return cg_error_set(error, CG_FILE, "%s: the name is too long", dir);
    return remove(path) == 0 || errno == ENOENT
               ? CG_OK
               : trouble(path, "remove", error);
}

enum cg_status cg_table_earlier(const struct cg_table *table,
                                enum cg_status (*take)(void *context,
                                                       const char *line,
                                                       struct cg_error *error),
                                void *context, struct cg_error *error)
{
    char line[8192];
    enum cg_status status = CG_OK;
    FILE *old = fopen(table->final, "r");
    if (old == NULL)
        return errno == ENOENT ? CG_OK
                               : trouble(table->final, "read", error);
    while (status == CG_OK && fgets(line, sizeof line, old) != NULL) {
        line[strcspn(line, "\n")] = '\0';
        status = take(context, line, error);
    }
    if (status == CG_OK && ferror(old))
        status = trouble(table->final, "read", error);
    fclose(old);
    return status;
}

void cg_table_note(struct cg_table *table, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    fputs("# ", table->file);
    vfprintf(table->file, format, args);
    fputc('\n', table->file);
    va_end(args);
}

void cg_table_block(struct cg_table *table, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    fputs(table->blocks++ > 0 ? "\n\n# block: " : "# block: ", table->file);
    vfprintf(table->file, format, args);
    fputc('\n', table->file);
    va_end(args);
}

void cg_table_row(struct cg_table *table, const double *values, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const char *gap = i > 0 ? " " : "";
        if (isnan(values[i]))
            fprintf(table->file, "%snan", gap);
        else
            fprintf(table->file, "%s%.7g", gap, values[i]);
    }
    fputc('\n', table->file);
}

void cg_table_line(struct cg_table *table, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    vfprintf(table->file, format, args);
    fputc('\n', table->file);
    va_end(args);
}

void cg_table_key(struct cg_table *table, const char *key, double value,
                  const char *unit)
{
    if (isnan(value))
        fprintf(table->file, "%s nan %s\n", key, unit);
    else
        fprintf(table->file, "%s %.7g %s\n", key, value, unit);
}

enum cg_status cg_table_close(struct cg_table *table, enum cg_status status,
                              struct cg_error *error)
{
    if (table == NULL)
        return status;
    int bad = ferror(table->file);
    if (fclose(table->file) != 0)
        bad = 1;
    if (status == CG_OK && bad)
        status = trouble(table->part, "write", error);
    if (status == CG_OK && rename(table->part, table->final) != 0)
        status = trouble(table->final, "write", error);
    if (status != CG_OK)
        remove(table->part);
    free(table);
    return status;
}
