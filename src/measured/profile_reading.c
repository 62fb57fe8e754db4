/* The numbers of a profile file, point by point. */
#include "profile_parts.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "profile_file.h"

/* Steps between positions that still count as even: positions are often
 * rounded, but a missing point doubles a step. */
#define SHORTEST_STEP 0.4
#define LONGEST_STEP 1.7

#define HIGHEST 0.01 /* a height of a bore's finish [m] */

enum cg_status cg_reading_wrong(const struct cg_reading *reading,
                                struct cg_error *error, const char *format, ...)
{
    char text[300];
    va_list args;
    va_start(args, format);
    vsnprintf(text, sizeof text, format, args);
    va_end(args);
    return cg_error_set(error, CG_BAD_INPUT, "%s:%zu: %s", reading->path,
                        reading->line, text);
}

static bool blank(char letter)
{
    return letter == ' ' || letter == '\t';
}

const char *cg_reading_skip(const char *text)
{
    while (blank(*text))
        text++;
    return text;
}

/* What stands at a place in a line, short and printable, for a message. */
struct word {
    char text[24];
};

static struct word word_at(const char *place)
{
    struct word word;
    size_t length = strcspn(place, " \t");
    size_t most = sizeof word.text - 1;
    snprintf(word.text, sizeof word.text, "%.*s",
             (int)(length < most ? length : most), place);
    for (char *at = word.text; *at != '\0'; at++)
        if (*at < ' ' || *at > '~')
            *at = '?';
    return word;
}

/* One number at *place, which is moved behind it. */
static enum cg_status read_number(const struct cg_reading *reading,
                                  const char *line, const char **place,
                                  double *value, struct cg_error *error)
{
    char *end;
    *value = strtod(*place, &end);
    size_t length = (size_t)(end - *place);
    if (length == 0 || memchr(*place, 'x', length) != NULL ||
        memchr(*place, 'X', length) != NULL)
        return cg_reading_wrong(reading, error,
                                "not a number: %s; a line holds a height, or "
                                "a position and a height (comments begin "
                                "with #)",
                                word_at(*place).text);
    if (!isfinite(*value))
        return cg_reading_wrong(reading, error,
                                "%s: not a finite number; each point needs "
                                "a height",
                                word_at(*place).text);
    if (end[0] == ',' && end[1] >= '0' && end[1] <= '9' &&
        strchr(line, '.') == NULL)
        return cg_reading_wrong(reading, error,
                                "%s: a decimal comma? write numbers with a "
                                "point, columns parted by blanks or "
                                "semicolons",
                                word_at(*place).text);
    *place = end;
    return CG_OK;
}

enum cg_status cg_reading_numbers(const struct cg_reading *reading,
                                  const char *line, double value[2], int *count,
                                  struct cg_error *error)
{
    const char *place = cg_reading_skip(line);
    *count = 0;
    do {
        if (*count == 2)
            return cg_reading_wrong(reading, error,
                                    "more than two columns; a line holds a "
                                    "height, or a position and a height");
        enum cg_status status =
            read_number(reading, line, &place, &value[*count], error);
        if (status != CG_OK)
            return status;
        ++*count;
        const char *next = cg_reading_skip(place);
        if ((*next == ';' || *next == ',') && *count == 1)
            next = cg_reading_skip(next + 1);
        else if (next == place && *next != '\0')
            return cg_reading_wrong(reading, error, "not a number: %s",
                                    word_at(cg_reading_skip(line)).text);
        place = next;
    } while (*place != '\0');
    return CG_OK;
}

static enum cg_status grow(struct cg_reading *reading, struct cg_error *error)
{
    if (reading->points < reading->capacity)
        return CG_OK;
    if (reading->points == CG_PROFILE_MOST)
        return cg_reading_wrong(reading, error,
                                "more than %d points; that many are allowed",
                                CG_PROFILE_MOST);
    size_t capacity = reading->capacity > 0 ? 2 * reading->capacity : 8192;
    if (capacity > CG_PROFILE_MOST)
        capacity = CG_PROFILE_MOST;
    double *larger = realloc(reading->height, capacity * sizeof *larger);
    if (larger == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory",
                            reading->path);
    reading->height = larger;
    reading->capacity = capacity;
    return CG_OK;
}

/* Positions must rise, in even steps. */
static enum cg_status take_position(struct cg_reading *reading, double position,
                                    struct cg_error *error)
{
    double step = position - reading->last;
    if (reading->points == 0)
        reading->first = position;
    else if (!(step > 0.0))
        return cg_reading_wrong(reading, error,
                                "the position %g does not rise from %g; "
                                "positions rise in even steps",
                                position, reading->last);
    else if (reading->points == 1)
        reading->step = step;
    else if (!(step > SHORTEST_STEP * reading->step &&
               step < LONGEST_STEP * reading->step))
        return cg_reading_wrong(reading, error,
                                "a step of %g after steps of %g; positions "
                                "rise in even steps",
                                step, reading->step);
    reading->last = position;
    return CG_OK;
}

enum cg_status cg_reading_add(struct cg_reading *reading, const double *value,
                              int columns, struct cg_error *error)
{
    double height = value[columns - 1] * reading->height_unit;
    if (reading->columns == 0)
        reading->columns = columns;
    if (columns != reading->columns)
        return cg_reading_wrong(reading, error, "%d column%s after lines of %d",
                                columns, columns > 1 ? "s" : "",
                                reading->columns);
    if (!(fabs(height) <= HIGHEST))
        return cg_reading_wrong(reading, error,
                                "a height of %g um; up to %g um is allowed",
                                height * 1e6, HIGHEST * 1e6);
    enum cg_status status = grow(reading, error);
    if (status == CG_OK && columns == 2)
        status = take_position(reading, value[0], error);
    if (status == CG_OK)
        reading->height[reading->points++] = height;
    return status;
}
