/* Shared by the readers of profile files; not for other use. */
#ifndef CG_PROFILE_PARTS_H
#define CG_PROFILE_PARTS_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

/* Where an SMD file is: its records follow each other, each ended by ETX. */
enum cg_smd_record { CG_SMD_HEADER, CG_SMD_INFO, CG_SMD_DATA, CG_SMD_END };

struct cg_smd {
    enum cg_smd_record record;
    bool feature, x, z;     /* PRF, CX, CZ have been read */
    bool even;              /* CX I: its values are not in the file */
    double points;          /* promised by the header */
    double step;            /* CX I: from point to point [m] */
    double x_scale, z_scale; /* of a value in the file [m] */
};

struct cg_reading {
    const char *path;
    size_t line;
    double *height;          /* [points] [m] */
    size_t points, capacity;
    int columns;             /* 0 until the first point */
    double first, last, step; /* positions and first step, as written */
    bool units_given;
    double position_unit, height_unit; /* [m] */
    double spacing;          /* [m]; 0: not said */
    bool is_smd;
    struct cg_smd smd;
};

/* "PATH:LINE: " and the message.  Returns CG_BAD_INPUT. */
enum cg_status cg_reading_wrong(const struct cg_reading *reading,
                                struct cg_error *error, const char *format,
                                ...) CG_FORMAT(3, 4);

/* Behind blanks and tabs. */
const char *cg_reading_skip(const char *text);

/* One line's numbers into value[2]; *count 1 or 2. */
enum cg_status cg_reading_numbers(const struct cg_reading *reading,
                                  const char *line, double value[2],
                                  int *count, struct cg_error *error);

/* One more point, as written: with two columns `value` is position, height. */
enum cg_status cg_reading_add(struct cg_reading *reading, const double *value,
                              int columns, struct cg_error *error);

/* A line of an SMD file, and what may be said at its end. */
enum cg_status cg_smd_line(struct cg_reading *reading, char *line,
                           struct cg_error *error);
enum cg_status cg_smd_end(struct cg_reading *reading, struct cg_error *error);

#endif
