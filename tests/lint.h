/* For the analysers alone, put before every file by tests/cli/run_lint.sh: they
 * see one file at a time and must be told that cg_error_set returns the status
 * it is given, so that what follows a failure is not taken for a success. */
#ifndef CG_LINT_H
#define CG_LINT_H

#include "status.h"

#define cg_error_set(error, status, ...)                                   \
    ((cg_error_set)(error, status, __VA_ARGS__), (status))

#endif
