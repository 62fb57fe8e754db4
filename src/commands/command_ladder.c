#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "builds_find.h"
#include "builds_table.h"
#include "config.h"
#include "ladder_config.h"
#include "ladder_tables.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "progress.h"
#include "report_builds.h"
#include "report_ladder.h"
#include "updated_case.h"

#define TABLES                                                                 \
    "ladder.dat ladder_boost.dat builds.dat build_changes.dat build_proof.dat"

/* The ladder, with --from the build before beside the changed one, and with
 * --write the config written. */
struct climbing {
    struct cg_updated_case updated; /* the config's */
    struct cg_ladder *ladder;
    struct cg_build then, now;
    struct cg_builds builds;
    struct cg_plain then_name;
    bool from;
    struct cg_part_file part;
    bool writing; /* the part is open */
    struct cg_ladder_written written;
    size_t answers;
};

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    const struct climbing *climbing = context;
    enum cg_status status =
        cg_ladder_tables_write(dir, of, climbing->ladder, error);
    return status == CG_OK && climbing->from
               ? cg_builds_tables_write(dir, of, &climbing->builds, error)
               : status;
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct climbing *climbing = context;
    (void)error;
    cg_report_ladder(report, climbing->ladder,
                     climbing->writing ? &climbing->written : NULL);
    if (climbing->from) {
        cg_report_builds_changes(report, &climbing->builds);
        cg_report_builds(report, &climbing->builds);
    }
    return CG_OK;
}

/* The build before, read ahead of all work. */
static enum cg_status get_then(const struct cg_options *options,
                               struct climbing *climbing,
                               struct cg_error *error)
{
    climbing->from = options->from != NULL;
    if (!climbing->from)
        return CG_OK;
    climbing->then_name = cg_plain(options->from);
    return cg_build_get(options->from, climbing->then_name.text, NULL, 0,
                        &climbing->then, error);
}

/* Beside it the build with all changes, at the target: with what the config's
 * own evidence has moved, and without. */
static enum cg_status compare(struct climbing *climbing, struct cg_error *error)
{
    if (!climbing->from)
        return CG_OK;
    climbing->now.name = "with the changes";
    climbing->now.updated.c = climbing->ladder->changed;
    climbing->now.updated.prior = climbing->updated.prior;
    cg_ladder_make(climbing->ladder, &climbing->now.updated.prior);
    enum cg_status status = cg_build_find(&climbing->then, error);
    if (status == CG_OK)
        status = cg_build_find(&climbing->now, error);
    return status == CG_OK ? cg_builds_find(&climbing->then, &climbing->now,
                                            &climbing->builds, error)
                           : status;
}

static enum cg_status write_outputs(const struct cg_options *options,
                                    struct climbing *climbing,
                                    struct cg_error *error)
{
    struct cg_table_of of;
    cg_table_of_set(options->told, &climbing->ladder->asked, &of);
    struct cg_outputs outputs = {.title = "What must change at which boost",
                                 .of = &of,
                                 .run = "ladder",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = climbing};
    return cg_outputs_write(options, &outputs, error);
}

static void tell_progress(void *context, size_t answers)
{
    struct cg_progress *progress = context;
    if (answers < progress->total) /* it is a guess */
        cg_progress_tell(progress, answers);
}

/* Two climbs, and some changes. */
static size_t answers_for(double target)
{
    return 2 * (size_t)(target / CG_LADDER_STEP + 3.0) + 6;
}

/* Opened ahead of the work: what cannot be written is told before it. */
static enum cg_status open_written(const struct cg_options *options,
                                   struct climbing *climbing,
                                   struct cg_error *error)
{
    if (options->write == NULL)
        return CG_OK;
    enum cg_status status =
        cg_ladder_config_place(options, &climbing->updated.prior, error);
    if (status == CG_OK)
        status = cg_part_file_open_at(options->write, &climbing->part, error);
    climbing->writing = status == CG_OK;
    return status;
}

/* NEW.cfg comes last: it is whole, and all else is told; or it is not there. */
static enum cg_status close_written(struct climbing *climbing,
                                    enum cg_status status,
                                    struct cg_error *error)
{
    if (!climbing->writing)
        return status;
    if (status == CG_OK)
        status = cg_outputs_flush(error);
    return cg_part_file_close(&climbing->part, status, error);
}

static enum cg_status climb(const struct cg_options *options,
                            const struct cg_material_library *library,
                            struct climbing *climbing, struct cg_error *error)
{
    const struct cg_case *c = &climbing->updated.c;
    struct cg_ladder_shelf shelf = {.ring = library->ring,
                                    .alloy = library->alloy,
                                    .face = library->face,
                                    .rings = library->rings,
                                    .alloys = library->alloys,
                                    .faces = library->faces};
    struct cg_progress progress;
    double target = isnan(options->to) ? c->charge.boost : options->to;
    struct cg_ladder_count count = {0, tell_progress, &progress};
    cg_progress_begin(&progress, "answers", 0, answers_for(target),
                      options->quiet);
    enum cg_status status =
        cg_ladder_create(c, target, &shelf, &count, &climbing->ladder, error);
    cg_progress_end(&progress);
    climbing->answers = count.answers;
    if (status == CG_OK)
        status = compare(climbing, error);
    if (status == CG_OK && climbing->writing)
        status = cg_ladder_config_write(options, &climbing->updated.prior,
                                        climbing->ladder, &climbing->part,
                                        &climbing->written, error);
    return status;
}

/* All that is read, before anything is held or computed. */
static enum cg_status get(const struct cg_options *options,
                          struct cg_material_library *library,
                          struct climbing *climbing, struct cg_error *error)
{
    enum cg_status status =
        cg_updated_case_read(options->config, options->set, options->sets,
                             false, &climbing->updated, error);
    if (status == CG_OK)
        status = cg_config_read_library(options->config, options->set,
                                        options->sets, library, error);
    return status == CG_OK ? get_then(options, climbing, error) : status;
}

static bool stands(const struct climbing *climbing)
{
    return climbing->ladder->stands &&
           (!climbing->writing || cg_answer_stands(&climbing->written.answer));
}

enum cg_status cg_command_ladder(const struct cg_options *options,
                                 struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct cg_material_library library = {.rings = 0};
    struct climbing *climbing = calloc(1, sizeof *climbing);
    if (climbing == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = get(options, &library, climbing, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = open_written(options, climbing, error);
    if (status == CG_OK)
        status = climb(options, &library, climbing, error);
    if (status == CG_OK)
        status = write_outputs(options, climbing, error);
    if (status == CG_OK && cg_outputs_talk(options))
        printf("\nComputed in %.0f ms, %zu answers.\n",
               (cg_wall_clock() - begin) * 1e3, climbing->answers);
    status = close_written(climbing, status, error);
    if (status == CG_OK && !stands(climbing)) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_ladder_free(climbing->ladder);
    cg_build_free(&climbing->then);
    cg_material_library_free(&library);
    cg_updated_case_free(&climbing->updated);
    cg_case_free(&climbing->updated.c);
    free(climbing);
    return status;
}
