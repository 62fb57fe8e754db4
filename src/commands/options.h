/* The command line: which command, which config, which options.  One table of
 * commands and one of options drive parsing, help and errors. */
#ifndef CG_OPTIONS_H
#define CG_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

enum { CG_OPTION_REPEATS = 64, CG_TOLD_LENGTH = 512, CG_DUTY_LENGTH = 80 };

struct cg_options {
    const char *config;     /* path of the config file; NULL for template */
    const char *out;        /* -o DIR: folder for tables; NULL: none */
    const char *report;     /* --report FILE.html; NULL: none */
    const char *set[CG_OPTION_REPEATS]; /* --set PATH=VALUE, in order */
    size_t sets;
    char duty[CG_DUTY_LENGTH]; /* --duty NAME as --set duty.name; "": not given
                                */
    char told[CG_TOLD_LENGTH]; /* config and what --set changes, for the heads
                                  of screens and tables; cut short by "..." */
    const char *vary[CG_OPTION_REPEATS]; /* --vary, in order */
    size_t varies;
    size_t part, parts;     /* --part K/N; 1 of 1 by default */
    bool resume;            /* --resume */
    double gap;             /* --gap [m]; 0: not given */
    const char *from;       /* --from OLD.cfg; NULL: not given */
    double to;              /* --to, gauge [Pa]; NaN: not given */
    const char *write;      /* --write FILE.cfg; NULL: not given */
    const char *measured;   /* --measured FILE; NULL: not given */
    size_t samples;         /* --samples; 0: first order alone */
    unsigned long seed;     /* --seed */
    const char *profile;    /* --profile; NULL: none */
    const char *filter;     /* --filter; NULL: not given */
    const char *simulate;   /* --simulate; NULL: not given */
    double spacing;         /* --spacing [m]; 0: not given */
    double cutoff;          /* --cutoff [m]; 0: not given */
    const char *level;      /* --level; NULL: not given */
    bool answers;           /* --answers */
    int threads;            /* --threads; 0: all cores */
    bool inch;              /* --units inch */
    bool json;              /* --json */
    bool drawings;          /* --drawings: with --json alone */
    bool quiet;             /* --brief, --quiet */
};

/* What --duty NAME sets, NAME behind the second. */
#define CG_ALONE_SET "margin.duties="
#define CG_DUTY_SET "duty.name="

/* How options->set[i] was given; value NULL: not by itself. */
struct cg_set_told {
    const char *option, *value;
};
struct cg_set_told cg_set_told(const struct cg_options *options, size_t i);

/* A command is one file src/command_NAME.c with one function. */
typedef enum cg_status (*cg_command)(const struct cg_options *options,
                                     struct cg_error *error);

enum cg_status cg_command_card(const struct cg_options *options,
                               struct cg_error *error);
enum cg_status cg_command_find(const struct cg_options *options,
                               struct cg_error *error);
enum cg_status cg_command_finish(const struct cg_options *options,
                                 struct cg_error *error);
enum cg_status cg_command_lesson(const struct cg_options *options,
                                 struct cg_error *error);
enum cg_status cg_command_network(const struct cg_options *options,
                                  struct cg_error *error);
enum cg_status cg_command_sweep(const struct cg_options *options,
                                struct cg_error *error);
enum cg_status cg_command_ceiling(const struct cg_options *options,
                                  struct cg_error *error);
enum cg_status cg_command_ladder(const struct cg_options *options,
                                 struct cg_error *error);
enum cg_status cg_command_seal(const struct cg_options *options,
                               struct cg_error *error);
enum cg_status cg_command_sheet(const struct cg_options *options,
                                struct cg_error *error);
enum cg_status cg_command_rings(const struct cg_options *options,
                                struct cg_error *error);
enum cg_status cg_command_template(const struct cg_options *options,
                                   struct cg_error *error);

/* Parses argv; prints help or version itself and sets *command to NULL when
 * that was all that was asked.  CG_BAD_INPUT with one clear line otherwise. */
enum cg_status cg_options_read(int argc, char **argv,
                               struct cg_options *options, cg_command *command,
                               struct cg_error *error);

#endif
