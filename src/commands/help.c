#include <stdio.h>

#include "cautions.h"
#include "option_table.h"
#include "scope.h"
#include "wrap.h"

static void print_option(const struct cg_option *option)
{
    char left[64], letter[8] = "    ";
    if (option->letter != 0)
        snprintf(letter, sizeof letter, "-%c, ", option->letter);
    snprintf(left, sizeof left, "%s--%s %s", letter, option->name,
             option->argument != NULL ? option->argument : "");
    printf("  %-25s %s\n", left, option->doc);
}

static void print_exit_statuses(void)
{
    printf("\nExit status\n"
           "  0  done\n"
           "  1  done, and the answer is: not safe\n"
           "  2  bad usage or input\n"
           "  3  the computation failed\n"
           "  4  a file could not be read or written\n");
}

static void print_scope(void)
{
    printf("Scope\n  ");
    cg_wrap(stdout, cg_scope(), 2, 2);
    printf("\n");
}

void cg_help_print(void)
{
    size_t options, commands;
    const struct cg_option *option = cg_all_options(&options);
    const struct cg_command_row *command = cg_all_commands(&commands);
    printf("coldgap " CG_VERSION
           ": the smallest safe cold piston-ring end gap\n\n"
           "Usage\n"
           "  coldgap COMMAND CONFIG [options]\n"
           "  coldgap COMMAND --help\n"
           "  coldgap --help | --version\n\n");
    print_scope();
    printf("Commands\n");
    for (size_t i = 0; i < commands; i++)
        printf("  %-10s %s\n", command[i].name, command[i].doc);
    printf("\nOptions\n");
    for (size_t i = 0; i < options; i++)
        print_option(&option[i]);
    print_exit_statuses();
    printf("\nEvery setting, with unit, band and default: coldgap template\n"
           "\n");
    cg_cautions_print(stdout);
}

void cg_help_print_command(const struct cg_command_row *command)
{
    size_t options;
    const struct cg_option *option = cg_all_options(&options);
    printf("coldgap %s: %s\n\nUsage\n  coldgap %s%s%s\n\n", command->name,
           command->doc, command->name, command->needs_config ? " CONFIG" : "",
           command->options[0] != '\0' ? " [options]" : "");
    print_scope();
    printf("Options\n");
    for (size_t i = 0; i < options; i++)
        if (cg_command_takes(command, option[i].name))
            print_option(&option[i]);
    printf("  %-25s %s\n", "-h, --help", "print this and end");
    print_exit_statuses();
    if (command->needs_config)
        printf("\nEvery setting, with unit, band and default: "
               "coldgap template\n");
    printf("\n");
    cg_cautions_print(stdout);
}
