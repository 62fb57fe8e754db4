#include <stdio.h>
#include <stdlib.h>

#include "builds_find.h"
#include "builds_table.h"
#include "card_table.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "report_card.h"

#define TABLES "card.dat builds.dat build_changes.dat build_proof.dat"

/* What the card is made from. */
struct carding {
    struct cg_build now, then;
    struct cg_builds builds;
    struct cg_card card;
    struct cg_plain then_name;
};

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    const struct cg_card *card = context;
    enum cg_status status = cg_card_table_write(dir, of, card, error);
    return status == CG_OK
               ? cg_builds_tables_write(dir, of, card->builds, error)
               : status;
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    (void)error;
    cg_report_card(report, context);
    return CG_OK;
}

/* All that is read, before anything is held or computed. */
static enum cg_status get(const struct cg_options *options,
                          struct carding *carding, struct cg_error *error)
{
    enum cg_status status =
        cg_build_get(options->config, options->told, options->set,
                     options->sets, &carding->now, error);
    if (status != CG_OK || options->from == NULL)
        return status;
    carding->then_name = cg_plain(options->from);
    return cg_build_get(options->from, carding->then_name.text, NULL, 0,
                        &carding->then, error);
}

static enum cg_status find(const struct cg_options *options,
                           struct carding *carding, struct cg_error *error)
{
    struct cg_card *card = &carding->card;
    const struct cg_case *c = &carding->now.updated.c;
    card->build = &carding->now;
    enum cg_status status = cg_build_find(&carding->now, error);
    if (status == CG_OK)
        status = cg_finish_order_find(&carding->now.updated.prior,
                                      options->seed, &card->order, error);
    if (status != CG_OK)
        return status;
    cg_fit_ask(c, &carding->now.answer, card->asked);
    if (options->from == NULL)
        return CG_OK;
    card->builds = &carding->builds;
    status = cg_build_find(&carding->then, error);
    return status == CG_OK ? cg_builds_find(&carding->then, &carding->now,
                                            &carding->builds, error)
                           : status;
}

static enum cg_status write_outputs(const struct cg_options *options,
                                    struct carding *carding,
                                    struct cg_error *error)
{
    struct cg_table_of of;
    cg_table_of_set(options->told, &carding->now.updated.c, &of);
    struct cg_outputs outputs = {.title = "Build card",
                                 .of = &of,
                                 .run = "card",
                                 .one_sheet = true,
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = &carding->card};
    return cg_outputs_write(options, &outputs, error);
}

enum cg_status cg_command_card(const struct cg_options *options,
                               struct cg_error *error)
{
    struct carding *carding = calloc(1, sizeof *carding);
    if (carding == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = get(options, carding, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = find(options, carding, error);
    if (status == CG_OK)
        status = write_outputs(options, carding, error);
    if (status == CG_OK && cg_outputs_talk(options) && options->report == NULL)
        printf(
            "Next: --report card.html writes the card as a page to print.\n");
    if (status == CG_OK && !cg_answer_stands(&carding->now.answer)) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_build_free(&carding->now);
    cg_build_free(&carding->then);
    free(carding);
    return status;
}
