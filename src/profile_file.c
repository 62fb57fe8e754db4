#include "profile_file.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "profile_parts.h"
#include "text_file.h"
#include "unit.h"

/* Steps between positions that still count as even: positions are often
 * rounded, but a missing point doubles a step. */
#define SHORTEST_STEP 0.4
#define LONGEST_STEP 1.7

#define HIGHEST 0.01 /* a height of a bore's finish [m] */

enum cg_status cg_reading_wrong(const struct cg_reading *reading,
                                struct cg_error *error, const char *format,
                                ...)
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

static const char *skip_blanks(const char *text)
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
                                  const char *line, double value[2],
                                  int *count, struct cg_error *error)
{
    const char *place = skip_blanks(line);
    *count = 0;
    do {
        if (*count == 2)
            return cg_reading_wrong(reading, error,
                                    "more than two columns; a line holds a "
                                    "height, or a position and a height");
        enum cg_status status = read_number(reading, line, &place,
                                            &value[*count], error);
        if (status != CG_OK)
            return status;
        ++*count;
        const char *next = skip_blanks(place);
        if ((*next == ';' || *next == ',') && *count == 1)
            next = skip_blanks(next + 1);
        else if (next == place && *next != '\0')
            return cg_reading_wrong(reading, error, "not a number: %s",
                                    word_at(skip_blanks(line)).text);
        place = next;
    } while (*place != '\0');
    return CG_OK;
}

static enum cg_status make_room(struct cg_reading *reading,
                                struct cg_error *error)
{
    if (reading->points < reading->room)
        return CG_OK;
    if (reading->points == CG_PROFILE_MOST)
        return cg_reading_wrong(reading, error,
                                "more than %d points; that many are allowed",
                                CG_PROFILE_MOST);
    size_t room = reading->room > 0 ? 2 * reading->room : 8192;
    if (room > CG_PROFILE_MOST)
        room = CG_PROFILE_MOST;
    double *larger = realloc(reading->height, room * sizeof *larger);
    if (larger == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory",
                            reading->path);
    reading->height = larger;
    reading->room = room;
    return CG_OK;
}

/* Positions must rise, in even steps. */
static enum cg_status take_position(struct cg_reading *reading,
                                    double position, struct cg_error *error)
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
        return cg_reading_wrong(reading, error,
                                "%d column%s after lines of %d", columns,
                                columns > 1 ? "s" : "", reading->columns);
    if (!(fabs(height) <= HIGHEST))
        return cg_reading_wrong(reading, error,
                                "a height of %g um; up to %g um is allowed",
                                height * 1e6, HIGHEST * 1e6);
    enum cg_status status = make_room(reading, error);
    if (status == CG_OK && columns == 2)
        status = take_position(reading, value[0], error);
    if (status == CG_OK)
        reading->height[reading->points++] = height;
    return status;
}

/* "# units: um um" and "# spacing: 0.5 um"; any other comment is passed by. */
static enum cg_status take_comment(struct cg_reading *reading,
                                   const char *line, struct cg_error *error)
{
    char first[16] = "", second[16] = "";
    double value;
    const char *text = skip_blanks(line + 1);
    if (sscanf(text, "units: %15s %15s", first, second) >= 1) {
        bool two = second[0] != '\0';
        const struct cg_unit *position = cg_unit_find(CG_LENGTH, first);
        const struct cg_unit *height =
            cg_unit_find(CG_LENGTH, two ? second : first);
        if (position == NULL || height == NULL || reading->points > 0)
            return cg_reading_wrong(reading, error,
                                    "units: before the first point, one or "
                                    "two of mm, um, in, thou are allowed");
        reading->units_given = two;
        reading->position_unit = position->scale;
        reading->height_unit = height->scale;
    } else if (strncmp(text, "spacing:", 8) == 0) {
        const struct cg_unit *unit =
            sscanf(text, "spacing: %lf %15s", &value, first) == 2
                ? cg_unit_find(CG_LENGTH, first)
                : NULL;
        if (unit == NULL || !(value > 0.0))
            return cg_reading_wrong(reading, error,
                                    "spacing: a length is allowed, such as "
                                    "0.5 um");
        reading->spacing = value * unit->scale;
    }
    return CG_OK;
}

static enum cg_status take_line(void *context, char *line, size_t number,
                                struct cg_error *error)
{
    struct cg_reading *reading = context;
    double value[2];
    int count;
    reading->line = number;
    if (number == 1 && strncmp(line, "\xEF\xBB\xBF", 3) == 0)
        line += 3; /* a byte order mark */
    if (number == 1 && strstr(line, "5436") != NULL)
        reading->is_smd = true;
    if (reading->is_smd)
        return cg_smd_line(reading, line, error);
    const char *text = skip_blanks(line);
    if (*text == '\0')
        return CG_OK;
    if (*text == '#')
        return take_comment(reading, text, error);
    enum cg_status status =
        cg_reading_numbers(reading, text, value, &count, error);
    if (status == CG_OK)
        status = cg_reading_add(reading, value, count, error);
    return status;
}

/* Of one column: as asked, as the file says, or the usual one. */
static enum cg_status column_spacing(const struct cg_reading *reading,
                                     const struct cg_profile_ask *ask,
                                     double *spacing,
                                     struct cg_profile_note *note,
                                     struct cg_error *error)
{
    *spacing = ask->spacing > 0.0 ? ask->spacing : reading->spacing;
    if (*spacing > 0.0)
        return CG_OK;
    if (ask->filtered)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: one column, and no spacing; give --spacing "
                            "0.5um, or a first line \"# spacing: 0.5 um\"",
                            reading->path);
    *spacing = CG_PROFILE_USUAL_SPACING;
    note->usual_spacing = true;
    return CG_OK;
}

static enum cg_status find_spacing(const struct cg_reading *reading,
                                   const struct cg_profile_ask *ask,
                                   double *spacing,
                                   struct cg_profile_note *note,
                                   struct cg_error *error)
{
    if (reading->columns == 1)
        return column_spacing(reading, ask, spacing, note, error);
    if (ask->spacing > 0.0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: has positions of its own; --spacing is for "
                            "one column of heights",
                            reading->path);
    double step =
        (reading->last - reading->first) / ((double)reading->points - 1.0);
    *spacing = step * reading->position_unit;
    if (!reading->units_given && !reading->is_smd &&
        *spacing > ask->cutoff / 10.0 && step * 1e-6 <= ask->cutoff / 10.0) {
        *spacing = step * 1e-6;
        note->guessed_um = true;
    }
    return CG_OK;
}

/* A profile of what was read, once it is one. */
static enum cg_status make_profile(const struct cg_reading *reading,
                                   const struct cg_profile_ask *ask,
                                   struct cg_profile *profile,
                                   struct cg_profile_note *note,
                                   struct cg_error *error)
{
    struct cg_profile found = {reading->height, reading->points,
                               CG_PROFILE_USUAL_SPACING};
    struct cg_error why = {CG_OK, ""};
    double low, high;
    if (reading->points == 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: no points in it; a line holds a height, or a "
                            "position and a height",
                            reading->path);
    /* before the spacing: that of too few points means nothing */
    if (cg_profile_check(&found, &low, &high, &why) != CG_OK)
        return cg_error_set(error, CG_BAD_INPUT, "%s: %.300s", reading->path,
                            why.text);
    enum cg_status status =
        find_spacing(reading, ask, &found.spacing, note, error);
    if (status == CG_OK)
        *profile = found;
    return status;
}

enum cg_status cg_profile_file_read(const char *path,
                                    const struct cg_profile_ask *ask,
                                    struct cg_profile *profile,
                                    struct cg_profile_note *note,
                                    struct cg_error *error)
{
    struct cg_reading reading = {
        .path = path, .position_unit = 1e-3, .height_unit = 1e-6};
    memset(note, 0, sizeof *note);
    enum cg_status status = cg_text_lines(path, take_line, &reading, error);
    if (status == CG_OK && reading.is_smd)
        status = cg_smd_end(&reading, error);
    if (status == CG_OK)
        status = make_profile(&reading, ask, profile, note, error);
    note->smd = reading.is_smd;
    if (status != CG_OK)
        free(reading.height);
    return status;
}
