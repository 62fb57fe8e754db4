#include "config_file.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "config_scan.h"
#include "text_file.h"

/* The folder part of a path, "." if it has none; NULL without memory. */
static char *folder_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    size_t length = slash != NULL ? (size_t)(slash - path) : 1;
    if (slash == path) /* in the root folder */
        length = 1;
    char *folder = malloc(length + 1);
    if (folder == NULL)
        return NULL;
    memcpy(folder, slash != NULL ? path : ".", length);
    folder[length] = '\0';
    return folder;
}

/* The text of a line, without the blanks around it. */
static int find_line(const char *text, int number, const char **line)
{
    for (int i = 1; i < number && *text != '\0'; i++) {
        text += strcspn(text, "\n");
        text += *text == '\n';
    }
    text += strspn(text, " \t");
    size_t length = strcspn(text, "\r\n");
    while (length > 0 && (text[length - 1] == ' ' || text[length - 1] == '\t'))
        length--;
    *line = text;
    return length < 60 ? (int)length : 60;
}

static void report_syntax(struct cg_config_file *file, const char *text,
                          struct cg_problems *problems)
{
    const char *inner = config_error_file(&file->config);
    int number = config_error_line(&file->config);
    const char *what = config_error_text(&file->config);
    const char *help = "";
    if (strcmp(what, "syntax error") == 0)
        help = "; look for a missing quote, bracket or semicolon here or "
               "just before";
    else if (strcmp(what, "duplicate setting name") == 0)
        help = "; a group or key may stand only once, includes counted";
    else if (strcmp(what, "mismatched element type in array") == 0)
        help = "; write all numbers of an array with a decimal point";
    struct cg_where where = {file->path, (unsigned)number, NULL};
    if (inner != NULL)
        where = (struct cg_where){inner, (unsigned)number, file->folder};
    const char *line = "";
    int length = inner == NULL ? find_line(text, number, &line) : 0;
    if (length > 0)
        cg_problem(problems, where, NULL, "%s at \"%.*s\"%s", what, length,
                   line, help);
    else
        cg_problem(problems, where, NULL, "%s%s%s", what,
                   inner == NULL ? " at the end of the file" : "", help);
}

/* Editors on other systems put this mark before the text. */
static const char *after_mark(const char *text)
{
    return strncmp(text, "\xef\xbb\xbf", 3) == 0 ? text + 3 : text;
}

/* libconfig does not look whether its memory is there, so we do before it
 * starts.  An element of a list, two letters at least, takes some hundred
 * bytes. */
static bool room_to_read(const char *text)
{
    void *volatile space = malloc(((size_t)1 << 20) + 64 * strlen(text));
    bool there = space != NULL;
    free(space);
    return there;
}

enum cg_status cg_config_file_open(struct cg_config_file *file,
                                   const char *path,
                                   struct cg_problems *problems,
                                   struct cg_error *error)
{
    char *text = NULL;
    config_init(&file->config);
    file->path = path;
    file->folder = folder_of(path);
    if (file->folder == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory", path);
    struct cg_error trouble = {CG_OK, ""};
    enum cg_status status = cg_text_read(path, &text, &trouble);
    if (status != CG_OK)
        return cg_error_set(error, status, "%s", trouble.text);
    if (!room_to_read(text)) {
        free(text);
        return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory", path);
    }

    size_t before = problems->count;
    cg_config_scan(after_mark(text), path, file->folder, problems);
    config_set_include_dir(&file->config, file->folder);
    if (problems->count == before &&
        config_read_string(&file->config, after_mark(text)) != CONFIG_TRUE)
        report_syntax(file, text, problems);
    else if (problems->count == before &&
             config_setting_length(config_root_setting(&file->config)) == 0)
        cg_problem(problems, (struct cg_where){path, 0, NULL}, NULL,
                   "nothing is set in this file; `coldgap template` prints "
                   "one to start from");
    free(text);
    return CG_OK;
}

void cg_config_file_close(struct cg_config_file *file)
{
    if (file->config.root != NULL) /* it was opened */
        config_destroy(&file->config);
    free(file->folder);
    file->folder = NULL;
}

struct cg_where cg_config_where(const struct cg_config_file *file,
                                const config_setting_t *setting)
{
    const char *inner = config_setting_source_file(setting);
    unsigned line = config_setting_source_line(setting);
    if (inner != NULL)
        return (struct cg_where){inner, line, file->folder};
    return (struct cg_where){file->path, line, NULL};
}

void cg_config_file_trouble(struct cg_problems *problems, struct cg_where where,
                            const char *key, const struct cg_error *trouble)
{
    cg_problem(problems, where, key, "%s%s", trouble->text,
               trouble->status == CG_FILE
                   ? "; a path from the config's own folder is allowed"
                   : "");
}
