/* The tables of commands and options: parsing, help and errors read them.  A
 * new command is a row in one, a new option a row in the other. */
#ifndef CG_OPTION_TABLE_H
#define CG_OPTION_TABLE_H

#include "options.h"

struct cg_option {
    const char *name;     /* long, without dashes */
    char letter;          /* short, or 0 */
    const char *argument; /* NULL: takes none */
    const char *doc;
    enum cg_status (*store)(struct cg_options *options, const char *argument,
                            struct cg_error *error);
};

struct cg_command_row {
    const char *name;
    const char *doc;
    cg_command run;
    bool needs_config;
    const char *options; /* long names it takes, parted by spaces */
};

const struct cg_option *cg_all_options(size_t *count);
const struct cg_command_row *cg_all_commands(size_t *count);

/* Whether the command takes the option of that long name. */
bool cg_command_takes(const struct cg_command_row *command, const char *name);

/* Print to stdout. */
void cg_help_print(void);
void cg_help_print_command(const struct cg_command_row *command);

#endif
