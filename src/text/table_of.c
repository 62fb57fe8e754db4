#include "table_of.h"

#include <stdio.h>
#include <string.h>

#include "plain_text.h"

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
