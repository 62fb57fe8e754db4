#include "options.h"

#include <stdio.h>
#include <string.h>

#include "cautions.h"
#include "nearest.h"

struct option {
    const char *name;     /* long, without dashes */
    char letter;          /* short, or 0 */
    const char *argument; /* NULL: takes none */
    const char *doc;
    enum cg_status (*store)(struct cg_options *options, const char *argument,
                            struct cg_error *error);
};

struct command {
    const char *name;
    const char *doc;
    cg_command run;
    bool needs_config;
    const char *options; /* long names it takes, parted by spaces */
};

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

static const struct option all_options[] = {
    {"out", 'o', "DIR", "write the tables into this folder", store_out},
    {"set", 0, "PATH=VALUE",
     "set one setting, like charge.boost_kPa=120; again for more", store_set},
    {"units", 0, "metric|inch", "units of the text; tables stay metric",
     store_units},
    {"quiet", 'q', NULL, "print the answer alone", store_quiet},
};

static const struct command all_commands[] = {
    {"find", "the smallest safe cold ring gap for the duty in CONFIG",
     cg_command_find, true, "out set units quiet"},
    {"network", "the thermal network as a table and as a SPICE netlist",
     cg_command_network, true, "out set units quiet"},
    {"template", "a commented config to start from, every setting in it",
     cg_command_template, false, ""},
};

enum {
    OPTIONS = sizeof all_options / sizeof all_options[0],
    COMMANDS = sizeof all_commands / sizeof all_commands[0]
};

/* Whether the command takes the option of that long name. */
static bool takes(const struct command *command, const char *name)
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

static void print_option(const struct option *option)
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

static void print_help(void)
{
    printf("coldgap " CG_VERSION
           ": the smallest safe cold piston-ring end gap\n\n"
           "Usage\n"
           "  coldgap COMMAND CONFIG [options]\n"
           "  coldgap COMMAND --help\n"
           "  coldgap --help | --version\n\n"
           "Commands\n");
    for (size_t i = 0; i < COMMANDS; i++)
        printf("  %-10s %s\n", all_commands[i].name, all_commands[i].doc);
    printf("\nOptions\n");
    for (size_t i = 0; i < OPTIONS; i++)
        print_option(&all_options[i]);
    print_exit_statuses();
    printf("\nEvery setting, with unit, band and default: coldgap template\n"
           "\n%s", cg_cautions_text());
}

static void print_command_help(const struct command *command)
{
    printf("coldgap %s: %s\n\nUsage\n  coldgap %s%s%s\n\nOptions\n",
           command->name, command->doc, command->name,
           command->needs_config ? " CONFIG" : "",
           command->options[0] != '\0' ? " [options]" : "");
    for (size_t i = 0; i < OPTIONS; i++)
        if (takes(command, all_options[i].name))
            print_option(&all_options[i]);
    printf("  %-25s %s\n", "-h, --help", "print this and end");
    print_exit_statuses();
    if (command->needs_config)
        printf("\nEvery setting, with unit, band and default: "
               "coldgap template\n");
    printf("\n%s", cg_cautions_text());
}

static const struct command *find_command(const char *name)
{
    for (size_t i = 0; i < COMMANDS; i++)
        if (strcmp(all_commands[i].name, name) == 0)
            return &all_commands[i];
    return NULL;
}

static enum cg_status unknown_command(const char *name, struct cg_error *error)
{
    const char *names[COMMANDS];
    char list[256];
    for (size_t i = 0; i < COMMANDS; i++)
        names[i] = all_commands[i].name;
    cg_nearest_list(name, names, COMMANDS, list, sizeof list);
    return cg_error_set(error, CG_BAD_INPUT,
                        "unknown command %.60s, allowed: %s", name, list);
}

static enum cg_status unknown_option(const struct command *command,
                                     const char *word, struct cg_error *error)
{
    const char *names[OPTIONS + 1];
    size_t count = 0, length = strcspn(word, "=");
    char bare[64];
    snprintf(bare, sizeof bare, "%.*s", (int)length, word);
    for (size_t i = 0; i < OPTIONS; i++)
        if (takes(command, all_options[i].name))
            names[count++] = all_options[i].name;
    names[count++] = "help";
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: unknown option %s, the nearest is --%s",
                        command->name, bare,
                        names[cg_nearest(bare + strspn(bare, "-"), names,
                                         count)]);
}

/* The words of the command line still to be read. */
struct words {
    int count;
    char **word;
};

/* The option that `word` names, and the argument written to it with = or
 * directly after its letter (NULL: none). */
static const struct option *find_option(const struct command *command,
                                        const char *word,
                                        const char **argument)
{
    *argument = NULL;
    for (size_t i = 0; i < OPTIONS; i++) {
        const struct option *option = &all_options[i];
        size_t length = strlen(option->name);
        if (!takes(command, option->name))
            continue;
        if (word[1] == '-' && strncmp(word + 2, option->name, length) == 0 &&
            (word[2 + length] == '\0' || word[2 + length] == '=')) {
            if (word[2 + length] == '=')
                *argument = word + 3 + length;
            return option;
        }
        if (option->letter != 0 && word[1] == option->letter &&
            (word[2] == '\0' || option->argument != NULL)) {
            if (word[2] != '\0')
                *argument = word + 2;
            return option;
        }
    }
    return NULL;
}

static enum cg_status read_option(const struct command *command,
                                  struct words *words,
                                  struct cg_options *options,
                                  struct cg_error *error)
{
    const char *word = words->word[0], *argument;
    const struct option *option = find_option(command, word, &argument);
    if (option == NULL)
        return unknown_option(command, word, error);
    if (option->argument == NULL && argument != NULL)
        return cg_error_set(error, CG_BAD_INPUT, "--%s takes no argument",
                            option->name);
    if (option->argument != NULL && argument == NULL) {
        if (words->count < 2)
            return cg_error_set(error, CG_BAD_INPUT, "--%s needs %s",
                                option->name, option->argument);
        words->word++;
        words->count--;
        argument = words->word[0];
    }
    return option->store(options, argument, error);
}

static bool asks_help(const char *word)
{
    return strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0;
}

/* Words after the command; *help is set when help was asked and printed. */
static enum cg_status read_words(const struct command *command,
                                 struct words *words,
                                 struct cg_options *options, bool *help,
                                 struct cg_error *error)
{
    for (; words->count > 0; words->word++, words->count--) {
        const char *word = words->word[0];
        enum cg_status status = CG_OK;
        if (asks_help(word)) {
            *help = true;
            return CG_OK;
        }
        if (word[0] == '-' && word[1] != '\0')
            status = read_option(command, words, options, error);
        else if (!command->needs_config || options->config != NULL)
            status = cg_error_set(error, CG_BAD_INPUT,
                                  "%s: one word too many: %.60s",
                                  command->name, word);
        else
            options->config = word;
        if (status != CG_OK)
            return status;
    }
    if (command->needs_config && options->config == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: no config given, write coldgap %s CONFIG",
                            command->name, command->name);
    return CG_OK;
}

enum cg_status cg_options_read(int argc, char **argv,
                               struct cg_options *options, cg_command *command,
                               struct cg_error *error)
{
    memset(options, 0, sizeof *options);
    *command = NULL;
    if (argc < 2)
        return cg_error_set(error, CG_BAD_INPUT,
                            "no command given, see coldgap --help");
    if (asks_help(argv[1])) {
        print_help();
        return CG_OK;
    }
    if (strcmp(argv[1], "--version") == 0) {
        printf("coldgap " CG_VERSION "\n");
        return CG_OK;
    }
    const struct command *chosen = find_command(argv[1]);
    if (chosen == NULL)
        return unknown_command(argv[1], error);
    struct words words = {argc - 2, argv + 2};
    bool help = false;
    enum cg_status status = read_words(chosen, &words, options, &help, error);
    if (status != CG_OK)
        return status;
    if (help)
        print_command_help(chosen);
    else
        *command = chosen->run;
    return CG_OK;
}
