/* Every comparison leaves a row for tests/dossier.sh: where, what, by which
 * source, expected, got, allowed.
 *
 * A suite appends to the file that the environment names in CG_DOSSIER, one
 * write a row (Check runs each test in a process of its own); without it
 * nothing is written.  Fields are parted by tabs.
 */
#ifndef CG_DOSSIER_H
#define CG_DOSSIER_H

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A suite's rows are those of its last run. */
static inline void dossier_begin(void)
{
    const char *path = getenv("CG_DOSSIER");
    if (path != NULL)
        remove(path);
}

/* `form` is "value" or "band"; a band is its middle and half its width. */
static inline void dossier_row(const char *file, const char *test,
                               const char *form, const char *what,
                               const char *source, double expected, double got,
                               double allowed)
{
    const char *path = getenv("CG_DOSSIER");
    if (path == NULL)
        return;
    FILE *rows = fopen(path, "a");
    if (rows == NULL)
        return;
    const char *slash = strrchr(file, '/');
    fprintf(rows, "%s\t%s\t%s\t%s\t%s\t%.7g\t%.7g\t%.7g\t%s\n",
            slash == NULL ? file : slash + 1, test, form, what, source,
            expected, got, allowed,
            fabs(got - expected) <= allowed ? "holds" : "MISSED");
    fclose(rows);
}

#endif
