/* Every comparison leaves a row for tests/dossier.sh: where, what, by which
 * source, expected, got, allowed.
 *
 * A suite appends to the file that the environment names in CG_DOSSIER, one
 * write a row (Check runs each test in a process of its own), and ends it with
 * a row "end", tests failed; without it nothing is written.  Fields are parted
 * by tabs.
 */
#ifndef CG_DOSSIER_H
#define CG_DOSSIER_H

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Writes to the environment's file; a row that cannot be left ends the test:
 * lost in silence, it would be missed by nobody. */
static inline void dossier_write(const char *mode, const char *line)
{
    const char *path = getenv("CG_DOSSIER");
    if (path == NULL)
        return;
    FILE *rows = fopen(path, mode);
    if (rows == NULL || fputs(line, rows) < 0 || fclose(rows) != 0) {
        perror(path);
        exit(EXIT_FAILURE);
    }
}

/* A suite's rows are those of its last run. */
static inline void dossier_begin(void)
{
    dossier_write("w", "");
}

/* The closing row: the suite came to its end, with so many tests failed. */
static inline void dossier_end(int failed)
{
    char line[64];
    snprintf(line, sizeof line, "end\t%d\n", failed);
    dossier_write("a", line);
}

/* `form` is "value", "band" (its middle and half its width), or "most" and
 * "least" for a limit of one side, with nothing allowed past it. */
static inline void dossier_row(const char *file, const char *test,
                               const char *form, const char *what,
                               const char *source, double expected, double got,
                               double allowed)
{
    const char *slash = strrchr(file, '/');
    double past = strcmp(form, "most") == 0    ? got - expected
                  : strcmp(form, "least") == 0 ? expected - got
                                               : fabs(got - expected);
    char line[4096];
    snprintf(line, sizeof line, "%s\t%s\t%s\t%s\t%s\t%.7g\t%.7g\t%.7g\t%s\n",
             slash == NULL ? file : slash + 1, test, form, what, source,
             expected, got, allowed, past <= allowed ? "holds" : "MISSED");
    dossier_write("a", line);
}

#endif
