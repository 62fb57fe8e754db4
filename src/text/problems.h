/* Collects what is wrong with a config, one line each, so that a user sees
 * all of it at once. */
#ifndef CG_PROBLEMS_H
#define CG_PROBLEMS_H

#include <stdbool.h>
#include <stdio.h>

#include "status.h"

enum { CG_PROBLEM_LINES = 20, CG_PROBLEM_LENGTH = 1024 };

/* Where a setting was given. */
struct cg_where {
    const char *file;   /* NULL: by --set on the command line */
    unsigned line;      /* 0: nowhere in particular */
    const char *folder; /* before the file's name, or NULL */
};

struct cg_problems {
    size_t count; /* all, also those beyond the lines kept */
    size_t in_files; /* of them, not by --set */
    const char *own; /* the config's path, or NULL; of them, in that file */
    size_t in_own;
    char line[CG_PROBLEM_LINES][CG_PROBLEM_LENGTH];
};

/* Adds "file:line: error: path: text", without the parts that are unknown
 * (path NULL, line 0), or "--set path: error: text". */
void cg_problem(struct cg_problems *problems, struct cg_where where,
                const char *path, const char *format, ...) CG_FORMAT(4, 5);

/* Whether a further problem is only counted: no need to look far for what to
 * say of it. */
bool cg_problems_full(const struct cg_problems *problems);

/* Prints the lines kept, and how many more there are. */
void cg_problems_print(const struct cg_problems *problems, FILE *stream);

#endif
