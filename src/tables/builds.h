/* A build as its config says it and what was found for it; and two of them side
 * by side.  Screens, tables and pages are made from these alone. */
#ifndef CG_BUILDS_H
#define CG_BUILDS_H

#include "answer.h"
#include "bore_finish.h"
#include "build_change.h"
#include "updated_case.h"

struct cg_build {
    const char *name; /* its config, as shown */
    struct cg_updated_case updated;
    struct cg_answer answer;
    struct cg_answer without;        /* the evidence, if there is any */
    struct cg_finish_verdict finish; /* fuel and oil needed alone, without
                                        evidence, as `finish` has them */
};

struct cg_builds {
    const struct cg_build *then, *now;
    struct cg_build_changes changes;
    double closure; /* of the build now, largest of its duties, by the model as
                       the build then taught it [m]; NaN: it taught nothing */
};

#endif
