#include "sampling.h"

#include <stdlib.h>

#include "progress.h"
#include "threads.h"

/* Items store what they find by their number; nothing is added up here. */
static void run_items(const struct cg_options *options,
                      struct cg_confidence_work *work,
                      struct cg_confidence_workspace **workspace, int threads)
{
    struct cg_progress progress;
    long items = (long)cg_confidence_items(work);
    size_t done = 0;
    cg_progress_begin(&progress, "samples", 0, (size_t)items, options->quiet);
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic, 1) num_threads(threads)
#endif
    for (long item = 0; item < items; item++) {
        cg_confidence_run(work, workspace[cg_thread()], (size_t)item);
#ifdef _OPENMP
#pragma omp critical(cg_sampling_progress)
#endif
        cg_progress_tell(&progress, ++done);
    }
    (void)threads;
    cg_progress_end(&progress);
}

enum cg_status cg_sampling_run(const struct cg_options *options,
                               struct cg_confidence_work *work,
                               struct cg_answer *answer,
                               struct cg_error *error)
{
    int threads = cg_threads(options->threads);
    struct cg_confidence_workspace **workspace =
        calloc((size_t)threads, sizeof(struct cg_confidence_workspace *));
    if (workspace == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = CG_OK;
    for (int i = 0; i < threads && status == CG_OK; i++)
        status = cg_confidence_workspace_create(work, &workspace[i], error);
    if (status == CG_OK)
        run_items(options, work, workspace, threads);
    for (int i = 0; i < threads; i++)
        cg_confidence_workspace_free(workspace[i]);
    free(workspace);
    return status == CG_OK ? cg_confidence_end(work, answer, error) : status;
}
