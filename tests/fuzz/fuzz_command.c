/* Any bytes as a command line, a word a line: what the options say, the grid of
 * --vary, and --set on a shipped engine; nothing is computed or written.  The
 * words never name a file that is read: the engine is chosen by their first
 * letter. */
#include "fuzz.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "grid.h"
#include "options.h"
#include "setting.h"

enum { MOST_WORDS = 256 };

static const char *const engines[] = {CG_TEST_CONFIGS
                                      "/engines/boosted_four.cfg",
                                      CG_TEST_CONFIGS "/engines/plain_four.cfg",
                                      CG_TEST_CONFIGS "/engines/iron_six.cfg",
                                      CG_TEST_CONFIGS "/engines/big_eight.cfg"};

/* A refusal is bad input and gives its reason; returns whether it is one. */
static bool refused(enum cg_status status, const struct cg_error *error)
{
    if (status != CG_OK && (status != CG_BAD_INPUT || error->text[0] == '\0'))
        abort();
    return status != CG_OK;
}

/* Every number of a case that was accepted is there and within its band. */
static void check_case(const struct cg_case *c)
{
    size_t count;
    const struct cg_setting *setting = cg_settings(&count);
    for (size_t i = 0; i < count; i++) {
        const struct cg_setting *s = &setting[i];
        double si = cg_setting_get(s, c);
        if (s->kind == CG_NAME || s->kind == CG_WORDS ||
            (s->rule == CG_OPTIONAL && isnan(si)))
            continue;
        const struct cg_unit *unit = cg_unit_find(s->dimension, s->unit);
        double value = cg_unit_from_si(unit, si);
        double slack = 1e-9 * (fabs(s->low) + fabs(s->high));
        bool told = s->rule == CG_FIXED || s->rule == CG_REQUIRED;
        if (!isfinite(si) ||
            (told && !(value >= s->low - slack && value <= s->high + slack)))
            abort();
    }
}

static void try_grid(const struct cg_options *options)
{
    struct cg_grid grid;
    struct cg_error error = {CG_OK, ""};
    enum cg_status status =
        cg_grid_read(options->vary, options->varies, &grid, &error);
    if (!refused(status, &error)) {
        char set[CG_AXES][CG_SET_LENGTH];
        cg_grid_sets(&grid, 0, set);
        cg_grid_sets(&grid, grid.points - 1, set);
    }
    cg_grid_free(&grid);
}

static void try_case(const struct cg_options *options)
{
    static struct cg_case c;
    struct cg_evidence evidence = {.entries = 0};
    struct cg_error error = {CG_OK, ""};
    size_t chosen = (unsigned char)options->config[0] % 4;
    enum cg_status status = cg_config_try_evidence(
        engines[chosen], options->set, options->sets, &c, &evidence, &error);
    if (!refused(status, &error))
        check_case(&c);
    cg_evidence_free(&evidence);
    cg_case_free(&c);
}

/* A head of a screen is one line. */
static void check_told(const struct cg_options *options)
{
    for (const char *at = options->told; *at != '\0'; at++)
        if ((unsigned char)*at < ' ')
            abort();
}

/* The text, cut at line ends and zeros, as words 1 and on; their count. */
static int split(char *text, size_t size, char *word[MOST_WORDS + 2])
{
    int words = 1;
    for (size_t at = 0; at < size && words <= MOST_WORDS;) {
        char *end = text + at + strcspn(text + at, "\n");
        word[words++] = text + at;
        at = (size_t)(end - text) + 1;
        *end = '\0';
    }
    word[words] = NULL;
    return words;
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    char program[] = "coldgap", *word[MOST_WORDS + 2] = {program};
    struct cg_options options;
    struct cg_error error = {CG_OK, ""};
    cg_command command;
    char *text = calloc(size + 1, 1);
    if (text == NULL)
        return 0;
    memcpy(text, bytes, size);
    int words = split(text, size, word);
    enum cg_status status =
        cg_options_read(words, word, &options, &command, &error);
    if (!refused(status, &error) && command != NULL) {
        check_told(&options);
        if (options.varies > 0)
            try_grid(&options);
        if (options.config != NULL)
            try_case(&options);
    }
    free(text);
    return 0;
}
