#include "option_table.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "ladder.h"
#include "unit.h"

static enum cg_status store_out(struct cg_options *options,
                                const char *argument, struct cg_error *error)
{
    if (argument[0] == '\0')
        return cg_error_set(error, CG_BAD_INPUT, "--out: an empty name, a folder is allowed");
    options->out = argument;
    return CG_OK;
}

/* Only a name that says page, so that no config is overwritten by one. */
static enum cg_status store_report(struct cg_options *options,
                                   const char *argument,
                                   struct cg_error *error)
{
    const char *dot = strrchr(argument, '.');
    if (dot == NULL || dot == argument || dot[-1] == '/' ||
        (strcmp(dot, ".html") != 0 && strcmp(dot, ".htm") != 0))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--report %.200s: a file that ends in .html or "
                            ".htm is allowed",
                            argument);
    options->report = argument;
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

/* One duty alone: no other need be survived. */
static enum cg_status store_duty(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    int length = snprintf(options->duty, sizeof options->duty,
                          CG_DUTY_SET "%s", argument);
    if (argument[0] == '\0' || length >= (int)sizeof options->duty)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--duty %.40s: the name of a duty is allowed, see "
                            "configs/duties",
                            argument);
    enum cg_status status = store_set(options, CG_ALONE_SET, error);
    return status == CG_OK ? store_set(options, options->duty, error) : status;
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

static enum cg_status store_brief(struct cg_options *options,
                                  const char *argument,
                                  struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->quiet = true;
    return CG_OK;
}

static enum cg_status store_json(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->json = true;
    return CG_OK;
}

static enum cg_status store_drawings(struct cg_options *options,
                                     const char *argument,
                                     struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->drawings = true;
    return CG_OK;
}

static enum cg_status store_vary(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    if (options->varies == CG_OPTION_REPEATS)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--vary: at most %d of them are allowed",
                            CG_OPTION_REPEATS);
    options->vary[options->varies++] = argument;
    return CG_OK;
}

/* A whole number from `low` to `high` that ends at `stop`; 0 if it is not. */
static size_t whole_number(const char *text, char stop, double low,
                           double high)
{
    char *end;
    if (text[0] < '0' || text[0] > '9')
        return 0;
    double value = strtod(text, &end);
    if (*end != stop || !(value >= low && value <= high) ||
        value != floor(value))
        return 0;
    return (size_t)value;
}

static enum cg_status store_part(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    const char *slash = strchr(argument, '/');
    options->part = whole_number(argument, '/', 1, 1e6);
    options->parts =
        slash != NULL ? whole_number(slash + 1, '\0', 1, 1e6) : 0;
    if (options->part == 0 || options->parts < options->part)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--part %.40s: K/N is allowed, K from 1 to N",
                            argument);
    return CG_OK;
}

static enum cg_status store_resume(struct cg_options *options,
                                   const char *argument,
                                   struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->resume = true;
    return CG_OK;
}

static enum cg_status store_threads(struct cg_options *options,
                                    const char *argument,
                                    struct cg_error *error)
{
    options->threads = (int)whole_number(argument, '\0', 1, 256);
    if (options->threads == 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--threads %.40s: 1 to 256 is allowed", argument);
    return CG_OK;
}

static enum cg_status store_samples(struct cg_options *options,
                                    const char *argument,
                                    struct cg_error *error)
{
    options->samples = whole_number(argument, '\0', 2, 1e6);
    if (options->samples == 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--samples %.40s: 2 to 1000000 is allowed",
                            argument);
    return CG_OK;
}

static enum cg_status store_seed(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    options->seed = whole_number(argument, '\0', 1, 4294967295.0);
    if (options->seed == 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--seed %.40s: 1 to 4294967295 is allowed",
                            argument);
    return CG_OK;
}

/* "0.50mm" or "0.020in": a number and a unit of length. */
static enum cg_status store_gap(struct cg_options *options,
                                const char *argument, struct cg_error *error)
{
    char *end;
    double value = strtod(argument, &end);
    const struct cg_unit *unit = cg_unit_find(CG_LENGTH, end);
    double metres = unit != NULL ? cg_unit_to_si(unit, value) : 0.0;
    if (end == argument || !(metres > 0.0 && metres < 0.02))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--gap %.40s: a length up to 20 mm is allowed, "
                            "such as 0.50mm, 500um, 0.020in, 20thou",
                            argument);
    options->gap = metres;
    return CG_OK;
}

static enum cg_status store_from(struct cg_options *options,
                                 const char *argument, struct cg_error *error)
{
    if (argument[0] == '\0')
        return cg_error_set(error, CG_BAD_INPUT, "--from: an empty name");
    options->from = argument;
    return CG_OK;
}

/* "250kPa", "2.5bar", "36psi". */
static enum cg_status store_to(struct cg_options *options,
                               const char *argument, struct cg_error *error)
{
    char *end;
    double value = strtod(argument, &end);
    const struct cg_unit *unit = cg_unit_find(CG_PRESSURE, end);
    double pascal = unit != NULL ? cg_unit_to_si(unit, value) : NAN;
    if (end == argument ||
        !(pascal >= 0.0 && pascal <= CG_LADDER_MOST * (1.0 + 1e-9)))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--to %.40s: a boost, gauge, from 0 to %.0f kPa is "
                            "allowed, such as 250kPa, 2.5bar, 36psi",
                            argument, CG_LADDER_MOST / 1e3);
    options->to = fmin(pascal, CG_LADDER_MOST);
    return CG_OK;
}

/* Only a name that says config. */
static enum cg_status store_write(struct cg_options *options,
                                  const char *argument, struct cg_error *error)
{
    const char *dot = strrchr(argument, '.');
    if (dot == NULL || dot == argument || dot[-1] == '/' ||
        strcmp(dot, ".cfg") != 0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "--write %.200s: a file that ends in .cfg is "
                            "allowed",
                            argument);
    options->write = argument;
    return CG_OK;
}

static enum cg_status store_measured(struct cg_options *options,
                                     const char *argument,
                                     struct cg_error *error)
{
    if (argument[0] == '\0')
        return cg_error_set(error, CG_BAD_INPUT, "--measured: an empty name");
    options->measured = argument;
    return CG_OK;
}

static enum cg_status store_profile(struct cg_options *options,
                                    const char *argument,
                                    struct cg_error *error)
{
    if (argument[0] == '\0')
        return cg_error_set(error, CG_BAD_INPUT, "--profile: an empty name");
    options->profile = argument;
    return CG_OK;
}

/* Whether one of the words in `list`, parted by blanks, is `argument`. */
static enum cg_status store_word(const char *option, const char *list,
                                 const char *argument, const char **store,
                                 struct cg_error *error)
{
    size_t length = strlen(argument);
    for (const char *word = list; length > 0 && *word != '\0';) {
        size_t size = strcspn(word, " ");
        if (size == length && strncmp(word, argument, size) == 0) {
            *store = argument;
            return CG_OK;
        }
        word += size + (word[size] == ' ');
    }
    return cg_error_set(error, CG_BAD_INPUT,
                        "--%s %.40s: unknown, allowed: %s", option, argument,
                        list);
}

static enum cg_status store_filter(struct cg_options *options,
                                   const char *argument,
                                   struct cg_error *error)
{
    return store_word("filter", "standard gaussian robust none", argument,
                      &options->filter, error);
}

static enum cg_status store_simulate(struct cg_options *options,
                                     const char *argument,
                                     struct cg_error *error)
{
    return store_word("simulate", "plateau coarse", argument,
                      &options->simulate, error);
}

static enum cg_status store_level(struct cg_options *options,
                                  const char *argument,
                                  struct cg_error *error)
{
    return store_word("level", "first second", argument, &options->level,
                      error);
}

static enum cg_status store_answers(struct cg_options *options,
                                    const char *argument,
                                    struct cg_error *error)
{
    (void)argument;
    (void)error;
    options->answers = true;
    return CG_OK;
}

/* A number and a unit of length, from low to high [m]; `allowed` says so. */
static enum cg_status store_length(const char *option, const char *allowed,
                                   const char *argument, double low,
                                   double high, double *store,
                                   struct cg_error *error)
{
    char *end;
    double value = strtod(argument, &end);
    const struct cg_unit *unit = cg_unit_find(CG_LENGTH, end);
    double metres = unit != NULL ? cg_unit_to_si(unit, value) : 0.0;
    if (end == argument ||
        !(metres >= low * (1.0 - 1e-9) && metres <= high * (1.0 + 1e-9)))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--%s %.40s: a length %s is allowed, such as "
                            "0.5um, 0.8mm, 0.030in",
                            option, argument, allowed);
    *store = metres;
    return CG_OK;
}

static enum cg_status store_spacing(struct cg_options *options,
                                    const char *argument,
                                    struct cg_error *error)
{
    return store_length("spacing", "from 0.001 um to 1 mm", argument, 1e-9,
                        1e-3, &options->spacing, error);
}

static enum cg_status store_cutoff(struct cg_options *options,
                                   const char *argument,
                                   struct cg_error *error)
{
    return store_length("cutoff", "from 0.08 to 8 mm", argument, 0.08e-3,
                        8e-3, &options->cutoff, error);
}

static const struct cg_option all_options[] = {
    {"out", 'o', "DIR",
     "write the tables here (sweep, network: out)", store_out},
    {"report", 0, "FILE.html", "write a page to read on a phone or to print",
     store_report},
    {"set", 0, "PATH=VALUE",
     "change one setting; may be repeated", store_set},
    {"duty", 0, "NAME",
     "look at this duty alone", store_duty},
    {"vary", 0, "PATH=RANGE",
     "FROM:TO:STEP or a,b,c; again for a grid", store_vary},
    {"part", 0, "K/N", "compute block K of N, for job arrays", store_part},
    {"resume", 0, NULL, "go on after the rows already in the table",
     store_resume},
    {"gap", 0, "GAP", "the top ring's cold gap: 0.50mm or 0.020in",
     store_gap},
    {"from", 0, "FILE.cfg", "the build before: both, side by side", store_from},
    {"to", 0, "BOOST", "the boost wanted, gauge: 250kPa, 2.5bar or 36psi",
     store_to},
    {"write", 0, "NEW.cfg", "write the config with all changes made",
     store_write},
    {"measured", 0, "FILE.csv", "bores and ring gaps as measured, a line each",
     store_measured},
    {"samples", 0, "N", "move all uncertain inputs at once, N times",
     store_samples},
    {"seed", 0, "N", "starting number of the random draw; 1 by default", store_seed},
    {"threads", 0, "N", "work side by side; all cores by default",
     store_threads},
    {"profile", 0, "FILE", "a measured roughness profile, text or SMD",
     store_profile},
    {"spacing", 0, "LENGTH", "of the points, for a profile of one column",
     store_spacing},
    {"filter", 0, "standard|gaussian|robust|none", "standard by default",
     store_filter},
    {"cutoff", 0, "LENGTH", "filter cut-off; 0.8mm by default", store_cutoff},
    {"simulate", 0, "plateau|coarse", "a simulated surface instead",
     store_simulate},
    {"level", 0, "first|second",
     "of the lesson: plain words, or all of it (default)", store_level},
    {"answers", 0, NULL, "print the answers to the lesson's questions",
     store_answers},
    {"units", 0, "metric|inch", "units of the text; tables stay metric",
     store_units},
    {"json", 0, NULL, "print one JSON object instead of the text", store_json},
    {"drawings", 0, NULL, "with --json: the drawings too, as SVG",
     store_drawings},
    {"brief", 'q', NULL, "print the first part alone", store_brief},
    {"quiet", 0, NULL, "the same as --brief", store_brief},
};

static const struct cg_command_row all_commands[] = {
    {"find", "the gap to file to for the duty in CONFIG, with its reasons",
     cg_command_find, true, "out report set duty samples seed threads units json drawings brief quiet"},
    {"sweep", "the same over one or more varied settings, a full grid",
     cg_command_sweep, true, "vary out report set duty part resume threads json drawings brief quiet"},
    {"ceiling", "the highest boost that a given top gap stands",
     cg_command_ceiling, true, "gap set duty units json brief quiet"},
    {"ladder", "what must change at which boost, the least that will do",
     cg_command_ladder, true,
     "to from write out report set duty units json brief quiet"},
    {"seal", "what the gaps leak, the second gap, and what gas ports do",
     cg_command_seal, true, "out report set duty units json brief quiet"},
    {"sheet", "what to take off each ring gap measured, as a fitting sheet",
     cg_command_sheet, true,
     "measured out report set duty samples seed threads units json brief quiet"},
    {"card", "the build card: gaps, parts, finish and checks on one sheet",
     cg_command_card, true, "from out report set duty units json brief quiet"},
    {"finish", "the bore's finish: its figures, and oil held against fuel",
     cg_command_finish, true,
     "profile spacing filter cutoff simulate seed out report set units "
     "json brief quiet"},
    {"rings", "ring materials, faces and piston alloys for this duty, ranked",
     cg_command_rings, true, "out report set duty threads units json brief quiet"},
    {"lesson", "why the gap must grow with heat, step by step by hand",
     cg_command_lesson, true, "level answers out report set duty units json drawings brief quiet"},
    {"network", "the thermal network as a table and as a SPICE netlist",
     cg_command_network, true, "out set units json brief quiet"},
    {"template", "a commented config to start from, every setting in it",
     cg_command_template, false, "units"},
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
