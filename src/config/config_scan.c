#include "config_scan.h"

#include <ctype.h>
#include <limits.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "config_file.h"
#include "data_folder.h"
#include "text_file.h"

/* libconfig 1.5 stops at ten files inside each other.  The rest is far beyond
 * a config with every setting and all the materials there is room for. */
enum {
    INCLUDE_DEPTH = 9,
    INCLUDES = 100,
    SETTINGS = 200, /* in one group */
    NESTING = 32,   /* groups, lists and arrays inside each other */
    TEXT_ROOM = 1024 * 1024 /* bytes */
};

/* All files of one config together. */
struct whole {
    size_t includes, bytes, inside;
    size_t settings[NESTING + 1]; /* in the groups open */
    bool too_much; /* which has been told: nothing more is read */
};

struct scan {
    const char *at;
    struct cg_where where;
    const char *folder;
    struct cg_problems *problems;
    struct whole *whole;
    int depth;
};

static void scan_text(struct scan *scan);

/* Steps over one character and counts lines. */
static void step(struct scan *scan)
{
    if (*scan->at == '\n')
        scan->where.line++;
    scan->at++;
}

static void skip_line(struct scan *scan)
{
    while (*scan->at != '\0' && *scan->at != '\n')
        step(scan);
}

static void skip_comment(struct scan *scan)
{
    step(scan);
    step(scan);
    while (*scan->at != '\0' && strncmp(scan->at, "*/", 2) != 0)
        step(scan);
    for (int i = 0; i < 2 && *scan->at != '\0'; i++)
        step(scan);
}

static void skip_string(struct scan *scan)
{
    step(scan);
    while (*scan->at != '\0' && *scan->at != '"') {
        if (scan->at[0] == '\\' && scan->at[1] != '\0')
            step(scan);
        step(scan);
    }
    if (*scan->at == '"')
        step(scan);
}

static void skip_name(struct scan *scan)
{
    while (isalnum((unsigned char)*scan->at) || *scan->at == '_' ||
           *scan->at == '-' || *scan->at == '*')
        step(scan);
}

/* A whole number without L is kept in 32 bit by the library. */
static void check_number(struct scan *scan)
{
    size_t length = 0;
    bool point = false;
    for (; isalnum((unsigned char)scan->at[length]) || scan->at[length] == '.';
         length++)
        point = point || scan->at[length] == '.';
    bool hexadecimal = scan->at[0] == '0' && tolower(scan->at[1]) == 'x';
    size_t digits = hexadecimal ? 2 + strspn(scan->at + 2,
                                             "0123456789abcdefABCDEF")
                                : strspn(scan->at, "0123456789");
    if (!point && digits == length &&
        strtoull(scan->at, NULL, hexadecimal ? 16 : 10) > INT_MAX)
        cg_problem(scan->problems, scan->where, NULL,
                   "whole number %.*s is too large to be read, at most %d is "
                   "allowed; write %.*s.0",
                   (int)length, scan->at, INT_MAX, (int)length, scan->at);
    for (size_t i = 0; i < length; i++)
        step(scan);
}

/* Counts up to `most`, and tells the first beyond. */
static void count_up(const struct scan *scan, size_t *count, size_t add,
                     size_t most, const char *what)
{
    *count += add;
    if (*count <= most || scan->whole->too_much)
        return;
    scan->whole->too_much = true;
    cg_problem(scan->problems, scan->where, NULL,
               "more than %zu %s; that many are allowed", most, what);
}

/* Keeps count of a group's settings, which libconfig compares each with each,
 * and of brackets open, for which it calls itself. */
static void count_setting(const struct scan *scan)
{
    struct whole *whole = scan->whole;
    switch (*scan->at) {
    case '=':
    case ':':
        count_up(scan, &whole->settings[whole->inside], 1, SETTINGS,
                 "settings in one group");
        break;
    case '{':
    case '(':
    case '[':
        count_up(scan, &whole->inside, 1, NESTING,
                 "groups and lists inside each other");
        if (!whole->too_much)
            whole->settings[whole->inside] = 0;
        break;
    case '}':
    case ')':
    case ']':
        whole->inside -= whole->inside > 0;
        break;
    default:
        break;
    }
}

/* `name`: as written, from the config's own folder. */
static void scan_file(const struct scan *scan, const char *path,
                      const char *name)
{
    struct cg_error error = {CG_OK, ""};
    char *text = NULL;
    if (scan->depth >= INCLUDE_DEPTH)
        cg_problem(scan->problems, scan->where, "@include",
                   "files include each other too deep (%s), at most %d are "
                   "allowed", name, INCLUDE_DEPTH);
    else if (cg_text_read(path, &text, &error) != CG_OK)
        cg_config_file_trouble(scan->problems, scan->where, "@include",
                               &error);
    if (text == NULL)
        return;
    struct scan inner = *scan;
    inner.at = text;
    inner.where = (struct cg_where){name, 1, scan->folder};
    inner.depth++;
    scan_text(&inner);
    free(text);
}

/* An include line: @include "NAME".  Anything else is left to libconfig. */
static void check_include(struct scan *scan)
{
    const char *name = scan->at + strlen("@include");
    name += strspn(name, " \t");
    size_t length = strcspn(name + (*name == '"'), "\"\n");
    if (*name == '"' && name[1 + length] == '"') {
        char path[CG_PATH_LENGTH];
        bool here = strcmp(scan->folder, ".") == 0;
        int before = here ? 0 : (int)strlen(scan->folder) + 1;
        int whole = snprintf(path, sizeof path, "%.*s%s%.*s", before - !here,
                             scan->folder, here ? "" : "/", (int)length,
                             name + 1);
        count_up(scan, &scan->whole->includes, 1, INCLUDES,
                 "files included in all");
        if (whole >= (int)sizeof path)
            cg_problem(scan->problems, scan->where, "@include",
                       "path too long");
        else if (!scan->whole->too_much)
            scan_file(scan, path, path + before);
    }
    skip_line(scan);
}

static void scan_text(struct scan *scan)
{
    count_up(scan, &scan->whole->bytes, strlen(scan->at), TEXT_ROOM,
             "bytes in all");
    while (*scan->at != '\0' && !scan->whole->too_much) {
        count_setting(scan);
        if (*scan->at == '#' || strncmp(scan->at, "//", 2) == 0)
            skip_line(scan);
        else if (strncmp(scan->at, "/*", 2) == 0)
            skip_comment(scan);
        else if (*scan->at == '"')
            skip_string(scan);
        else if (strncmp(scan->at, "@include", 8) == 0)
            check_include(scan);
        else if (isalpha((unsigned char)*scan->at))
            skip_name(scan);
        else if (isdigit((unsigned char)*scan->at) || *scan->at == '.')
            check_number(scan);
        else
            step(scan);
    }
}

void cg_config_scan(const char *text, const char *path, const char *folder,
                    struct cg_problems *problems)
{
    struct whole whole = {0};
    struct scan scan = {text, {path, 1, NULL}, folder, problems, &whole, 1};
    scan_text(&scan);
}
