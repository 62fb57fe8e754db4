#include "status.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>

/* In parentheses, for analysers are shown a macro of this name
 * (tests/lint.h). */
enum cg_status (cg_error_set)(struct cg_error *error, enum cg_status status,
                              const char *format, ...)
{
    if (error != NULL) {
        va_list args;
        va_start(args, format);
        error->status = status;
        vsnprintf(error->text, sizeof error->text, format, args);
        va_end(args);
    }
    return status;
}

const char *cg_status_text(enum cg_status status)
{
    switch (status) {
#define CG_STATUS_CASE(name, code, text) case name: return text;
        CG_STATUS_LIST(CG_STATUS_CASE)
#undef CG_STATUS_CASE
    }
    return "unknown status";
}

int cg_status_exit(enum cg_status status)
{
    switch (status) {
#define CG_STATUS_CASE(name, code, text) case name: return code;
        CG_STATUS_LIST(CG_STATUS_CASE)
#undef CG_STATUS_CASE
    }
    return 3;
}
