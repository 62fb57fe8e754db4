#include "lesson_drawing.h"

#include <stdio.h>
#include <stdlib.h>

#include "part_file.h"

static enum cg_status write_one(const char *dir,
                                const struct cg_lesson_drawing *drawing,
                                struct cg_error *error)
{
    struct cg_part_file part;
    char name[64];
    if (drawing->svg == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    snprintf(name, sizeof name, "%s.svg", drawing->name);
    enum cg_status status = cg_part_file_open(dir, name, &part, error);
    if (status != CG_OK)
        return status;
    fputs(drawing->svg, part.file);
    return cg_part_file_close(&part, CG_OK, error);
}

enum cg_status cg_lesson_drawings_write(const char *dir,
                                        const struct cg_lesson_sheet *sheet,
                                        struct cg_error *error)
{
    struct cg_lesson_drawing ring, gap;
    cg_lesson_draw_ring(sheet, &ring);
    cg_lesson_draw_gap(sheet, &gap);
    enum cg_status status = write_one(dir, &ring, error);
    if (status == CG_OK)
        status = write_one(dir, &gap, error);
    free(ring.svg);
    free(gap.svg);
    return status;
}
