#include "outputs.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "constants.h"
#include "hold.h"
#include "inputs.h"
#include "plain_text.h"
#include "write_html.h"
#include "write_json.h"
#include "write_text.h"

enum { RUN_LENGTH = 8192, NAME_LENGTH = 64 };

/* Of this run. */
static struct cg_hold folder = {.folder = -1};
static struct cg_part_file place; /* of the page */
static bool placed;

static enum cg_status check_names(const char *dir, const char *names,
                                  struct cg_error *error)
{
    enum cg_status status = CG_OK;
    while (status == CG_OK && *names != '\0') {
        char name[NAME_LENGTH];
        size_t length = strcspn(names, " ");
        snprintf(name, sizeof name, "%.*s", (int)length, names);
        status = cg_part_file_may(dir, name, error);
        names += length + strspn(names + length, " ");
    }
    return status;
}

enum cg_status cg_outputs_hold(const struct cg_options *options,
                               const char *dir, const char *names,
                               struct cg_error *error)
{
    enum cg_status status = CG_OK;
    cg_inputs_end();
    if (dir != NULL)
        status = cg_hold_begin(dir, options->parts > 1, &folder, error);
    if (status == CG_OK && dir != NULL)
        status = check_names(dir, names, error);
    if (status == CG_OK && options->report != NULL) {
        status = cg_page_hold(options->report, &place, error);
        placed = status == CG_OK;
    }
    return status;
}

void cg_outputs_end(void)
{
    if (placed)
        cg_part_file_close(&place, CG_STOPPED, NULL);
    placed = false;
    cg_hold_end(&folder);
}

/* Adds to a text that grows; what does not fit is cut off.  An option
 * without a value has an empty one. */
static void add(char *run, const char *option, const char *value)
{
    size_t used = strlen(run);
    if (value != NULL)
        snprintf(run + used, RUN_LENGTH - used, " %s%s%s", option,
                 value[0] != '\0' ? " " : "",
                 value[0] != '\0' ? cg_plain_word(value).text : "");
}

/* What was asked, so that the answer can be had again. */
static void write_run(const struct cg_options *options, const char *command,
                      char run[RUN_LENGTH])
{
    char number[32], to[32];
    snprintf(run, RUN_LENGTH, "coldgap %s %s", command,
             cg_plain_word(options->config).text);
    snprintf(number, sizeof number, options->inch ? "%.6gin" : "%.6gmm",
             options->gap / (options->inch ? CG_INCH : 1e-3));
    add(run, "--gap", options->gap > 0.0 ? number : NULL);
    add(run, "--from", options->from);
    snprintf(to, sizeof to, options->inch ? "%.6gpsi" : "%.6gkPa",
             options->to / (options->inch ? CG_PSI : 1e3));
    add(run, "--to", isnan(options->to) ? NULL : to);
    add(run, "--write", options->write);
    add(run, "--measured", options->measured);
    add(run, "--profile", options->profile);
    add(run, "--simulate", options->simulate);
    for (size_t i = 0; i < options->varies; i++)
        add(run, "--vary", options->vary[i]);
    for (size_t i = 0; i < options->sets; i++) {
        struct cg_set_told told = cg_set_told(options, i);
        add(run, told.option, told.value);
    }
    add(run, "--level", options->level);
    add(run, "--answers", options->answers ? "" : NULL);
    snprintf(number, sizeof number, "%zu", options->samples);
    add(run, "--samples", options->samples > 0 ? number : NULL);
}

static enum cg_status write_page(const struct cg_options *options,
                                 const struct cg_outputs *outputs,
                                 const struct cg_report *report,
                                 struct cg_drawing *drawing,
                                 struct cg_error *error)
{
    char run[RUN_LENGTH];
    write_run(options, outputs->run, run);
    struct cg_table_title title = cg_table_title(outputs->title, outputs->of);
    struct cg_page_head head = {title.text, run, outputs->one_sheet};
    struct cg_page *page;
    enum cg_status status = cg_page_open(&place, &head, drawing, &page, error);
    if (status != CG_OK)
        return status;
    placed = false; /* the page's now */
    return cg_page_close(page, cg_write_html(page, report, error), error);
}

/* Tables for the pictures alone; where they cannot be written there are no
 * pictures. */
static enum cg_status tables_to_draw(const struct cg_outputs *outputs,
                                     struct cg_drawing *drawing,
                                     struct cg_error *error)
{
    struct cg_error why = {CG_OK, ""};
    if (drawing->trouble[0] != '\0')
        return CG_OK;
    enum cg_status status =
        outputs->tables(outputs->context, outputs->of, drawing->tables, &why);
    if (status == CG_FILE)
        snprintf(drawing->trouble, sizeof drawing->trouble,
                 "no tables to draw from");
    else if (status != CG_OK)
        return cg_error_set(error, status, "%s", why.text);
    return CG_OK;
}

/* The page, and tables for its pictures where none were asked for. */
static enum cg_status draw_page(const struct cg_options *options,
                                const struct cg_outputs *outputs,
                                const struct cg_report *report,
                                struct cg_error *error)
{
    const char *dir = outputs->dir != NULL ? outputs->dir : options->out;
    struct cg_drawing drawing;
    enum cg_status status = CG_OK;
    cg_drawing_begin(dir, &drawing);
    if (outputs->tables != NULL && dir == NULL)
        status = tables_to_draw(outputs, &drawing, error);
    if (status == CG_OK)
        status = write_page(options, outputs, report, &drawing, error);
    cg_drawing_end(&drawing);
    return status;
}

static enum cg_status make_report(const struct cg_options *options,
                                  const struct cg_outputs *outputs,
                                  struct cg_report **report,
                                  struct cg_error *error)
{
    char run[RUN_LENGTH];
    write_run(options, outputs->run, run);
    struct cg_table_title title = cg_table_title(outputs->title, outputs->of);
    enum cg_status status =
        cg_report_create(title.text, run, options->inch, report, error);
    if (status == CG_OK)
        status = outputs->tell(outputs->context, *report, error);
    return status;
}

enum cg_status cg_outputs_flush(struct cg_error *error)
{
    errno = 0;
    if (fflush(stdout) == 0 && !ferror(stdout))
        return CG_OK;
    return cg_error_set(error, CG_FILE, "cannot write the output: %s",
                        errno != 0 ? strerror(errno) : "write error");
}

bool cg_outputs_talk(const struct cg_options *options)
{
    return !options->quiet && !options->json;
}

enum cg_status cg_outputs_write(const struct cg_options *options,
                                const struct cg_outputs *outputs,
                                struct cg_error *error)
{
    struct cg_report *report = NULL;
    enum cg_status status = CG_OK;
    if (outputs->tables != NULL && options->out != NULL)
        status =
            outputs->tables(outputs->context, outputs->of, options->out, error);
    if (status == CG_OK)
        status = make_report(options, outputs, &report, error);
    if (status == CG_OK && options->report != NULL)
        status = draw_page(options, outputs, report, error);
    if (status == CG_OK)
        status = options->json
                     ? cg_write_json(stdout, report, options->drawings, error)
                     : cg_write_text(stdout, report, options->quiet, error);
    cg_report_free(report);
    return status;
}
