#include <stdlib.h>
#include <string.h>

#include "lesson_table.h"
#include "options.h"
#include "report_lesson.h"
#include "taught.h"

static void report(const struct cg_options *options, const struct cg_case *c,
                   const struct cg_lesson *lesson,
                   struct cg_lesson_sheet *sheet)
{
    bool first = options->level != NULL && strcmp(options->level, "first") == 0;
    cg_lesson_sheet_set(c, lesson, options->inch, sheet);
    cg_report_lesson(sheet, options->config,
                     first ? CG_LESSON_FIRST : CG_LESSON_SECOND,
                     options->answers, options->quiet);
}

enum cg_status cg_command_lesson(const struct cg_options *options,
                                 struct cg_error *error)
{
    struct cg_taught taught;
    struct cg_lesson lesson;
    enum cg_status status = cg_taught_read(options->config, options->set,
                                           options->sets, false, &taught,
                                           error);
    struct cg_case c = taught.c;
    cg_taught_free(&taught);
    if (status != CG_OK)
        return status;
    struct cg_lesson_sheet *sheet = malloc(sizeof *sheet);
    if (sheet == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    status = cg_lesson_find(&c, &lesson, error);
    if (status == CG_OK && options->out != NULL)
        status = cg_lesson_table_write(options->out, options->config, &c,
                                       &lesson, error);
    if (status == CG_OK)
        report(options, &c, &lesson, sheet);
    free(sheet);
    const struct cg_verdict *verdict = &lesson.answer.verdict;
    if (status == CG_OK && verdict->given && !verdict->safe) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return status;
}
