#include "nearest.h"

#include <stdio.h>
#include <string.h>

#include "trade_word.h"

enum { LETTERS = 63, LETTERS_AN_EDIT = 3 };

static size_t smaller(size_t a, size_t b)
{
    return a < b ? a : b;
}

size_t cg_edit_distance(const char *a, const char *b)
{
    size_t rows = smaller(strlen(a), LETTERS);
    size_t columns = smaller(strlen(b), LETTERS);
    size_t edits[LETTERS + 1][LETTERS + 1];
    for (size_t i = 0; i <= rows; i++)
        edits[i][0] = i;
    for (size_t j = 0; j <= columns; j++)
        edits[0][j] = j;
    for (size_t i = 1; i <= rows; i++) {
        for (size_t j = 1; j <= columns; j++) {
            size_t best = edits[i - 1][j - 1] + (a[i - 1] != b[j - 1]);
            best = smaller(best, edits[i - 1][j] + 1);
            best = smaller(best, edits[i][j - 1] + 1);
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                best = smaller(best, edits[i - 2][j - 2] + 1);
            edits[i][j] = best;
        }
    }
    return edits[rows][columns];
}

size_t cg_nearest(const char *word, const char *const *names, size_t count)
{
    size_t nearest = 0, least = (size_t)-1;
    char ours[LETTERS + 1];
    cg_trade_word(word, ours, sizeof ours);
    for (size_t i = 0; i < count; i++) {
        size_t edits = cg_edit_distance(ours, names[i]);
        if (edits < least) {
            least = edits;
            nearest = i;
        }
    }
    return nearest;
}

bool cg_near(const char *word, const char *name)
{
    char ours[LETTERS + 1];
    cg_trade_word(word, ours, sizeof ours);
    return LETTERS_AN_EDIT * cg_edit_distance(ours, name) <= strlen(ours);
}

static void append(char *list, size_t size, const char *name)
{
    size_t used = strlen(list);
    if (used > 0 && used + 2 < size) {
        strcpy(list + used, ", ");
        used += 2;
    }
    strncat(list, name, size - used - 1);
}

void cg_nearest_list(const char *word, const char *const *names, size_t count,
                     char *list, size_t size)
{
    list[0] = '\0';
    if (count == 0)
        return;
    size_t first = cg_nearest(word, names, count);
    append(list, size, names[first]);
    for (size_t i = 0; i < count; i++)
        if (i != first)
            append(list, size, names[i]);
}

void cg_nearest_hint(const char *word, const char *const *names, size_t count,
                     char *hint, size_t size)
{
    static const char allowed[] = "allowed: ";
    const char *nearest = names[cg_nearest(word, names, count)];
    if (cg_near(word, nearest)) {
        snprintf(hint, size, "the nearest is %s", nearest);
    } else if (size > sizeof allowed) {
        memcpy(hint, allowed, sizeof allowed);
        cg_nearest_list(word, names, count, hint + sizeof allowed - 1,
                        size - (sizeof allowed - 1));
    }
}
