#define _POSIX_C_SOURCE 200809L /* ftruncate, fileno */

#include "ladder_config.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "builds_find.h"
#include "config.h"
#include "config_changed.h"
#include "config_named.h"
#include "course_refine.h"
#include "ladder_text.h"
#include "plain_text.h"
#include "setting_key.h"
#include "setting_text.h"

enum {
    MOST = CG_LADDER_CHANGES + CG_OPTION_REPEATS + 4,
    KEY = 128,
    ROUNDS = 4 /* of writing and reading back */
};

struct writing {
    struct cg_case c;   /* as it is to be, without evidence */
    struct cg_case was; /* as it was read, without evidence */
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

static bool is_given(const struct cg_setting *setting, const struct cg_case *c)
{
    return setting->kind == CG_NAME || setting->kind == CG_WORDS ||
           !isnan(cg_setting_get(setting, c));
}

/* The setting as it is in the case, if it is; the first who asks writes the
 * comment. */
static void add(struct writing *writing, const struct cg_setting *setting,
                const char *format, const char *word)
{
    if (has(writing, setting) || !is_given(setting, &writing->c))
        return;
    assert(writing->changes < MOST);
    struct cg_config_change *change = &writing->change[writing->changes++];
    change->setting = setting;
    change->c = &writing->c;
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
static void add_asked(const struct cg_options *options, struct writing *writing)
{
    static const char *const paths[] = {"charge.boost", "charge.charger"};
    const struct cg_case *c = &writing->was;
    char path[KEY], was[KEY];
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

static const char *const gap_path[] = {"rings.top.cold_gap",
                                       "rings.second.cold_gap"};

/* Those of the config itself stay as they are, where they are wide enough. */
static void add_gaps(struct writing *writing)
{
    char was[KEY];
    for (int k = 0; k < CG_LADDER_GAPS; k++) {
        const struct cg_setting *setting = cg_setting_find(gap_path[k]);
        if (writing->c.ring[k].cold_gap == writing->was.ring[k].cold_gap)
            continue;
        cg_setting_value_text(setting, &writing->was, false, was, sizeof was);
        if (is_given(setting, &writing->was))
            add(writing, setting, "file to this; was %s", was);
        else
            add(writing, setting, "%s", "file to this");
    }
}

/* Where no gap was given, the one advised; none where no gap will do. */
static void set_gaps(const struct cg_ladder *ladder, struct writing *writing)
{
    struct cg_ring_case *ring = writing->c.ring;
    const struct cg_answer *answer = &ladder->after.answer;
    if (isnan(ring[CG_RING_TOP].cold_gap) &&
        answer->file_to_top.from != CG_ADVICE_NONE)
        ring[CG_RING_TOP].cold_gap = gap_of(ladder);
    if (isnan(ring[CG_RING_SECOND].cold_gap) &&
        answer->file_to_second.from != CG_ADVICE_NONE)
        ring[CG_RING_SECOND].cold_gap = answer->file_to_second.file_to;
}

static enum cg_status put(const struct cg_options *options,
                          const struct writing *writing,
                          struct cg_part_file *part, bool *left_out,
                          struct cg_error *error)
{
    rewind(part->file);
    if (ftruncate(fileno(part->file), 0) != 0)
        return cg_part_file_trouble(part->final, "write", error);
    enum cg_status status =
        cg_config_changed_write(part->file, options->config, writing->change,
                                writing->changes, left_out, error);
    if (status == CG_OK && fflush(part->file) != 0)
        status = cg_part_file_trouble(part->final, "write", error);
    return status;
}

/* Trouble is the new config's, whose name the reader knows. */
static void rename_part(const struct cg_part_file *part, const char *name,
                        struct cg_error *error)
{
    struct cg_plain aside = cg_plain(part->part);
    char text[sizeof error->text];
    cg_plain_make(error->text);
    const char *at = strstr(error->text, aside.text);
    if (at == NULL)
        return;
    snprintf(text, sizeof text, "%.*s%s%s", (int)(at - error->text),
             error->text, name, at + strlen(aside.text));
    strcpy(error->text, text);
}

static enum cg_status read_back(const struct cg_options *options,
                                const struct cg_part_file *part,
                                struct cg_answer *answer,
                                struct cg_error *error)
{
    struct cg_case c = {.courses = NULL};
    enum cg_status status = cg_config_try(part->part, NULL, 0, NULL, &c, error);
    if (status == CG_OK)
        status = cg_course_refine(&c, error);
    if (status == CG_OK)
        status = cg_build_answer(&c, true, answer, error);
    else
        rename_part(part, options->write, error);
    cg_case_free(&c);
    return status;
}

/* Whether a gap is to be wider than the one written. */
static bool widen(struct cg_case *c, const struct cg_answer *answer)
{
    const struct cg_ring_advice *advice[CG_LADDER_GAPS] = {
        &answer->file_to_top, &answer->file_to_second};
    bool wider = false;
    for (int k = 0; k < CG_LADDER_GAPS; k++)
        if (advice[k]->file_to > c->ring[k].cold_gap * (1.0 + 1e-9)) {
            c->ring[k].cold_gap = advice[k]->file_to;
            wider = true;
        }
    return wider;
}

/* The changes as they are in the case now. */
static void list(const struct cg_options *options,
                 const struct cg_ladder *ladder, struct writing *writing)
{
    writing->changes = 0;
    add_changes(ladder, writing);
    add_asked(options, writing);
    add_gaps(writing);
}

static void tell(const struct cg_options *options,
                 const struct writing *writing,
                 struct cg_ladder_written *written)
{
    written->path = cg_plain(options->write);
    for (int k = 0; k < CG_LADDER_GAPS; k++) {
        written->gap[k] = writing->c.ring[k].cold_gap;
        written->kept[k] = written->gap[k] == writing->was.ring[k].cold_gap;
    }
}

enum cg_status cg_ladder_config_write(const struct cg_options *options,
                                      const struct cg_case *prior,
                                      const struct cg_ladder *ladder,
                                      struct cg_part_file *part,
                                      struct cg_ladder_written *written,
                                      struct cg_error *error)
{
    struct writing *writing = calloc(1, sizeof *writing);
    bool again = true;
    enum cg_status status = CG_OK;
    if (writing == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    writing->was = writing->c = *prior;
    cg_ladder_make(ladder, &writing->c);
    set_gaps(ladder, writing);
    /* a wider top gap may ask for a wider second one */
    for (int i = 0; i < ROUNDS && again && status == CG_OK; i++) {
        list(options, ladder, writing);
        status = put(options, writing, part, &written->left_out, error);
        if (status == CG_OK)
            status = read_back(options, part, &written->answer, error);
        again = status == CG_OK && i + 1 < ROUNDS &&
                widen(&writing->c, &written->answer);
    }
    tell(options, writing, written);
    free(writing);
    return status;
}

/* Of a path that is not there, as of one without a folder: "." */
static bool same_folder(const char *a, const char *b)
{
    struct stat of[2];
    const char *path[2] = {a, b};
    for (int i = 0; i < 2; i++) {
        char folder[CG_PART_FILE_PATH] = ".";
        const char *slash = strrchr(path[i], '/');
        if (slash != NULL)
            snprintf(folder, sizeof folder, "%.*s",
                     (int)(slash - path[i]) + (slash == path[i]), path[i]);
        if (stat(folder, &of[i]) != 0)
            return false;
    }
    return of[0].st_dev == of[1].st_dev && of[0].st_ino == of[1].st_ino;
}

enum cg_status cg_ladder_config_place(const struct cg_options *options,
                                      const struct cg_case *c,
                                      struct cg_error *error)
{
    const char *key;
    enum cg_status status =
        cg_config_names_file(options->config, c, &key, error);
    if (status != CG_OK || key == NULL ||
        same_folder(options->config, options->write))
        return status;
    return cg_error_set(error, CG_BAD_INPUT,
                        "--write %.120s: %s of %.120s names a file in that "
                        "config's own folder, and would name another one "
                        "elsewhere; only that folder is allowed",
                        options->write, key, options->config);
}
