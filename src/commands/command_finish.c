#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "finish_tables.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "profile_file.h"
#include "report_finish.h"

#define TABLES                                                                 \
    "finish.dat finish_profile.dat finish_ratio.dat finish_probability.dat "   \
    "finish_patch.dat"

/* What is measured, and what comes of it. */
struct finishing {
    const struct cg_options *options;
    struct cg_case c;
    enum cg_filter filter;
    double cutoff;
    struct cg_profile profile;
    struct cg_profile_note note;
    struct cg_patch patch[CG_STAGES];
    struct cg_surface *surface;
    struct cg_finish_verdict verdict;
};

static enum cg_status choose(const struct cg_options *options,
                             struct finishing *finishing,
                             struct cg_error *error)
{
    finishing->options = options;
    finishing->cutoff =
        options->cutoff > 0.0 ? options->cutoff : CG_SURFACE_USUAL_CUTOFF;
    for (int i = 0; i < CG_FILTERS && options->filter != NULL; i++)
        if (strcmp(options->filter, cg_filter_name((enum cg_filter)i)) == 0)
            finishing->filter = (enum cg_filter)i;
    if ((options->profile != NULL) == (options->simulate != NULL))
        return cg_error_set(error, CG_BAD_INPUT,
                            "finish: give one of --profile FILE and "
                            "--simulate plateau or coarse");
    if (options->simulate != NULL && options->spacing > 0.0)
        return cg_error_set(error, CG_BAD_INPUT,
                            "finish: --spacing is for --profile; a simulated "
                            "trace has its own");
    return CG_OK;
}

static enum cg_status get_profile(struct finishing *finishing,
                                  struct cg_error *error)
{
    const struct cg_options *options = finishing->options;
    if (options->profile != NULL) {
        struct cg_profile_ask ask = {options->spacing, finishing->cutoff,
                                     finishing->filter != CG_FILTER_NONE};
        return cg_profile_file_read(options->profile, &ask, &finishing->profile,
                                    &finishing->note, error);
    }
    enum cg_stages stages = strcmp(options->simulate, "coarse") == 0
                                ? CG_STAGES_COARSE
                                : CG_STAGES_PLATEAU;
    enum cg_status status =
        cg_simulated_trace(&finishing->c, stages, finishing->cutoff,
                           options->seed, &finishing->profile, error);
    if (status == CG_OK)
        status = cg_simulated_patches(&finishing->c, options->seed,
                                      finishing->patch, error);
    return status;
}

/* The surface's complaints do not know the file they are about. */
static enum cg_status measure(struct finishing *finishing,
                              struct cg_error *error)
{
    struct cg_error why = {CG_OK, ""};
    enum cg_status status =
        cg_surface_measure(&finishing->profile, finishing->filter,
                           finishing->cutoff, &finishing->surface, &why);
    if (status == CG_OK)
        return cg_finish_judge(&finishing->c, &finishing->surface->core,
                               finishing->surface->probability.bends,
                               &finishing->verdict, error);
    const char *path = finishing->options->profile;
    return cg_error_set(error, status, "%s: %.300s",
                        path != NULL ? path : "simulated profile", why.text);
}

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    const struct cg_finish_story *story = context;
    return cg_finish_tables_write(dir, of, story->surface, story->verdict,
                                  story->patch, error);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    (void)error;
    cg_report_finish(report, context);
    return CG_OK;
}

static enum cg_status write_outputs(const struct finishing *finishing,
                                    struct cg_error *error)
{
    const struct cg_options *options = finishing->options;
    bool simulated = options->simulate != NULL;
    const struct cg_patch *patch = simulated ? finishing->patch : NULL;
    struct cg_plain profile = cg_plain(simulated ? "" : options->profile);
    struct cg_finish_story story = {.profile = simulated ? NULL : profile.text,
                                    .simulate = options->simulate,
                                    .seed = options->seed,
                                    .c = &finishing->c,
                                    .surface = finishing->surface,
                                    .verdict = &finishing->verdict,
                                    .note = &finishing->note,
                                    .patch = patch};
    struct cg_table_of of;
    cg_table_of_set(options->told, &finishing->c, &of);
    struct cg_outputs outputs = {.title = "Finish of the bore",
                                 .of = &of,
                                 .run = "finish",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = &story};
    return cg_outputs_write(options, &outputs, error);
}

enum cg_status cg_command_finish(const struct cg_options *options,
                                 struct cg_error *error)
{
    struct finishing finishing = {.filter = CG_FILTER_STANDARD};
    enum cg_status status = choose(options, &finishing, error);
    if (status == CG_OK)
        status = cg_config_read(options->config, options->set, options->sets,
                                &finishing.c, error);
    if (status == CG_OK)
        status = get_profile(&finishing, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = measure(&finishing, error);
    if (status == CG_OK)
        status = write_outputs(&finishing, error);
    if (status == CG_OK && !cg_finish_passes(&finishing.verdict))
        status = CG_NOT_SAFE; /* the screen has said it */
    cg_surface_free(finishing.surface);
    cg_simulated_free(finishing.patch);
    free(finishing.profile.height);
    cg_case_free(&finishing.c);
    return status;
}
