/* The lesson's steps from temperatures to what is left of the gap. */
#include <math.h>
#include <stdio.h>

#include "report_lesson_parts.h"
#include "show.h"

void cg_lesson_ring(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    printf("Pressed shut in the bore, the ring is an arc as long as the bore "
           "is round (less\nits gap, which is small against that):\n\n");
    cg_hand_print(&sheet->arc);
    printf("\nIt was gapped cold.  Of %s each degree makes it longer by its "
           "expansion:\n\n",
           sheet->c->ring[CG_RING_TOP].material);
    cg_hand_print(&own->ring_rise);
    cg_hand_print(&own->ring);
}

static void print_bore(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    cg_hand_print(&own->bore_rise);
    cg_hand_print(&own->bore);
}

static void print_place(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growth *at =
        &sheet->lesson->boost[sheet->lesson->own].growth;
    printf("The bore widens with heat as well, and gives back some of what the "
           "ring takes.  The\nring keeps its temperature over a stroke, so it "
           "is tightest where the bore has\ngrown least: %s below the deck.  "
           "Mean of its wall there:\n\n",
           cg_show_length(at->depth, sheet->inch).text);
}

void cg_lesson_bore_first(const struct cg_lesson_sheet *sheet)
{
    print_place(sheet);
    print_bore(sheet);
    if (sheet->lesson->wall.has_block)
        printf("\nThat expansion is of liner and block together: the block "
               "outside pulls the liner\nalong.\n");
}

static void print_layers(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_layers *layers = &sheet->layers;
    printf("\nThe bore has two layers.  Each would grow by itself, in "
           "millionths:\n\n");
    cg_hand_print(&layers->liner_rise);
    cg_hand_print(&layers->liner_free);
    cg_hand_print(&layers->block_rise);
    cg_hand_print(&layers->block_free);
    if (sheet->lesson->wall.open) {
        printf("\nHere the block has grown away from its pressed liner and let "
               "go: the liner grows by\nitself, and gives way by what the press "
               "fit had squeezed it.  The model: %s\nmillionths.\n",
               layers->model.text);
        return;
    }
    printf("\nJoined, they pull on each other, each with its stiffness, as two "
           "thin rings:\n\n");
    cg_hand_print(&layers->liner_stiff);
    cg_hand_print(&layers->block_stiff);
    cg_hand_print(&layers->stiff);
    cg_hand_print(&layers->liner_part);
    cg_hand_print(&layers->block_part);
    cg_hand_print(&layers->parts);
    cg_hand_print(&layers->joined);
    printf("\nThe model's thick cylinders (Lame) give %s millionths there.\n",
           layers->model.text);
}

void cg_lesson_bore_second(const struct cg_lesson_sheet *sheet)
{
    print_place(sheet);
    print_bore(sheet);
    printf("\nA cylinder grows by the mean of its wall over the area, not by "
           "its hot surface\n(Timoshenko and Goodier, Theory of "
           "Elasticity).\n");
    if (sheet->lesson->wall.has_block)
        print_layers(sheet);
}

void cg_lesson_left(const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    printf("What the ring grows more than the bore is closure: heat takes it "
           "off the gap.\n\n");
    cg_hand_print(&own->closure);
    printf("\nWith %s cold gap:\n\n",
           sheet->lesson->answer.verdict.given ? "your"
                                               : "the");
    cg_hand_print(&sheet->sum.left);
    if (!sheet->lesson->answer.verdict.given)
        printf("\nThat cold gap is what coldgap asks for; step 11 says "
               "why.\n");
    if (sheet->sum.left.result.value < 0.0)
        printf("\nLess than nothing is left: the ends touch (step 9).\n");
}
