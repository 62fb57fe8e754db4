#include "film_table.h"

#include "constants.h"
#include "table.h"

static void write_ring(struct cg_table *table, const struct cg_case *c,
                       const struct cg_ring_film_workspace *workspace,
                       const struct cg_ring_gas *gas, const char *label)
{
    double around = CG_PI * c->engine.bore;
    cg_table_block(table, "%s", label);
    for (size_t i = 0; i < CG_RING_FILM_POINTS; i++) {
        const struct cg_film_point *point = &workspace->point[i];
        double values[9] = {cg_ring_film_angle(i),
                            point->film * 1e6,
                            workspace->speed[i],
                            workspace->viscosity[i] * 1e3,
                            workspace->load[i] * around,
                            point->contact * around,
                            point->viscous * around,
                            point->boundary * around,
                            gas->above[i] / 1e5};
        cg_table_row(table, values, 9);
    }
}

enum cg_status cg_film_table_write(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_case *c,
                                   struct cg_duty_run *run,
                                   struct cg_error *error)
{
    static const char *const label[CG_RING_OIL] = {"top", "second"};
    if (c->film_law == CG_FILM_CONSTANT)
        return cg_table_drop(dir, "film.dat", error);
    struct cg_table_head head = {
        "Oil film of the compression rings by Reynolds lubrication at rated "
        "speed, full load; forces of the whole ring; starvation, twist and "
        "bore distortion left out; 0 deg is TDC firing",
        of,
        "crank_deg  film_um  speed_m_s  viscosity_mPas  load_N  contact_N  "
        "viscous_N  boundary_N  above_bar  block",
        "film: at the nearest point; speed: down the bore; load: towards the "
        "bore, of tension and gas behind; contact: of it on asperities; "
        "viscous: along the ring's motion; above: absolute, at the face's "
        "upper edge"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "film.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    const struct cg_operating_point *full = &run->point[run->full_load];
    struct cg_point_workspace *workspace = &run->workspace;
    for (int r = 0; r < CG_RING_OIL && status == CG_OK; r++) {
        struct cg_film_mean mean;
        cg_ring_gas_estimate((enum cg_ring_place)r,
                             c->charge.ambient_pressure, full->cylinder,
                             workspace->ring_gas);
        status = cg_ring_film_solve(c, run->thermal, full->settled,
                                    (enum cg_ring_place)r,
                                    full->operating.speed, workspace->ring_gas,
                                    workspace->ring_film, &mean, error);
        if (status == CG_OK)
            write_ring(table, c, workspace->ring_film, workspace->ring_gas,
                       label[r]);
    }
    return cg_table_close(table, status, error);
}
