#include <stdio.h>
#include <string.h>

#include "data_folder.h"
#include "option_table.h"
#include "pages.h"
#include "setting.h"
#include "setting_key.h"
#include "setting_text.h"

/* Between single quotes of the shell. */
static void put_quoted(const char *text)
{
    for (; *text != '\0'; text++)
        if (*text == '\'')
            fputs("'\\''", stdout);
        else
            putchar(*text);
}

/* "name:what it does", the form in which zsh's _describe takes both. */
static void put_described(const char *dashes, const char *name,
                          const char *doc)
{
    printf("%s%s:", dashes, name);
    put_quoted(doc);
    putchar('\n');
}

static void print_commands(void)
{
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    printf("_coldgap_commands='");
    for (size_t i = 0; i < count; i++)
        put_described("", command[i].name, command[i].doc);
    printf("'\n_coldgap_without_config='");
    for (size_t i = 0; i < count; i++)
        if (!command[i].needs_config)
            printf(" %s ", command[i].name);
    printf("'\n");
}

static void print_command_options(const struct cg_command_row *command)
{
    size_t count;
    const struct cg_option *option = cg_all_options(&count);
    printf("%s) echo '", command->name);
    for (size_t i = 0; i < count; i++) {
        char letter[2] = {option[i].letter, '\0'};
        if (!cg_command_takes(command, option[i].name))
            continue;
        put_described("--", option[i].name, option[i].doc);
        if (letter[0] != '\0')
            put_described("-", letter, option[i].doc);
    }
    put_described("--", "help", "print help and end");
    printf("' ;;\n");
}

/* What the option's argument is, read from the way help writes it: folder,
 * file, setting, the words allowed, or free. */
static void print_argument(const struct cg_option *option)
{
    const char *text = option->argument;
    if (text == NULL)
        return;
    if (option->letter != 0)
        printf("-%c | ", option->letter);
    printf("--%s) echo ", option->name);
    if (strchr(text, '|') != NULL) {
        printf("'words");
        for (; *text != '\0'; text += strcspn(text, "|"), text += *text == '|')
            printf(" %.*s", (int)strcspn(text, "|"), text);
        printf("'");
    } else if (strcmp(text, "DIR") == 0) {
        printf("folder");
    } else if (strncmp(text, "FILE", 4) == 0) {
        printf("file");
    } else if (strncmp(text, "PATH=", 5) == 0) {
        printf("setting");
    } else {
        printf("free");
    }
    printf(" ;;\n");
}

static void print_keys(void)
{
    size_t settings, units;
    const struct cg_setting *setting = cg_settings(&settings);
    const struct cg_unit *unit = cg_units(&units);
    printf("_coldgap_keys='");
    for (size_t i = 0; i < settings; i++)
        for (size_t j = 0; j < units; j++) {
            char key[128];
            if (unit[j].dimension != setting[i].dimension)
                continue;
            cg_key_write(&setting[i], &unit[j], true, key, sizeof key);
            printf("%s\n", key);
        }
    printf("'\n");
}

/* The words a setting may be, where they are known: not for metals, which a
 * config may bring itself. */
static void print_values(const struct cg_setting *setting)
{
    char words[256] = "";
    struct cg_data_names duties = {.count = 0};
    if (setting->kind == CG_SWITCH)
        strcpy(words, "true false");
    else if (strcmp(setting->path, "duty.name") == 0 ||
             strcmp(setting->path, "margin.duties") == 0)
        (void)cg_data_list("duties", &duties, NULL);
    else if (setting->kind == CG_CHOICE ||
             strcmp(setting->path, "fuel.name") == 0 ||
             strcmp(setting->path, "combustion.heat_transfer") == 0)
        cg_setting_band_text(setting, false, words, sizeof words);
    if (words[0] == '\0' && duties.count == 0)
        return;
    printf("%s) echo '%s", setting->path, words);
    for (size_t i = 0; i < duties.count; i++)
        printf("%s%s", i > 0 ? " " : "", duties.list[i]);
    printf("' ;;\n");
}

void cg_page_tables(void)
{
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    printf("# Made from coldgap " CG_VERSION "'s tables of commands, options "
           "and settings.\n");
    print_commands();
    printf("_coldgap_options() { case $1 in\n");
    for (size_t i = 0; i < count; i++)
        print_command_options(&command[i]);
    printf("esac; }\n_coldgap_argument() { case $1 in\n");
    const struct cg_option *option = cg_all_options(&count);
    for (size_t i = 0; i < count; i++)
        print_argument(&option[i]);
    printf("esac; }\n");
    print_keys();
    printf("_coldgap_values() { case $1 in\n");
    const struct cg_setting *setting = cg_settings(&count);
    for (size_t i = 0; i < count; i++)
        print_values(&setting[i]);
    printf("esac; }\n");
}
