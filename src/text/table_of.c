#include "table_of.h"

#include <stdio.h>
#include <string.h>

#include "plain_text.h"

#define VARIED "varied"

/* A copy that fits; what stands for cut letters is three dots. */
static void put(char to[CG_TABLE_OF_LENGTH], const char *text, size_t length)
{
    struct cg_plain plain;
    if (length >= sizeof plain.text)
        length = sizeof plain.text - 1;
    memcpy(plain.text, text, length);
    plain.text[length] = '\0';
    if (length >= CG_TABLE_OF_LENGTH)
        strcpy(plain.text + CG_TABLE_OF_LENGTH - 4, "...");
    cg_plain_make(plain.text); /* half a letter is none */
    strcpy(to, plain.text);
}

/* The config's file name, without its folder. */
static void put_file(char to[CG_TABLE_OF_LENGTH], const char *config)
{
    const char *sets = strstr(config, " --set ");
    const char *end = sets != NULL ? sets : config + strlen(config);
    const char *begin = end;
    while (begin > config && begin[-1] != '/')
        begin--;
    put(to, begin, (size_t)(end - begin));
}

void cg_table_of_set(const char *config, const struct cg_case *c,
                     struct cg_table_of *of)
{
    of->config = config;
    if (c->engine.name[0] != '\0')
        put(of->engine, c->engine.name, strlen(c->engine.name));
    else
        put_file(of->engine, config);
    snprintf(of->boost, sizeof of->boost, "%.4g kPa", c->charge.boost / 1e3);
    put(of->fuel, c->fuel.name, strlen(c->fuel.name));
    put(of->duty, c->duty.name, strlen(c->duty.name));
}

void cg_table_of_vary(struct cg_table_of *of, const char *setting)
{
    char *text = strcmp(setting, "engine.name") == 0    ? of->engine
                 : strcmp(setting, "charge.boost") == 0 ? of->boost
                 : strcmp(setting, "fuel.name") == 0    ? of->fuel
                 : strcmp(setting, "duty.name") == 0    ? of->duty
                                                        : NULL;
    if (text != NULL)
        strcpy(text, VARIED);
}

static void add(struct cg_table_title *title, const char *before,
                const char *text, const char *after)
{
    size_t used = strlen(title->text);
    if (strcmp(text, VARIED) != 0)
        snprintf(title->text + used, sizeof title->text - used, "%s%s%s",
                 before, text, after);
}

struct cg_table_title cg_table_title(const char *title,
                                     const struct cg_table_of *of)
{
    struct cg_table_title made = {""};
    char duty[CG_TABLE_OF_LENGTH];
    strcpy(duty, of->duty);
    for (char *at = duty; *at != '\0'; at++)
        *at = *at == '_' ? ' ' : *at;
    add(&made, "", title, ": ");
    add(&made, "", of->engine, "");
    add(&made, strcmp(of->engine, VARIED) != 0 ? ", " : "", of->boost,
        " boost");
    add(&made, ", ", of->fuel, "");
    add(&made, ", ", duty, "");
    return made;
}
