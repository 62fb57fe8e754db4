#include <stdlib.h>
#include <string.h>

#include "lesson_table.h"
#include "options.h"
#include "outputs.h"
#include "page_lesson.h"
#include "report_lesson.h"
#include "taught.h"

#define TABLES "lesson.dat"

/* What screen, table and page are made from. */
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

static enum cg_status write_table(void *context, const char *dir,
                                  struct cg_error *error)
{
    const struct telling *telling = context;
    struct cg_table_of of;
    cg_table_of_set(telling->options->told, telling->c, &of);
    return cg_lesson_table_write(dir, &of, telling->c, telling->lesson, error);
}

static enum cg_status fill_page(void *context, struct cg_page *page,
                                struct cg_error *error)
{
    const struct telling *telling = context;
    return cg_page_lesson(page, telling->sheet, level_of(telling->options),
                          telling->options->answers, error);
}

static enum cg_status tell(const struct cg_options *options,
                           const struct cg_case *c,
                           const struct cg_lesson *lesson,
                           struct cg_lesson_sheet *sheet,
                           struct cg_error *error)
{
    struct telling telling = {options, c, lesson, sheet};
    struct cg_outputs outputs = {.title = "Why the gap must grow with heat",
                                 .run = "lesson",
                                 .tables = write_table,
                                 .fill = fill_page,
                                 .context = &telling};
    cg_lesson_sheet_set(c, lesson, options->inch, sheet);
    enum cg_status status = cg_outputs_write(options, &outputs, error);
    if (status == CG_OK)
        cg_report_lesson(sheet, options->told, level_of(options),
                         options->answers, options->quiet);
    return status;
}

enum cg_status cg_command_lesson(const struct cg_options *options,
                                 struct cg_error *error)
{
    struct cg_taught taught;
    struct cg_lesson lesson;
    enum cg_status status = cg_taught_read(
        options->config, options->set, options->sets, false, &taught, error);
    struct cg_case c = taught.c;
    cg_taught_free(&taught);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status != CG_OK)
        return status;
    struct cg_lesson_sheet *sheet = malloc(sizeof *sheet);
    if (sheet == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    status = cg_lesson_find(&c, &lesson, error);
    if (status == CG_OK)
        status = tell(options, &c, &lesson, sheet, error);
    free(sheet);
    if (status != CG_OK)
        return status;
    if (!lesson.answer.verdict.safe) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return CG_OK;
}
