#include <stdio.h>
#include <stdlib.h>

#include "config.h"
#include "options.h"
#include "outputs.h"
#include "progress.h"
#include "report_rings.h"
#include "rings_tables.h"
#include "updated_case.h"
#include "threads.h"

#define TABLES "rings.dat pistons.dat"

/* Rings and alloys of one case, and the work on them. */
struct comparing {
    const struct cg_options *options;
    struct cg_updated_case updated;
    struct cg_case c; /* the updated one */
    struct cg_material_library library;
    struct cg_choice_study *study;
    struct cg_alloy_choice *alloy; /* [library.alloys] */
    struct cg_error *alloy_error;  /* [library.alloys] */
    struct cg_rings_answer answer;
};

/* Items store what they find by their number; nothing is added up here. */
static void run_items(struct comparing *comparing)
{
    struct cg_progress progress;
    size_t rings = cg_choice_items(comparing->study), done = 0;
    long items = (long)(rings + comparing->library.alloys);
    cg_progress_begin(&progress, "runs", 0, (size_t)items,
                      comparing->options->quiet);
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic, 1) \
    num_threads(cg_threads(comparing->options->threads))
#endif
    for (long item = 0; item < items; item++) {
        size_t alloy = (size_t)item - rings;
        if ((size_t)item < rings)
            cg_choice_run(comparing->study, (size_t)item);
        else
            cg_alloy_choice_run(&comparing->c, &comparing->library.alloy[alloy],
                                &comparing->alloy[alloy],
                                &comparing->alloy_error[alloy]);
#ifdef _OPENMP
#pragma omp critical(cg_rings_progress)
#endif
        cg_progress_tell(&progress, ++done);
    }
    cg_progress_end(&progress);
}

static enum cg_status begin(struct comparing *comparing,
                            struct cg_error *error)
{
    const struct cg_material_library *library = &comparing->library;
    comparing->alloy = calloc(library->alloys + 1, sizeof *comparing->alloy);
    comparing->alloy_error =
        calloc(library->alloys + 1, sizeof *comparing->alloy_error);
    if (comparing->alloy == NULL || comparing->alloy_error == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    return cg_choice_begin(&comparing->c, library->ring, library->rings,
                           library->face, library->faces, &comparing->study,
                           error);
}

static enum cg_status end(struct comparing *comparing, struct cg_error *error)
{
    struct cg_rings_answer *answer = &comparing->answer;
    for (size_t i = 0; i < comparing->library.alloys; i++)
        if (comparing->alloy_error[i].status != CG_OK)
            return cg_error_set(error, comparing->alloy_error[i].status,
                                "%.400s", comparing->alloy_error[i].text);
    answer->alloy = comparing->alloy;
    answer->alloys = comparing->library.alloys;
    return cg_choice_end(comparing->study, &answer->ring, &answer->rings,
                         &answer->reached, error);
}

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    const struct comparing *comparing = context;
    return cg_rings_tables_write(dir, of, &comparing->c, &comparing->answer,
                                 error);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct comparing *comparing = context;
    (void)error;
    cg_report_rings(report, &comparing->c, &comparing->answer);
    return CG_OK;
}

static enum cg_status write_outputs(struct comparing *comparing,
                                    struct cg_error *error)
{
    struct cg_table_of of;
    cg_table_of_set(comparing->options->told, &comparing->c, &of);
    struct cg_outputs outputs = {.title = "Top rings and pistons for a duty",
                                 .of = &of,
                                 .run = "rings",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = comparing};
    return cg_outputs_write(comparing->options, &outputs, error);
}

/* Whether any ring is not wholly unfit. */
static bool any_stands(const struct cg_rings_answer *answer)
{
    for (size_t i = 0; i < answer->rings; i++)
        if (answer->ring[i].verdict != CG_RING_UNFIT)
            return true;
    return false;
}

enum cg_status cg_command_rings(const struct cg_options *options,
                                struct cg_error *error)
{
    double start = cg_wall_clock();
    struct comparing comparing = {.options = options};
    enum cg_status status =
        cg_updated_case_read(options->config, options->set, options->sets,
                             false, &comparing.updated, error);
    comparing.c = comparing.updated.c;
    if (status == CG_OK)
        status = cg_config_read_library(options->config, options->set,
                                      options->sets, &comparing.library, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = begin(&comparing, error);
    if (status == CG_OK) {
        run_items(&comparing);
        status = end(&comparing, error);
    }
    if (status == CG_OK)
        status = write_outputs(&comparing, error);
    if (status == CG_OK && cg_outputs_talk(options))
        printf("\nComputed in %.0f ms.\n", (cg_wall_clock() - start) * 1e3);
    if (status == CG_OK && !any_stands(&comparing.answer)) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_choice_free(comparing.study);
    cg_material_library_free(&comparing.library);
    cg_updated_case_free(&comparing.updated);
    cg_case_free(&comparing.c);
    free(comparing.alloy);
    free(comparing.alloy_error);
    return status;
}
