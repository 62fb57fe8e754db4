/* The lesson's steps from temperatures to what is left of the gap. */
#include <stdio.h>

#include "report_lesson_parts.h"
#include "show.h"

void cg_lesson_ring(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    fprintf(out,
            "Pressed shut in the bore, the ring is an arc as long as the bore "
            "is round (less\nits gap, which is small against that):\n\n");
    cg_hand_print(out, &sheet->arc);
    fprintf(out,
            "\nIt was gapped cold.  Each degree makes it longer by the "
            "expansion of its metal\n(%s):\n\n",
            sheet->c->ring[CG_RING_TOP].material);
    cg_hand_print(out, &own->ring_rise);
    cg_hand_print(out, &own->ring);
}

static void print_bore(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    cg_hand_print(out, &own->bore_rise);
    cg_hand_print(out, &own->bore);
}

static void print_place(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growth *at =
        &sheet->lesson->boost[sheet->lesson->own].growth;
    fprintf(out,
            "The bore widens with heat as well, and gives back some of what "
            "the ring takes.\nThe ring keeps its temperature over a stroke, so "
            "it is tightest where the bore\nhas grown least: %s below the "
            "deck.  There, with the mean of its wall,\n\n",
            cg_show_length(at->depth, sheet->inch).text);
}

void cg_lesson_bore_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    print_place(out, sheet);
    print_bore(out, sheet);
    if (sheet->lesson->wall.has_block)
        fprintf(out,
                "\nThat expansion is of liner and block together: the block "
                "outside pulls the liner\nalong.\n");
}

static void print_layers(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_layers *layers = &sheet->layers;
    fprintf(out, "\nThe bore has two layers.  Each would grow by itself, in "
                 "millionths:\n\n");
    cg_hand_print(out, &layers->liner.rise);
    cg_hand_print(out, &layers->liner.free);
    cg_hand_print(out, &layers->block.rise);
    cg_hand_print(out, &layers->block.free);
    if (sheet->lesson->wall.open) {
        fprintf(out,
                "\nHere the block has grown away from its pressed liner and "
                "let go: the liner grows\nby itself, and springs out by what "
                "the press fit had squeezed it.  The model has\n%s "
                "millionths.\n",
                layers->model.text);
        return;
    }
    fprintf(
        out,
        "\nJoined, they pull on each other, each with its stiffness, as two "
        "thin rings:\n\n");
    cg_hand_print(out, &layers->liner.stiffness);
    cg_hand_print(out, &layers->block.stiffness);
    cg_hand_print(out, &layers->stiffness);
    cg_hand_print(out, &layers->liner.pull);
    cg_hand_print(out, &layers->block.pull);
    cg_hand_print(out, &layers->pull);
    cg_hand_print(out, &layers->joined);
    fprintf(out,
            "\nThe model's thick cylinders (Lame) give %s millionths there.\n",
            layers->model.text);
}

void cg_lesson_bore_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    print_place(out, sheet);
    print_bore(out, sheet);
    fprintf(out,
            "\nA cylinder grows by the mean of its wall over the area, not by "
            "its hot surface\n(Timoshenko and Goodier, Theory of "
            "Elasticity).\n");
    if (sheet->lesson->wall.has_block)
        print_layers(out, sheet);
}

void cg_lesson_left(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    fprintf(out,
            "What the ring grows more than the bore is closure: heat takes it "
            "off the gap.\n\n");
    cg_hand_print(out, &own->closure);
    fprintf(out, "\nWith %s cold gap:\n\n",
            sheet->lesson->answer.verdict.given ? "your" : "the");
    cg_hand_print(out, &sheet->sum.left);
    if (!sheet->lesson->answer.verdict.given)
        fprintf(out, "\nThat cold gap is what coldgap asks for; step 11 says "
                     "why.\n");
    if (sheet->sum.left.result.value < 0.0)
        fprintf(out, "\nLess than nothing is left: the ends touch (step 9).\n");
}
