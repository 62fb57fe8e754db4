#include "problems.h"

#include <stdarg.h>
#include <string.h>

#include "plain_text.h"

/* The head of the line: where it is, and which setting. */
static void write_head(char line[CG_PROBLEM_LENGTH], struct cg_where where,
                       const char *path)
{
    const char *name = path != NULL ? path : "";
    const char *colon = path != NULL ? ": " : "";
    bool inside = where.folder != NULL && strcmp(where.folder, ".") != 0;
    const char *folder = inside ? where.folder : "", *slash = inside ? "/" : "";
    if (where.file == NULL)
        snprintf(line, CG_PROBLEM_LENGTH, "--set %s%serror: ", name, colon);
    else if (where.line == 0)
        snprintf(line, CG_PROBLEM_LENGTH, "%s%s%s: error: %s%s", folder, slash,
                 where.file, name, colon);
    else
        snprintf(line, CG_PROBLEM_LENGTH, "%s%s%s:%u: error: %s%s", folder,
                 slash, where.file, where.line, name, colon);
}

bool cg_problems_full(const struct cg_problems *problems)
{
    return problems->count >= CG_PROBLEM_LINES;
}

void cg_problem(struct cg_problems *problems, struct cg_where where,
                const char *path, const char *format, ...)
{
    bool full = cg_problems_full(problems);
    problems->in_files += where.file != NULL;
    problems->in_own += where.file != NULL && where.folder == NULL &&
                        problems->own != NULL &&
                        strcmp(where.file, problems->own) == 0;
    problems->count++;
    if (full)
        return;
    char *line = problems->line[problems->count - 1];
    write_head(line, where, path);
    size_t used = strlen(line);
    va_list args;
    va_start(args, format);
    vsnprintf(line + used, CG_PROBLEM_LENGTH - used, format, args);
    va_end(args);
    cg_plain_make(line); /* one problem, one line */
}

void cg_problems_print(const struct cg_problems *problems, FILE *stream)
{
    size_t kept = problems->count;
    if (kept > CG_PROBLEM_LINES)
        kept = CG_PROBLEM_LINES;
    for (size_t i = 0; i < kept; i++)
        fprintf(stream, "%s\n", problems->line[i]);
    if (problems->count > kept)
        fprintf(stream, "... and %zu more\n", problems->count - kept);
}
