#include "config_scan.h"

#include <ctype.h>
#include <limits.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "data_folder.h"
#include "text_file.h"

enum { INCLUDE_DEPTH = 9 }; /* libconfig 1.5 stops at ten files */

struct scan {
    const char *at;
    struct cg_where where;
    const char *folder;
    struct cg_problems *problems;
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

static void scan_include(const struct scan *scan, const char *name)
{
    char path[CG_PATH_LENGTH];
    bool here = strcmp(scan->folder, ".") == 0;
    int length = snprintf(path, sizeof path, "%s%s%s",
                          here ? "" : scan->folder, here ? "" : "/", name);
    struct cg_error error = {CG_OK, ""};
    char *text = NULL;
    if (length >= (int)sizeof path)
        cg_problem(scan->problems, scan->where, "@include", "path too long");
    else if (scan->depth >= INCLUDE_DEPTH)
        cg_problem(scan->problems, scan->where, "@include",
                   "files include each other too deep (%s), at most %d are "
                   "allowed", name, INCLUDE_DEPTH);
    else if (cg_text_read(path, &text, &error) != CG_OK)
        cg_problem(scan->problems, scan->where, "@include",
                   "%s; a path from the config's own folder is allowed",
                   error.text);
    if (text == NULL)
        return;
    struct scan inner = {text, {name, 1, scan->folder}, scan->folder,
                         scan->problems, scan->depth + 1};
    scan_text(&inner);
    free(text);
}

/* An include line: @include "NAME".  Anything else is left to libconfig. */
static void check_include(struct scan *scan)
{
    const char *name = scan->at + strlen("@include");
    name += strspn(name, " \t");
    size_t length = strcspn(name + (*name == '"'), "\"\n");
    char copy[CG_PATH_LENGTH];
    if (*name == '"' && name[1 + length] == '"' && length < sizeof copy) {
        memcpy(copy, name + 1, length);
        copy[length] = '\0';
        scan_include(scan, copy);
    }
    skip_line(scan);
}

static void scan_text(struct scan *scan)
{
    while (*scan->at != '\0') {
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
    struct scan scan = {text, {path, 1, NULL}, folder, problems, 1};
    scan_text(&scan);
}
