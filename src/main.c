/* coldgap: the smallest safe cold piston-ring end gap. */
#include <stdio.h>

#include <gsl/gsl_errno.h>

#include "inputs.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "stack_space.h"
#include "status.h"

static enum cg_status finish_output(enum cg_status status,
                                    struct cg_error *error)
{
    struct cg_error trouble = {CG_OK, ""};
    if (cg_outputs_flush(&trouble) == CG_OK ||
        (status != CG_OK && status != CG_NOT_SAFE))
        return status;
    *error = trouble;
    return trouble.status;
}

int main(int argc, char **argv)
{
    struct cg_options options;
    struct cg_error error = {CG_OK, ""};
    cg_command command;

    /* GSL would abort the program; every status is checked instead. */
    gsl_set_error_handler_off();

    enum cg_status status = cg_stack_make(&error);
    if (status == CG_OK)
        status = cg_options_read(argc, argv, &options, &command, &error);
    cg_inputs_begin();
    if (status == CG_OK && command != NULL)
        status = command(&options, &error);
    cg_outputs_end();
    status = finish_output(status, &error);
    if (status != CG_OK && error.text[0] != '\0')
        fprintf(stderr, "coldgap: %s\n", cg_plain(error.text).text);
    return cg_status_exit(status);
}
