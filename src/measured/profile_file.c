#include "profile_file.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "profile_parts.h"
#include "text_file.h"
#include "unit.h"

/* "# units: um um" and "# spacing: 0.5 um"; any other comment is passed by. */
static enum cg_status take_comment(struct cg_reading *reading, const char *line,
                                   struct cg_error *error)
{
    char first[16] = "", second[16] = "";
    double value;
    const char *text = cg_reading_skip(line + 1);
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
    const char *text = cg_reading_skip(line);
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
