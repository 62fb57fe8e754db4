#include "options.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "nearest.h"
#include "option_table.h"
#include "plain_text.h"

enum { MOST_NAMES = 32, LIKE = 2 }; /* LIKE: edits between a word and one meant */

static const struct cg_command_row *find_command(const char *name)
{
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(command[i].name, name) == 0)
            return &command[i];
    return NULL;
}

static enum cg_status unknown_command(const char *name, struct cg_error *error)
{
    const char *names[MOST_NAMES];
    char list[256];
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    for (size_t i = 0; i < count && i < MOST_NAMES; i++)
        names[i] = command[i].name;
    cg_nearest_list(name, names, count, list, sizeof list);
    return cg_error_set(error, CG_BAD_INPUT,
                        "unknown command %.60s, allowed: %s", name, list);
}

/* The first command that takes an option of that name, or NULL. */
static const struct cg_command_row *taker(const char *option)
{
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    for (size_t i = 0; i < count; i++)
        if (cg_command_takes(&command[i], option))
            return &command[i];
    return NULL;
}

static enum cg_status unknown_option(const struct cg_command_row *command,
                                     const char *word, struct cg_error *error)
{
    const char *names[MOST_NAMES + 1];
    size_t count, kept = 0, length = strcspn(word, "=");
    const struct cg_option *option = cg_all_options(&count);
    char given[64];
    snprintf(given, sizeof given, "%.*s", (int)length, word);
    const char *bare = given + strspn(given, "-");
    const struct cg_command_row *other = taker(bare);
    if (other != NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: takes no option %s, %s does",
                            command->name, given, other->name);
    for (size_t i = 0; i < count && kept < MOST_NAMES; i++)
        if (cg_command_takes(command, option[i].name))
            names[kept++] = option[i].name;
    names[kept++] = "help";
    const char *nearest = names[cg_nearest(bare, names, kept)];
    if (cg_edit_distance(bare, nearest) <= LIKE)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: unknown option %s, the nearest is --%s",
                            command->name, given, nearest);
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: unknown option %s, coldgap %s --help lists them",
                        command->name, given, command->name);
}

/* The words of the command line still to be read. */
struct words {
    int count;
    char **word;
};

/* Whether `word` names the option; *argument receives what is written to it
 * with = or directly after its letter, or NULL. */
static bool names_option(const struct cg_option *option, const char *word,
                         const char **argument)
{
    size_t length = strlen(option->name);
    *argument = NULL;
    if (word[1] == '-' && strncmp(word + 2, option->name, length) == 0) {
        const char *rest = word + 2 + length;
        *argument = *rest == '=' ? rest + 1 : NULL;
        return *rest == '\0' || *rest == '=';
    }
    if (option->letter == 0 || word[1] != option->letter)
        return false;
    *argument = word[2] != '\0' ? word + 2 : NULL;
    return *argument == NULL || option->argument != NULL;
}

static const struct cg_option *
find_option(const struct cg_command_row *command, const char *word,
            const char **argument)
{
    size_t count;
    const struct cg_option *option = cg_all_options(&count);
    for (size_t i = 0; i < count; i++)
        if (cg_command_takes(command, option[i].name) &&
            names_option(&option[i], word, argument))
            return &option[i];
    return NULL;
}

static enum cg_status read_option(const struct cg_command_row *command,
                                  struct words *words,
                                  struct cg_options *options,
                                  struct cg_error *error)
{
    const char *word = words->word[0], *argument;
    const struct cg_option *option = find_option(command, word, &argument);
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

struct cg_set_told cg_set_told(const struct cg_options *options, size_t i)
{
    struct cg_set_told told = {"--set", options->set[i]};
    if (told.value == options->duty)
        told = (struct cg_set_told){"--duty", told.value + strlen(CG_DUTY_SET)};
    else if (i + 1 < options->sets && options->set[i + 1] == options->duty)
        told.value = NULL; /* a part of --duty */
    return told;
}

/* Which engine an answer is of: its config, and what --set made of it. */
static void tell_case(struct cg_options *options)
{
    size_t capacity = sizeof options->told;
    size_t used =
        (size_t)snprintf(options->told, capacity, "%s", options->config);
    for (size_t i = 0; i < options->sets && used < capacity; i++) {
        struct cg_set_told told = cg_set_told(options, i);
        if (told.value != NULL)
            used += (size_t)snprintf(options->told + used, capacity - used,
                                     " %s %s", told.option, told.value);
    }
    if (used >= capacity)
        strcpy(options->told + capacity - 4, "...");
    cg_plain_make(options->told); /* a head is one line */
}

/* Words after the command; *help is set when help was asked and printed. */
static enum cg_status read_words(const struct cg_command_row *command,
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
                                  "%s: unexpected word: %.60s, see "
                                  "coldgap %s --help",
                                  command->name, word, command->name);
        else
            options->config = word;
        if (status != CG_OK)
            return status;
    }
    if (command->needs_config && options->config == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%s: no config given, write coldgap %s CONFIG",
                            command->name, command->name);
    if (options->config != NULL)
        tell_case(options);
    return CG_OK;
}

enum cg_status cg_options_read(int argc, char **argv,
                               struct cg_options *options, cg_command *command,
                               struct cg_error *error)
{
    memset(options, 0, sizeof *options);
    options->part = options->parts = 1;
    options->seed = 1;
    options->to = NAN;
    *command = NULL;
    if (argc < 2)
        return cg_error_set(error, CG_BAD_INPUT,
                            "no command given, see coldgap --help");
    if (asks_help(argv[1]) || strcmp(argv[1], "help") == 0) {
        const struct cg_command_row *about =
            argc > 2 ? find_command(argv[2]) : NULL;
        if (argc > 2 && about == NULL)
            return unknown_command(argv[2], error);
        if (about != NULL)
            cg_help_print_command(about);
        else
            cg_help_print();
        return CG_OK;
    }
    if (strcmp(argv[1], "--version") == 0) {
        printf("coldgap " CG_VERSION "\n");
        return CG_OK;
    }
    const struct cg_command_row *chosen = find_command(argv[1]);
    if (chosen == NULL)
        return unknown_command(argv[1], error);
    struct words words = {argc - 2, argv + 2};
    bool help = false;
    enum cg_status status = read_words(chosen, &words, options, &help, error);
    if (status != CG_OK)
        return status;
    if (help)
        cg_help_print_command(chosen);
    else if (options->drawings && !options->json)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--drawings: only with --json is allowed");
    else
        *command = chosen->run;
    return CG_OK;
}
