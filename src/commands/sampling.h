/* Runs the samples of a confidence side by side. */
#ifndef CG_SAMPLING_H
#define CG_SAMPLING_H

#include "confidence.h"
#include "options.h"

/* All items of the work, with --threads and progress as asked, then its end:
 * as cg_confidence_end.  Equal bytes for any number of threads. */
enum cg_status cg_sampling_run(const struct cg_options *options,
                               struct cg_confidence_work *work,
                               struct cg_answer *answer,
                               struct cg_error *error);

#endif
