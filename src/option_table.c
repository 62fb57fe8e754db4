#include "option_table.h"

#include <string.h>

static enum cg_status store_out(struct cg_options *options,
                                const char *argument, struct cg_error *error)
{
    if (argument[0] == '\0')
        return cg_error_set(error, CG_BAD_INPUT, "--out: an empty name");
    options->out = argument;
    return CG_OK;
}

static enum cg_status store_set(struct cg_options *options,
                                const char *argument, struct cg_error *error)
{
    if (options->sets == CG_OPTION_REPEATS)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--set: at most %d of them are allowed",
                            CG_OPTION_REPEATS);
    options->set[options->sets++] = argument;
    return CG_OK;
}

static enum cg_status store_units(struct cg_options *options,
                                  const char *argument,
                                  struct cg_error *error)
{
    options->inch = strcmp(argument, "inch") == 0;
    if (!options->inch && strcmp(argument, "metric") != 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--units %s: unknown, allowed: metric, inch",
                            argument);
    return CG_OK;
}

static enum cg_status store_quiet(struct cg_options *options,
                                  const char *argument,
                                  struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->quiet = true;
    return CG_OK;
}

static const struct cg_option all_options[] = {
    {"out", 'o', "DIR", "write the tables into this folder", store_out},
    {"set", 0, "PATH=VALUE",
     "set one setting; may stand again", store_set},
    {"units", 0, "metric|inch", "units of the text; tables stay metric",
     store_units},
    {"quiet", 'q', NULL, "print the answer alone", store_quiet},
};

static const struct cg_command_row all_commands[] = {
    {"find", "the smallest safe cold ring gap for the duty in CONFIG",
     cg_command_find, true, "out set units quiet"},
    {"network", "the thermal network as a table and as a SPICE netlist",
     cg_command_network, true, "out set units quiet"},
    {"template", "a commented config to start from, every setting in it",
     cg_command_template, false, ""},
};


const struct cg_option *cg_all_options(size_t *count)
{
    *count = sizeof all_options / sizeof all_options[0];
    return all_options;
}

const struct cg_command_row *cg_all_commands(size_t *count)
{
    *count = sizeof all_commands / sizeof all_commands[0];
    return all_commands;
}

bool cg_command_takes(const struct cg_command_row *command, const char *name)
{
    const char *names = command->options;
    size_t length = strlen(name);
    while (*names != '\0') {
        size_t word = strcspn(names, " ");
        if (word == length && strncmp(names, name, length) == 0)
            return true;
        names += word + (names[word] == ' ');
    }
    return false;
}
