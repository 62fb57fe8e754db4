#include <stdlib.h>
#include <string.h>

#include "lesson_drawing.h"
#include "lesson_table.h"
#include "options.h"
#include "outputs.h"
#include "report_lesson.h"
#include "updated_case.h"

#define TABLES "lesson.dat " CG_LESSON_DRAWINGS

/* What table and report are made from. */
struct telling {
    const struct cg_options *options;
    const struct cg_case *c;
    const struct cg_lesson *lesson;
    const struct cg_lesson_sheet *sheet;
};

static enum cg_lesson_level level_of(const struct cg_options *options)
{
    bool first = options->level != NULL && strcmp(options->level, "first") == 0;
    return first ? CG_LESSON_FIRST : CG_LESSON_SECOND;
}

static enum cg_status write_table(void *context, const struct cg_table_of *of,
                                  const char *dir, struct cg_error *error)
{
    const struct telling *telling = context;
    enum cg_status status =
        cg_lesson_table_write(dir, of, telling->c, telling->lesson, error);
    if (status == CG_OK)
        status = cg_lesson_drawings_write(dir, telling->sheet, error);
    return status;
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct telling *telling = context;
    (void)error;
    cg_report_lesson(report, telling->sheet, level_of(telling->options),
                     telling->options->answers);
    return CG_OK;
}

static enum cg_status write_all(const struct cg_options *options,
                                const struct cg_case *c,
                                const struct cg_lesson *lesson,
                                struct cg_lesson_sheet *sheet,
                                struct cg_error *error)
{
    struct telling telling = {options, c, lesson, sheet};
    struct cg_table_of of;
    cg_table_of_set(options->told, c, &of);
    struct cg_outputs outputs = {.title = "Why the gap must grow with heat",
                                 .of = &of,
                                 .run = "lesson",
                                 .tables = write_table,
                                 .tell = tell,
                                 .context = &telling};
    cg_lesson_sheet_set(c, lesson, options->inch, sheet);
    return cg_outputs_write(options, &outputs, error);
}

enum cg_status cg_command_lesson(const struct cg_options *options,
                                 struct cg_error *error)
{
    struct cg_updated_case updated;
    struct cg_lesson lesson;
    enum cg_status status = cg_updated_case_read(
        options->config, options->set, options->sets, false, &updated, error);
    struct cg_case c = updated.c;
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    struct cg_lesson_sheet *sheet = malloc(sizeof *sheet);
    if (status == CG_OK && sheet == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (status == CG_OK)
        status = cg_lesson_find(&c, &lesson, error);
    if (status == CG_OK)
        status = write_all(options, &c, &lesson, sheet, error);
    free(sheet);
    cg_case_free(&c);
    if (status != CG_OK)
        return status;
    if (lesson.answer.verdict.fits != CG_FITS) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return CG_OK;
}
