#include "bench_engine.h"

#include <stdio.h>
#include <stdlib.h>

#include "bench_solver.h"
#include "config.h"

#define ENGINE CG_BENCH_CONFIGS "/engines/boosted_four.cfg"

static void read_case(int refine, struct cg_case *c)
{
    static const struct {
        const char *name;
        int cells;
    } along[] = {{"stations", 32}, {"crown_cells", 10}};
    enum { SETS = sizeof along / sizeof *along };
    char text[SETS][40];
    const char *set[SETS];
    for (size_t i = 0; i < SETS; i++) {
        snprintf(text[i], sizeof text[i], "solver.%s=%d", along[i].name,
                 along[i].cells * refine);
        set[i] = text[i];
    }
    struct cg_error error;
    if (cg_config_read(ENGINE, set, SETS, c, &error) != CG_OK)
        bench_fail(error.text);
}

void bench_engine_make(int refine, struct bench_engine *engine)
{
    struct cg_case c;
    struct cg_error error;
    read_case(refine, &c);
    if (cg_duty_run_create(&c, &engine->run, &error) != CG_OK)
        bench_fail(error.text);
    struct cg_thermal *thermal = engine->run->thermal;
    const struct cg_regime *full = &engine->run->regime[engine->run->full_load];
    engine->network = thermal->network;
    engine->start = calloc(engine->network->nodes, sizeof *engine->start);
    if (engine->start == NULL)
        bench_fail("no memory");
    cg_duty_run_start(&c, engine->run, engine->start);
    cg_regime_apply(full, full, 0, thermal);
}

void bench_engine_free(struct bench_engine *engine)
{
    cg_duty_run_free(engine->run);
    free(engine->start);
}
