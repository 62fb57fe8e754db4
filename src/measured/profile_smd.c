/* SMD, the text of ISO 5436-2:2012's soft gauges, from memory:
 *
 *     ISO 5436 - 2000 SAMPLE             header record: revision, name,
 *     PRF 0 BORE                         feature,
 *     CX I 8000 MM 1.0 D 0.0005          axes: A absolute or I incremental,
 *     CZ A 8000 UM 1.0 D                 points, unit, scale, data type; for I
 *     <ETX>                              the increment
 *     DATE ...                           a record of remarks, passed by
 *     <ETX>
 *     0.1234                             data: Z, or X and Z when CX is A
 *     <ETX>
 *     ...                                checksum, not looked at
 */
#include "profile_parts.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "profile_file.h"

enum { ETX = 3, SUB = 26 };

static double unit_of(const char *name)
{
    static const struct {
        const char *name;
        double metres;
    } unit[] = {{"m", 1.0},   {"M", 1.0},   {"mm", 1e-3}, {"MM", 1e-3},
                {"um", 1e-6}, {"UM", 1e-6}, {"nm", 1e-9}, {"NM", 1e-9}};
    for (size_t i = 0; i < sizeof unit / sizeof unit[0]; i++)
        if (strcmp(unit[i].name, name) == 0)
            return unit[i].metres;
    return NAN;
}

/* "CX I 8000 MM 1.0 D 0.0005" and "CZ A 8000 UM 1.0 D". */
static enum cg_status take_axis(struct cg_reading *reading, const char *line,
                                struct cg_error *error)
{
    struct cg_smd *smd = &reading->smd;
    char name[4], type[4], unit[8], data[8];
    double points, scale, increment = NAN;
    int found = sscanf(line, "%3s %3s %lf %7s %lf %7s %lf", name, type, &points,
                       unit, &scale, data, &increment);
    bool x = line[1] == 'X', even = x && type[0] == 'I';
    double metres = found >= 5 ? scale * unit_of(unit) : NAN;
    if (found < 6 || (type[0] != 'A' && !even) || !(metres > 0.0) ||
        !(points >= 1.0 && points <= CG_PROFILE_MOST))
        return cg_reading_wrong(reading, error,
                                "axis %.2s: such as CX I 8000 MM 1.0 D 0.0005 "
                                "or CZ A 8000 UM 1.0 D, at most %d points",
                                line, CG_PROFILE_MOST);
    if (even && !(increment * metres > 0.0))
        return cg_reading_wrong(reading, error,
                                "axis CX: type I needs an increment above 0");
    if (smd->points > 0.0 && smd->points != points)
        return cg_reading_wrong(reading, error,
                                "axes of %g and %g points; they must agree",
                                smd->points, points);
    smd->points = points;
    if (x) {
        smd->x = true;
        smd->even = even;
        smd->step = even ? increment * metres : 0.0;
        smd->x_scale = metres;
    } else {
        smd->z = true;
        smd->z_scale = metres;
    }
    return CG_OK;
}

static enum cg_status take_header(struct cg_reading *reading, const char *line,
                                  struct cg_error *error)
{
    if (strncmp(line, "CX ", 3) == 0 || strncmp(line, "CZ ", 3) == 0)
        return take_axis(reading, line, error);
    if (strncmp(line, "SUR", 3) == 0)
        return cg_reading_wrong(reading, error,
                                "an areal feature (SUR); a profile (PRF) is "
                                "allowed");
    if (strncmp(line, "PRF", 3) == 0)
        reading->smd.feature = true;
    return CG_OK;
}

static enum cg_status take_data(struct cg_reading *reading, const char *line,
                                struct cg_error *error)
{
    struct cg_smd *smd = &reading->smd;
    double value[2];
    int count, wanted = smd->even ? 1 : 2;
    enum cg_status status =
        cg_reading_numbers(reading, line, value, &count, error);
    if (status == CG_OK && count != wanted)
        status = cg_reading_wrong(reading, error,
                                  "%d number%s; the header asks for %d", count,
                                  count > 1 ? "s" : "", wanted);
    if (status == CG_OK)
        status = cg_reading_add(reading, value, count, error);
    return status;
}

static enum cg_status end_record(struct cg_reading *reading,
                                 struct cg_error *error)
{
    struct cg_smd *smd = &reading->smd;
    if (smd->record == CG_SMD_HEADER && !(smd->feature && smd->x && smd->z))
        return cg_reading_wrong(reading, error,
                                "the header ends without all of PRF, CX and "
                                "CZ");
    if (smd->record == CG_SMD_HEADER) {
        reading->position_unit = smd->x_scale;
        reading->height_unit = smd->z_scale;
        reading->spacing = smd->step;
    }
    if (smd->record != CG_SMD_END)
        smd->record++;
    return CG_OK;
}

enum cg_status cg_smd_line(struct cg_reading *reading, char *line,
                           struct cg_error *error)
{
    struct cg_smd *smd = &reading->smd;
    char *end = strchr(line, ETX);
    enum cg_status status = CG_OK;
    if (end != NULL)
        *end = '\0';
    bool empty = line[strspn(line, " \t\x1a")] == '\0';
    if (!empty && smd->record == CG_SMD_HEADER)
        status = take_header(reading, line, error);
    else if (!empty && smd->record == CG_SMD_DATA && line[0] != SUB)
        status = take_data(reading, line, error);
    if (status == CG_OK && end != NULL)
        status = end_record(reading, error);
    return status;
}

enum cg_status cg_smd_end(struct cg_reading *reading, struct cg_error *error)
{
    const struct cg_smd *smd = &reading->smd;
    if (smd->record == CG_SMD_HEADER || smd->record == CG_SMD_INFO)
        return cg_reading_wrong(reading, error,
                                "the file ends before its data: header and "
                                "remarks each end with ETX (byte 3)");
    if ((double)reading->points != smd->points)
        return cg_reading_wrong(reading, error,
                                "%zu points; the header promises %g",
                                reading->points, smd->points);
    return CG_OK;
}
