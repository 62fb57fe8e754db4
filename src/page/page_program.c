/* The program as the page runs it: all commands of the shell, and two that a
 * page wants besides.
 *
 *   settings CONFIG [--set ...]   every setting as JSON, to be shown as fields
 *   keep CONFIG [--set ...]       the config with these settings, as its text
 */
#include <stdio.h>
#include <string.h>

#include <gsl/gsl_errno.h>

#include "inputs.h"
#include "options.h"
#include "page_commands.h"
#include "plain_text.h"

/* src/main.c, renamed where it is built for the page. */
int cg_program(int argc, char **argv);

static cg_command find_own(const char *name)
{
    if (strcmp(name, "settings") == 0)
        return cg_page_settings;
    if (strcmp(name, "keep") == 0)
        return cg_page_keep;
    return NULL;
}

int main(int argc, char **argv)
{
    static char find[] = "find"; /* its options are read */
    struct cg_options options;
    struct cg_error error = {CG_OK, ""};
    cg_command command, own = argc > 1 ? find_own(argv[1]) : NULL;
    if (own == NULL)
        return cg_program(argc, argv);
    gsl_set_error_handler_off();
    argv[1] = find;
    enum cg_status status =
        cg_options_read(argc, argv, &options, &command, &error);
    cg_inputs_begin();
    if (status == CG_OK)
        status = own(&options, &error);
    if (status != CG_OK && error.text[0] != '\0')
        fprintf(stderr, "coldgap: %s\n", cg_plain(error.text).text);
    return cg_status_exit(status);
}
