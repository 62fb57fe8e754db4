#include "table.h"

#include <errno.h>
#include <math.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cautions.h"
#include "part_file.h"
#include "text_file.h"

struct cg_table {
    struct cg_part_file part_file;
    FILE *file; /* the aside's */
    size_t blocks;
};

#define NAME_LETTERS                                                           \
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_"
#define OF "# coldgap " CG_VERSION ", config "

bool cg_table_is_of(const char *line, const char *config)
{
    return strncmp(line, OF, sizeof OF - 1) == 0 &&
           strcmp(line + sizeof OF - 1, config) == 0;
}

static void write_head(FILE *file, const struct cg_table_head *head)
{
    const struct cg_table_of *of = head->of;
    fprintf(file, "# %s\n# %s\n# %s\n", head->columns, head->title,
            cg_cautions_short());
    if (cg_cautions_nitrous() != NULL)
        fprintf(file, "# %s\n", cg_cautions_nitrous());
    fprintf(file, OF "%s\n", of->config);
    fprintf(file, "# engine: %s\n# boost: %s\n# fuel: %s\n# duty: %s\n",
            of->engine, of->boost, of->fuel, of->duty);
    if (head->remarks != NULL)
        fprintf(file, "# %s\n", head->remarks);
}

enum cg_status cg_table_open(const char *dir, const char *name,
                             const struct cg_table_head *head,
                             struct cg_table **table, struct cg_error *error)
{
    struct cg_table *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status =
        cg_part_file_open(dir, name, &made->part_file, error);
    if (status != CG_OK) {
        free(made);
        return status;
    }
    made->file = made->part_file.file;
    if (head->title != NULL)
        write_head(made->file, head);
    *table = made;
    return CG_OK;
}

enum cg_status cg_table_drop(const char *dir, const char *name,
                             struct cg_error *error)
{
    char path[CG_PART_FILE_PATH];
    enum cg_status status = cg_part_file_may(dir, name, error);
    if (status != CG_OK)
        return status;
    snprintf(path, sizeof path, "%s/%s", dir, name);
    return remove(path) == 0 || errno == ENOENT
               ? CG_OK
               : cg_part_file_trouble(path, "remove", error);
}

/* Lines longer than the capacity come in pieces. */
static enum cg_status take_lines(FILE *file, const char *path,
                                 cg_table_take take, void *context,
                                 struct cg_error *error)
{
    char line[8192];
    enum cg_status status = CG_OK;
    while (status == CG_OK && fgets(line, sizeof line, file) != NULL) {
        line[strcspn(line, "\n")] = '\0';
        status = take(context, line, error);
    }
    if (status == CG_OK && ferror(file))
        status = cg_part_file_trouble(path, "read", error);
    return status;
}

/* Whether a file holds all that `table` does, byte for byte, and goes on; a
 * table that is not there holds nothing. */
static bool goes_on(FILE *longer, const char *table)
{
    FILE *shorter = cg_text_open(table, NULL);
    bool same = true;
    for (int c; same && shorter != NULL && (c = getc(shorter)) != EOF;)
        same = getc(longer) == c;
    same = same && getc(longer) != EOF;
    if (shorter != NULL)
        fclose(shorter);
    return same;
}

enum cg_status cg_table_rescue(const char *dir, const char *name,
                               struct cg_error *error)
{
    return cg_part_file_rescue(dir, name, goes_on, error);
}

enum cg_status cg_table_earlier(const struct cg_table *table,
                                cg_table_take take, void *context,
                                struct cg_error *error)
{
    const char *path = table->part_file.final;
    struct cg_error trouble;
    FILE *old = cg_text_open(path, &trouble);
    if (old == NULL)
        return errno == ENOENT
                   ? CG_OK
                   : cg_error_set(error, CG_FILE, "%s", trouble.text);
    enum cg_status status = take_lines(old, path, take, context, error);
    fclose(old);
    return status;
}

enum cg_status cg_table_lines(const char *dir, const char *name,
                              cg_table_take take, void *context,
                              struct cg_error *error)
{
    char path[CG_PART_FILE_PATH];
    snprintf(path, sizeof path, "%s/%s", dir, name);
    FILE *file = cg_text_open(path, error);
    if (file == NULL)
        return CG_FILE;
    enum cg_status status = take_lines(file, path, take, context, error);
    fclose(file);
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
    if (table->blocks > 0)
        fprintf(table->file, " %zu", cg_table_block_number(table));
    fputc('\n', table->file);
}

size_t cg_table_block_number(const struct cg_table *table)
{
    return table->blocks - 1;
}

void cg_table_line(struct cg_table *table, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    vfprintf(table->file, format, args);
    fputc('\n', table->file);
    va_end(args);
}

struct cg_table_word cg_table_word(const char *text)
{
    struct cg_table_word word = {"-"};
    for (size_t i = 0; i < sizeof word.text - 1 && text[i] != '\0'; i++)
        word.text[i] = text[i] != ' ' ? text[i] : '_';
    return word;
}

void cg_table_name(const char *key, const char *unit, char *name,
                   size_t capacity)
{
    bool none = strcmp(unit, "1") == 0 || unit[0] == '\0';
    snprintf(name, capacity, "%s%s%s", key, none ? "" : "_",
             none                     ? ""
             : strcmp(unit, "%") == 0 ? "pct"
                                      : unit);
    for (char *at = name; *at != '\0'; at++)
        if (strchr(NAME_LETTERS, *at) == NULL)
            *at = '_';
}

void cg_table_key(struct cg_table *table, const char *key, double value,
                  const char *unit)
{
    if (isnan(value))
        fprintf(table->file, "%s nan %s\n", key, unit);
    else
        fprintf(table->file, "%s %.7g %s\n", key, value, unit);
}

void cg_table_keys(struct cg_table *table, const struct cg_key_values *keys)
{
    for (size_t i = 0; i < CG_KEYS_MOST && keys->row[i].key != NULL; i++)
        cg_table_key(table, keys->row[i].key, keys->row[i].value,
                     keys->row[i].unit);
}

enum cg_status cg_table_close(struct cg_table *table, enum cg_status status,
                              struct cg_error *error)
{
    if (table == NULL)
        return status;
    status = cg_part_file_close(&table->part_file, status, error);
    free(table);
    return status;
}
