#include "grid.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { AXIS_POINTS = 100000, VALUE_LENGTH = 48 };
#define GRID_POINTS 10000000.0
/* Numbers, true and false, names: what is a word of a table. */
#define VALUE_LETTERS                                                          \
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+-_."

static enum cg_status bad(const char *vary, const char *what,
                          struct cg_error *error)
{
    return cg_error_set(error, CG_BAD_INPUT,
                        "--vary %.200s: %s; allowed: PATH=FROM:TO:STEP or "
                        "PATH=a,b,c",
                        vary, what);
}

static enum cg_status add_value(struct cg_axis *axis, const char *text,
                                size_t length, struct cg_error *error)
{
    char **grown =
        realloc(axis->value, (axis->count + 1) * sizeof *axis->value);
    if (grown == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    axis->value = grown;
    char *copy = malloc(length + 1);
    if (copy == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    memcpy(copy, text, length);
    copy[length] = '\0';
    axis->value[axis->count++] = copy;
    return CG_OK;
}

/* Three numbers parted by colons, and nothing else. */
static int read_range(const char *text, double range[3])
{
    char *end;
    for (int i = 0; i < 3; i++) {
        range[i] = strtod(text, &end);
        if (end == text || !isfinite(range[i]) || *end != (i < 2 ? ':' : '\0'))
            return 0;
        text = end + 1;
    }
    return 1;
}

static enum cg_status add_range(const char *vary, const char *text,
                                struct cg_axis *axis, struct cg_error *error)
{
    double range[3];
    if (!read_range(text, range))
        return bad(vary, "not a range", error);
    double steps = (range[1] - range[0]) / range[2];
    if (!(range[2] != 0.0 && steps >= 0.0))
        return bad(vary, "the step does not lead from FROM to TO", error);
    if (!(steps < AXIS_POINTS))
        return bad(vary, "more than 100000 values", error);
    enum cg_status status = CG_OK;
    for (double i = 0.0; i <= steps + 1e-9 && status == CG_OK; i += 1.0) {
        char value[VALUE_LENGTH];
        double at = range[0] + i * range[2];
        /* What should be zero is not to read as 1e-17. */
        if (fabs(at) < 1e-9 * fabs(range[2]))
            at = 0.0;
        snprintf(value, sizeof value, "%.10g", at);
        status = add_value(axis, value, strlen(value), error);
    }
    return status;
}

static enum cg_status add_list(const char *vary, const char *text,
                               struct cg_axis *axis, struct cg_error *error)
{
    for (;;) {
        size_t length = strcspn(text, ",");
        if (length == 0 || length >= VALUE_LENGTH)
            return bad(vary, "an empty or overlong value", error);
        if (strspn(text, VALUE_LETTERS) < length)
            return bad(vary, "a value of more than letters, digits, + - _ .",
                       error);
        enum cg_status status = add_value(axis, text, length, error);
        if (status != CG_OK)
            return status;
        if (text[length] == '\0')
            return CG_OK;
        text += length + 1;
    }
}

static enum cg_status read_axis(const char *vary, struct cg_axis *axis,
                                struct cg_error *error)
{
    const char *equals = strchr(vary, '=');
    if (equals == NULL || equals == vary)
        return bad(vary, "no PATH=", error);
    size_t length = (size_t)(equals - vary);
    if (length >= sizeof axis->path)
        return bad(vary, "an overlong PATH", error);
    memcpy(axis->path, vary, length);
    axis->path[length] = '\0';
    return strchr(equals, ':') != NULL ? add_range(vary, equals + 1, axis, error)
                                       : add_list(vary, equals + 1, axis, error);
}

enum cg_status cg_grid_read(const char *const *vary, size_t count,
                            struct cg_grid *grid, struct cg_error *error)
{
    memset(grid, 0, sizeof *grid);
    if (count == 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "sweep: nothing to vary; give --vary "
                            "PATH=FROM:TO:STEP or PATH=a,b,c");
    if (count > CG_AXES)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--vary: at most %d may be varied", CG_AXES);
    double points = 1.0;
    for (size_t i = 0; i < count; i++) {
        enum cg_status status = read_axis(vary[i], &grid->axis[i], error);
        grid->axes = i + 1;
        if (status != CG_OK)
            return status;
        points *= (double)grid->axis[i].count;
    }
    if (!(points <= GRID_POINTS))
        return cg_error_set(error, CG_BAD_INPUT,
                            "sweep: %.0f points; at most %.0f are allowed",
                            points, GRID_POINTS);
    grid->points = (size_t)points;
    return CG_OK;
}

void cg_grid_free(struct cg_grid *grid)
{
    for (size_t i = 0; i < grid->axes; i++) {
        for (size_t k = 0; k < grid->axis[i].count; k++)
            free(grid->axis[i].value[k]);
        free(grid->axis[i].value);
    }
    memset(grid, 0, sizeof *grid);
}

const char *cg_grid_value(const struct cg_grid *grid, size_t point, size_t axis)
{
    for (size_t i = grid->axes - 1; i > axis; i--)
        point /= grid->axis[i].count;
    return grid->axis[axis].value[point % grid->axis[axis].count];
}

void cg_grid_sets(const struct cg_grid *grid, size_t point,
                  char set[CG_AXES][CG_SET_LENGTH])
{
    for (size_t i = 0; i < grid->axes; i++)
        snprintf(set[i], CG_SET_LENGTH, "%s=%s", grid->axis[i].path,
                 cg_grid_value(grid, point, i));
}
