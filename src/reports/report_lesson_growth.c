/* The lesson's steps from temperatures to what is left of the gap. */
#include "report_lesson_parts.h"
#include "show.h"

void cg_lesson_tell_ring(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    (void)second;
    cg_report_say(report, "Squeezed into the bore, the ring is as long as the "
                          "bore is around (less its gap, which is small "
                          "beside that):");
    cg_lesson_sums(report, CG_SUMS(&sheet->arc));
    cg_report_say(report,
                  "It was gapped cold. Each degree makes it longer, by the "
                  "expansion of its metal (%s):",
                  sheet->c->ring[CG_RING_TOP].material);
    cg_lesson_sums(report, CG_SUMS(&own->ring_rise, &own->ring));
}

static void tell_joined(struct cg_report *report,
                        const struct cg_lesson_layers *layers)
{
    cg_report_say(report, "Joined, they pull on each other, each with its own "
                          "stiffness, like two thin rings:");
    cg_lesson_sums(report, CG_SUMS(&layers->liner.stiffness,
                                   &layers->block.stiffness, &layers->stiffness,
                                   &layers->liner.pull, &layers->block.pull,
                                   &layers->pull, &layers->joined));
    cg_report_say(report,
                  "The model's thick cylinders (Lame) give %s millionths "
                  "there.",
                  layers->model.text);
}

static void tell_layers(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_layers *layers = &sheet->layers;
    cg_report_say(report, "The bore has two layers. Each would grow by itself, "
                          "in millionths:");
    cg_lesson_sums(report, CG_SUMS(&layers->liner.rise, &layers->liner.free,
                                   &layers->block.rise, &layers->block.free));
    if (sheet->lesson->wall.open)
        cg_report_say(report,
                      "Here the block has grown away from its pressed liner "
                      "and let go. The liner grows by itself, and springs out "
                      "by what the press fit had squeezed it. The model has %s "
                      "millionths.",
                      layers->model.text);
    else
        tell_joined(report, layers);
}

void cg_lesson_tell_bore(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    const struct cg_lesson_growth *at =
        &sheet->lesson->boost[sheet->lesson->own].growth;
    bool block = sheet->lesson->wall.has_block;
    cg_report_say(report,
                  "The bore widens with heat as well, and gives back some of "
                  "what the ring takes. The ring keeps its temperature over a "
                  "stroke, so its gap is tightest where the bore has grown "
                  "least: %s below the deck. There, with the mean temperature "
                  "of the wall:",
                  cg_show_length(at->depth, sheet->inch).text);
    cg_lesson_sums(report, CG_SUMS(&own->bore_rise, &own->bore));
    if (second)
        cg_report_say(report,
                      "A cylinder grows by the mean of its wall over the area, "
                      "not by its hot surface (Timoshenko and Goodier, Theory "
                      "of Elasticity).");
    else if (block)
        cg_report_say(report, "That expansion is of liner and block together: "
                              "the block outside pulls the liner along.");
    if (second && block)
        tell_layers(report, sheet);
}

void cg_lesson_tell_left(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    (void)second;
    cg_report_say(report, "What the ring grows more than the bore is the "
                          "closure. Heat takes that off the gap:");
    if (cg_lesson_own(sheet)->chokes != 0.0)
        cg_report_say(report,
                      "The barrel is ground narrower at the top. At that depth "
                      "the choke %s %s besides:",
                      cg_lesson_own(sheet)->chokes > 0.0 ? "takes"
                                                         : "gives back",
                      cg_figure_text(&cg_lesson_own(sheet)->choke).text);
    cg_lesson_sums(report, CG_SUMS(&cg_lesson_own(sheet)->closure));
    if (sheet->lesson->answer.verdict.given)
        cg_report_say(report, "With your gap:");
    else
        cg_report_say(report, "With the gap to file to (step 12):");
    cg_lesson_sums(report, CG_SUMS(&sheet->sum.left));
    if (sheet->sum.left.result.value < 0.0)
        cg_report_say(report,
                      "Less than nothing is left: the ends touch (step 9).");
}
