#define _POSIX_C_SOURCE 200809L /* ftruncate, fileno */

#include "ladder_config.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "config.h"
#include "config_changed.h"
#include "ladder_text.h"
#include "setting_key.h"
#include "setting_text.h"

enum { MOST = CG_LADDER_CHANGES + CG_OPTION_REPEATS + 4, KEY = 128 };

struct writing {
    struct cg_case c; /* as it is to be */
    struct cg_config_change change[MOST];
    size_t changes;
};

static bool has(const struct writing *writing, const struct cg_setting *setting)
{
    bool found = false;
    for (size_t i = 0; i < writing->changes; i++)
        found = found || writing->change[i].setting == setting;
    return found;
}

/* The setting as it is in the case; the first who asks writes the comment. */
static void add(struct writing *writing, const struct cg_setting *setting,
                const char *format, const char *word)
{
    if (has(writing, setting) || writing->changes == MOST)
        return;
    struct cg_config_change *change = &writing->change[writing->changes++];
    change->setting = setting;
    cg_setting_value_text(setting, &writing->c, false, change->value,
                          sizeof change->value);
    snprintf(change->comment, sizeof change->comment, format, word);
}

static void add_changes(const struct cg_ladder *ladder, struct writing *writing)
{
    for (size_t i = 0; i < ladder->changes; i++) {
        const struct cg_ladder_change *change = &ladder->change[i];
        struct cg_ladder_text was = cg_ladder_value(change, false, false);
        add(writing, change->setting, "was %s", was.text);
    }
}

/* What the command line has said. */
static void add_asked(const struct cg_options *options, const struct cg_case *c,
                      struct writing *writing)
{
    static const char *const paths[] = {"charge.boost", "charge.charger"};
    char path[KEY], was[CG_CHANGED_TEXT / 2];
    struct cg_key key;
    for (size_t i = 0; i < sizeof paths / sizeof paths[0]; i++) {
        const struct cg_setting *setting = cg_setting_find(paths[i]);
        cg_setting_value_text(setting, c, false, was, sizeof was);
        if (cg_setting_get(setting, c) != cg_setting_get(setting, &writing->c))
            add(writing, setting, "the target; was %s", was);
    }
    for (size_t i = 0; i < options->sets; i++) {
        size_t length = strcspn(options->set[i], "=");
        snprintf(path, sizeof path, "%.*s", (int)length, options->set[i]);
        if (cg_key_find(path, &key, NULL, 0))
            add(writing, key.setting, "%s", "by --set");
    }
}

/* The gap to file to at every boost up to the target [m]. */
static double gap_of(const struct cg_ladder *ladder)
{
    double most = 0.0;
    for (size_t i = 0; i < ladder->after.points; i++)
        if (ladder->after.point[i].boost <= ladder->target + 1.0)
            most = fmax(most, ladder->after.point[i].file_to);
    return cg_gap_round_up(most, ladder->changed.margin.filing_step);
}

static void add_gaps(struct writing *writing)
{
    add(writing, cg_setting_find("rings.top.cold_gap"), "%s", "file to this");
    add(writing, cg_setting_find("rings.second.cold_gap"), "%s",
        "file to this");
}

/* Where no gap was given, the one advised. */
static void set_gaps(const struct cg_ladder *ladder, struct writing *writing)
{
    struct cg_ring_case *ring = writing->c.ring;
    double second = ladder->after.answer.file_to_second.file_to;
    if (isnan(ring[CG_RING_TOP].cold_gap))
        ring[CG_RING_TOP].cold_gap = gap_of(ladder);
    if (isnan(ring[CG_RING_SECOND].cold_gap))
        ring[CG_RING_SECOND].cold_gap = second;
}

static enum cg_status put(const struct cg_options *options,
                          const struct writing *writing,
                          struct cg_part_file *part, struct cg_error *error)
{
    bool left_out;
    rewind(part->file);
    if (ftruncate(fileno(part->file), 0) != 0)
        return cg_part_file_trouble(part->part, "write", error);
    enum cg_status status =
        cg_config_changed_write(part->file, options->config, writing->change,
                                writing->changes, &left_out, error);
    if (status == CG_OK && fflush(part->file) != 0)
        status = cg_part_file_trouble(part->part, "write", error);
    return status;
}

static enum cg_status read_back(const struct cg_part_file *part,
                                struct cg_answer *answer,
                                struct cg_error *error)
{
    struct cg_case c = {.courses = NULL};
    struct cg_duty_run *run = NULL;
    enum cg_status status = cg_config_try(part->part, NULL, 0, &c, error);
    if (status == CG_OK)
        status = cg_duty_run_create(&c, &run, error);
    if (status == CG_OK)
        status = cg_answer_find(&c, run, 0.0, NULL, NULL, answer, error);
    if (status == CG_OK)
        status = cg_answer_second(&c, run, answer, error);
    cg_duty_run_free(run);
    cg_case_free(&c);
    return status;
}

/* Whether a gap is to be wider than the one written. */
static bool widen(struct cg_case *c, const struct cg_answer *answer)
{
    const struct cg_ring_advice *advice[2] = {&answer->file_to_top,
                                              &answer->file_to_second};
    bool wider = false;
    for (int k = 0; k < 2; k++)
        if (advice[k]->file_to > c->ring[k].cold_gap * (1.0 + 1e-9)) {
            c->ring[k].cold_gap = advice[k]->file_to;
            wider = true;
        }
    return wider;
}

/* The changes as they are in the case now. */
static void list(const struct cg_options *options, const struct cg_case *c,
                 const struct cg_ladder *ladder, struct writing *writing)
{
    writing->changes = 0;
    add_changes(ladder, writing);
    add_asked(options, c, writing);
    add_gaps(writing);
}

enum cg_status cg_ladder_config_write(const struct cg_options *options,
                                      const struct cg_case *c,
                                      const struct cg_ladder *ladder,
                                      struct cg_part_file *part, bool *stands,
                                      struct cg_error *error)
{
    struct writing *writing = calloc(1, sizeof *writing);
    struct cg_answer answer;
    bool again = true;
    enum cg_status status = CG_OK;
    if (writing == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    writing->c = ladder->changed;
    set_gaps(ladder, writing);
    /* a wider top gap may ask for a wider second one */
    for (int i = 0; i < 3 && again && status == CG_OK; i++) {
        list(options, c, ladder, writing);
        status = put(options, writing, part, error);
        if (status == CG_OK)
            status = read_back(part, &answer, error);
        again = status == CG_OK && widen(&writing->c, &answer);
    }
    if (status == CG_OK)
        *stands = cg_answer_stands(&answer);
    free(writing);
    return status;
}
