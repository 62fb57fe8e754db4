#include <math.h>
#include <stdio.h>

#include "config.h"
#include "ladder_config.h"
#include "ladder_tables.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "progress.h"
#include "report_ladder.h"
#include "updated_case.h"

#define TABLES "ladder.dat ladder_boost.dat"

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    return cg_ladder_tables_write(dir, of, context, error);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    (void)error;
    cg_report_ladder(report, context);
    return CG_OK;
}

static enum cg_status write_outputs(const struct cg_options *options,
                                    struct cg_ladder *ladder,
                                    struct cg_error *error)
{
    struct cg_table_of of;
    cg_table_of_set(options->told, &ladder->asked, &of);
    struct cg_outputs outputs = {.title = "What must change at which boost",
                                 .of = &of,
                                 .run = "ladder",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = ladder};
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

static void tell_written(const struct cg_options *options, bool stands)
{
    printf("\n%s: written, and read back.\n", cg_plain(options->write).text);
    if (!stands)
        printf("As it stands there find does not pass it: ask find why.\n");
}

/* NEW.cfg is whole, or not there. */
static enum cg_status
write_config(const struct cg_options *options, const struct cg_case *c,
             const struct cg_ladder *ladder, struct cg_part_file *part,
             bool *stands, enum cg_status status, struct cg_error *error)
{
    if (status == CG_OK)
        status =
            cg_ladder_config_write(options, c, ladder, part, stands, error);
    return cg_part_file_close(part, status, error);
}

enum cg_status cg_command_ladder(const struct cg_options *options,
                                 struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct cg_updated_case updated;
    struct cg_material_library library = {.rings = 0};
    struct cg_ladder *ladder = NULL;
    struct cg_part_file part;
    enum cg_status status = cg_updated_case_read(
        options->config, options->set, options->sets, false, &updated, error);
    const struct cg_case *c = &updated.c;
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = cg_config_read_library(options->config, options->set,
                                        options->sets, &library, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK && options->write != NULL)
        status = cg_part_file_open_at(options->write, &part, error);
    bool opened = status == CG_OK && options->write != NULL, stands = true;
    struct cg_ladder_shelf shelf = {.ring = library.ring,
                                    .alloy = library.alloy,
                                    .face = library.face,
                                    .rings = library.rings,
                                    .alloys = library.alloys,
                                    .faces = library.faces};
    struct cg_progress progress;
    struct cg_ladder_count count = {0, tell_progress, &progress};
    double target = isnan(options->to) ? c->charge.boost : options->to;
    if (status == CG_OK) {
        cg_progress_begin(&progress, "answers", 0, answers_for(target),
                          options->quiet);
        status = cg_ladder_create(c, target, &shelf, &count, &ladder, error);
        cg_progress_end(&progress);
    }
    if (opened)
        status =
            write_config(options, c, ladder, &part, &stands, status, error);
    if (status == CG_OK)
        status = write_outputs(options, ladder, error);
    if (status == CG_OK && opened && cg_outputs_talk(options))
        tell_written(options, stands);
    if (status == CG_OK && cg_outputs_talk(options))
        printf("\nComputed in %.0f ms, %zu answers.\n",
               (cg_wall_clock() - begin) * 1e3, count.answers);
    if (status == CG_OK && !ladder->stands) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_ladder_free(ladder);
    cg_material_library_free(&library);
    return status;
}
