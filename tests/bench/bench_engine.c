#include "bench_engine.h"

#include <stdio.h>
#include <stdlib.h>

#include "bench_solver.h"
#include "config.h"

#define ENGINE CG_BENCH_CONFIGS "/engines/boosted_four.cfg"

/* The first two are the long bodies. */
static void read_case(int refine, bool all, struct cg_case *c)
{
    static const struct {
        const char *name;
        int cells, most;
    } body[] = {{"stations", 32, 600}, {"crown_cells", 10, 200},
                {"skirt_cells", 6, 120}, {"ring_cells", 8, 48}};
    enum { SETS = sizeof body / sizeof *body };
    char text[SETS][40];
    const char *set[SETS];
    size_t sets = all ? SETS : 2;
    for (size_t i = 0; i < sets; i++) {
        int cells = body[i].cells * refine;
        snprintf(text[i], sizeof text[i], "solver.%s=%d", body[i].name,
                 cells < body[i].most ? cells : body[i].most);
        set[i] = text[i];
    }
    struct cg_error error;
    if (cg_config_read(ENGINE, set, sets, c, &error) != CG_OK)
        bench_fail(error.text);
}

void bench_engine_make(int refine, bool all, struct bench_engine *engine)
{
    struct cg_case c;
    struct cg_error error;
    read_case(refine, all, &c);
    if (cg_duty_run_create(&c, &engine->run, &error) != CG_OK)
        bench_fail(error.text);
    struct cg_thermal *thermal = engine->run->thermal;
    const struct cg_operating_point *full =
        &engine->run->point[engine->run->full_load];
    engine->network = thermal->network;
    engine->start = calloc(engine->network->nodes, sizeof *engine->start);
    if (engine->start == NULL)
        bench_fail("no memory");
    cg_duty_run_start(&c, engine->run, engine->start);
    cg_point_apply(full, full, 0, thermal);
}

void bench_engine_free(struct bench_engine *engine)
{
    cg_duty_run_free(engine->run);
    free(engine->start);
}
