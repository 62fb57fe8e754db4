#include "finish_tables.h"

#include "table.h"

enum {
    PROFILE_ROWS = 20000, /* most; a longer trace is thinned out */
    CURVE_ROWS = 500,
    PATCH_STRIDE = 2 /* points of the patch to a row of its table */
};

#define UM 1e6  /* from m */
#define OIL 1e5 /* mm3/cm2 from m3/m2 */
#define PCT 100.0

struct cg_key_values cg_finish_keys(const struct cg_surface *surface,
                                    const struct cg_finish_verdict *verdict)
{
    const struct cg_amplitude *a = &surface->amplitude;
    const struct cg_core *core = &surface->core;
    const struct cg_probability *p = &surface->probability;
    const struct cg_profile *level = &surface->level;
    double length = (double)surface->evaluated * level->spacing;
    return (struct cg_key_values){{
        {"Ra", "um", a->ra * UM},
        {"Rq", "um", a->rq * UM},
        {"Rz", "um", a->rz * UM},
        {"Rk", "um", core->rk * UM},
        {"Rpk", "um", core->rpk * UM},
        {"Rvk", "um", core->rvk * UM},
        {"Mr1", "%", core->mr1 * PCT},
        {"Mr2", "%", core->mr2 * PCT},
        {"A1", "um", core->a1 * UM},
        {"A2", "um", core->a2 * UM},
        {"Vo", "mm3/cm2", verdict->oil_held * OIL},
        {"Vo_needed", "mm3/cm2", verdict->oil_needed * OIL},
        {"fuel_per_area", "mm3/cm2", verdict->fuel_per_area * OIL},
        {"Rt", "um", a->rt * UM},
        {"Rpq", "um", p->rpq * UM},
        {"Rvq", "um", p->rvq * UM},
        {"Rmq", "%", p->rmq * PCT},
        {"points", "1", (double)surface->evaluated},
        {"spacing", "um", level->spacing * UM},
        {"length", "mm", length * 1e3},
        {"cutoff", "mm", surface->cutoff * 1e3},
    }};
}

static enum cg_status write_keys(const char *dir, const struct cg_table_of *of,
                                 const struct cg_surface *surface,
                                 const struct cg_finish_verdict *verdict,
                                 struct cg_error *error)
{
    struct cg_table_head head = {"Bore finish, and oil held against fuel", of,
                                 CG_KEY_COLUMNS, NULL};
    struct cg_key_values keys = cg_finish_keys(surface, verdict);
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "finish.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "filter: %s", cg_filter_name(surface->filter));
    cg_table_keys(table, &keys);
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_profile(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_surface *surface,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "The leveled trace, the mean line taken off, and what is left", of,
        "position_mm  leveled_um  mean_line_um  roughness_um", NULL};
    const struct cg_profile *level = &surface->level;
    size_t stride = (level->points - 1) / PROFILE_ROWS + 1;
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "finish_profile.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    if (stride > 1)
        cg_table_note(table, "every %zuth point of %zu", stride, level->points);
    cg_table_note(table, "evaluated: %.6g to %.6g mm",
                  (double)surface->first * level->spacing * 1e3,
                  (double)(surface->first + surface->evaluated) *
                      level->spacing * 1e3);
    for (size_t i = 0; i < level->points; i += stride) {
        double z = level->height[i] * UM, line = surface->line[i] * UM;
        double values[4] = {(double)i * level->spacing * 1e3, z, line,
                            z - line};
        cg_table_row(table, values, 4);
    }
    return cg_table_close(table, CG_OK, error);
}

static void pair(struct cg_table *table, double ratio, double height)
{
    double values[2] = {ratio * PCT, height * UM};
    cg_table_row(table, values, 2);
}

static enum cg_status write_ratio(const char *dir, const struct cg_table_of *of,
                                  const struct cg_surface *surface,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Material ratio curve, its core, peaks and valleys (ISO 13565-2)", of,
        "ratio_pct  height_um  block", NULL};
    const struct cg_core *core = &surface->core;
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "finish_ratio.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_block(table, "curve");
    for (int i = 0; i <= CURVE_ROWS; i++) {
        double ratio = (double)i / CURVE_ROWS;
        pair(table, ratio, cg_ratio_curve_height(&surface->curve, ratio));
    }
    cg_table_block(table, "core line");
    pair(table, 0.0, core->top);
    pair(table, 1.0, core->bottom);
    cg_table_block(table, "peak triangle");
    pair(table, 0.0, core->top + core->rpk);
    pair(table, core->mr1, core->top);
    pair(table, 0.0, core->top);
    cg_table_block(table, "valley triangle");
    pair(table, core->mr2, core->bottom);
    pair(table, 1.0, core->bottom - core->rvk);
    pair(table, 1.0, core->bottom);
    return cg_table_close(table, CG_OK, error);
}

/* A line through its stretch and on to the middle of the paper. */
static void score_line(struct cg_table *table, const char *name,
                       const struct cg_score_line *line)
{
    cg_table_block(table, "%s", name);
    for (int i = 0; i < 2; i++) {
        double score = i == 0 ? line->from : line->to;
        double values[2] = {score, (line->level - line->slope * score) * UM};
        cg_table_row(table, values, 2);
    }
}

static enum cg_status write_probability(const char *dir,
                                        const struct cg_table_of *of,
                                        const struct cg_surface *surface,
                                        struct cg_error *error)
{
    struct cg_table_head head = {
        "Material ratio on probability paper (after ISO 13565-3)", of,
        "score  height_um  block", "score: normal quantile of the ratio"};
    const struct cg_probability *p = &surface->probability;
    double count = (double)surface->curve.points;
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "finish_probability.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    double far = -cg_ratio_score(0.5 / count);
    far = far < 3.5 ? far : 3.5;
    cg_table_block(table, "curve");
    for (int i = 0; i <= CURVE_ROWS; i++) {
        double score = far * (2.0 * i / CURVE_ROWS - 1.0);
        double ratio = cg_score_ratio(score);
        double values[2] = {score,
                            cg_ratio_curve_height(&surface->curve, ratio) * UM};
        cg_table_row(table, values, 2);
    }
    score_line(table, p->bends ? "plateau" : "one line", &p->plateau);
    score_line(table, p->bends ? "valleys" : "one line", &p->valley);
    return cg_table_close(table, CG_OK, error);
}

/* A blank line after each row of the grid, as gnuplot asks for. */
static void patch_block(struct cg_table *table, const char *name,
                        const double *height)
{
    cg_table_block(table, "%s", name);
    for (int row = 0; row < CG_PATCH_SIDE; row += PATCH_STRIDE) {
        if (row > 0)
            cg_table_line(table, "%s", "");
        for (int column = 0; column < CG_PATCH_SIDE; column += PATCH_STRIDE)
            cg_table_line(table, "%.4g %.4g %.4f %zu",
                          column * CG_PATCH_STEP * 1e3,
                          row * CG_PATCH_STEP * 1e3,
                          height[row * CG_PATCH_SIDE + column] * UM,
                          cg_table_block_number(table));
    }
}

static enum cg_status write_patch(const char *dir, const struct cg_table_of *of,
                                  const struct cg_patch *patch,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "Simulated honed surfaces, invented for teaching", of,
        "around_mm  along_mm  height_um  block", NULL};
    struct cg_table *table;
    if (patch == NULL)
        return cg_table_drop(dir, "finish_patch.dat", error);
    enum cg_status status =
        cg_table_open(dir, "finish_patch.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    patch_block(table, "coarse", patch[CG_STAGES_COARSE].height);
    patch_block(table, "plateau", patch[CG_STAGES_PLATEAU].height);
    return cg_table_close(table, CG_OK, error);
}

enum cg_status cg_finish_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_surface *surface,
                                      const struct cg_finish_verdict *verdict,
                                      const struct cg_patch *patch,
                                      struct cg_error *error)
{
    enum cg_status status = write_keys(dir, of, surface, verdict, error);
    if (status == CG_OK)
        status = write_profile(dir, of, surface, error);
    if (status == CG_OK)
        status = write_ratio(dir, of, surface, error);
    if (status == CG_OK)
        status = write_probability(dir, of, surface, error);
    if (status == CG_OK)
        status = write_patch(dir, of, patch, error);
    return status;
}
