#include <math.h>

#include "ceiling.h"
#include "options.h"
#include "outputs.h"
#include "report_ceiling.h"
#include "updated_case.h"

/* --gap, or else the gap the config asks to judge. */
static enum cg_status choose_gap(const struct cg_options *options,
                                 const struct cg_case *c, double *gap,
                                 struct cg_error *error)
{
    *gap = options->gap > 0.0 ? options->gap : c->ring[CG_RING_TOP].cold_gap;
    if (isnan(*gap))
        return cg_error_set(error, CG_BAD_INPUT,
                            "ceiling: no gap; give --gap 0.50mm, or "
                            "rings.top.cold_gap_mm in the config");
    return CG_OK;
}

/* What is told of. */
struct found {
    const struct cg_case *c;
    const struct cg_ceiling *ceiling;
};

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct found *found = context;
    (void)error;
    cg_report_ceiling(report, found->c, found->ceiling);
    return CG_OK;
}

enum cg_status cg_command_ceiling(const struct cg_options *options,
                                  struct cg_error *error)
{
    struct cg_updated_case updated;
    const struct cg_case *c = &updated.c;
    struct cg_ceiling ceiling;
    double gap = 0.0;
    enum cg_status status = cg_updated_case_read(
        options->config, options->set, options->sets, false, &updated, error);
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = choose_gap(options, c, &gap, error);
    if (status == CG_OK)
        status = cg_ceiling_find(c, gap, &ceiling, error);
    struct found found = {c, &ceiling};
    struct cg_table_of of;
    cg_table_of_set(options->told, c, &of);
    struct cg_outputs outputs = {.title = "The highest boost a gap stands",
                                 .of = &of,
                                 .run = "ceiling",
                                 .tell = tell,
                                 .context = &found};
    if (status == CG_OK)
        status = cg_outputs_write(options, &outputs, error);
    cg_case_free(&updated.c);
    if (status == CG_OK && !cg_ceiling_stands(&ceiling)) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return status;
}
