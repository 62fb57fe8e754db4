#include "sampling.h"

#include "progress.h"
#include "threads.h"

/* Items store what they find by their number; nothing is added up here. */
static void run_items(const struct cg_options *options,
                      struct cg_confidence_work *work)
{
    struct cg_progress progress;
    long items = (long)cg_confidence_items(work);
    size_t done = 0;
    cg_progress_begin(&progress, "samples", 0, (size_t)items, options->quiet);
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic, 1) \
    num_threads(cg_threads(options->threads))
#endif
    for (long item = 0; item < items; item++) {
        cg_confidence_run(work, (size_t)item);
#ifdef _OPENMP
#pragma omp critical(cg_sampling_progress)
#endif
        cg_progress_tell(&progress, ++done);
    }
    cg_progress_end(&progress);
}

enum cg_status cg_sampling_run(const struct cg_options *options,
                               struct cg_confidence_work *work,
                               struct cg_answer *answer,
                               struct cg_error *error)
{
    run_items(options, work);
    return cg_confidence_end(work, answer, error);
}
