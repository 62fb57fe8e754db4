#include "find_notes.h"

#include <assert.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "show.h"

/* Surface limits [K]: J. B. Heywood (1988), sec. 12.1. */
#define CROWN_LIMIT 573.15
#define BORE_LIMIT 453.15

static void add(struct cg_find_notes *notes, const char *format, ...)
    CG_FORMAT(2, 3);

static void add(struct cg_find_notes *notes, const char *format, ...)
{
    va_list args;
    assert(notes->count < CG_FIND_NOTES);
    va_start(args, format);
    vsnprintf(notes->text[notes->count++], sizeof notes->text[0], format, args);
    va_end(args);
}

void cg_find_notes_fill(const struct cg_case *c, const struct cg_answer *answer,
                        bool inch, struct cg_find_notes *notes)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct cg_material *ring = &c->ring_material[CG_RING_TOP];
    const struct cg_material *alloy = &c->piston_material;
    notes->count = 0;
    if (e->time >= answer->duration && c->duty.start != CG_START_SETTLED)
        add(notes, "the gap is still closing when the duty ends; a longer "
                   "one needs more.");
    if (!isnan(e->boiling_time))
        add(notes,
            "the coolant begins to boil at the bore wall at %.1f s "
            "(wall %s);\npast that it cools better at first, which "
            "tightens the gap: not modelled.",
            e->boiling_time, cg_show_temperature(e->boiling_point, inch).text);
    if (e->ring_top_max > ring->hot_limit)
        add(notes, "the top ring passes %s, where %s begins to lose tension.",
            cg_show_temperature(ring->hot_limit, inch).text, ring->name);
    if (e->groove_top_max > alloy->hot_limit)
        add(notes, "the top groove passes %s, where piston alloy %s softens.",
            cg_show_temperature(alloy->hot_limit, inch).text, alloy->name);
    if (e->crown_max > CROWN_LIMIT)
        add(notes,
            "the crown passes %s, the usual limit for aluminium "
            "(Heywood 1988, sec. 12.1).",
            cg_show_temperature(CROWN_LIMIT, inch).text);
    if (e->liner_top_max > BORE_LIMIT)
        add(notes,
            "the bore passes %s where the top ring turns: its oil begins "
            "to fail\nthere (Heywood 1988, sec. 12.1).",
            cg_show_temperature(BORE_LIMIT, inch).text);
}

const char *cg_find_seat_text(int seat)
{
    switch ((enum cg_seat)seat) {
    case CG_SEAT_PARENT:
        return "bore cut in the block";
    case CG_SEAT_CAST_IN:
        return "liner cast in";
    case CG_SEAT_PRESSED:
        return "liner pressed in";
    case CG_SEAT_WET:
        return "wet liner";
    }
    return "";
}

const char *cg_find_start_text(int start)
{
    static const char *const text[] = {"cold", "settled at cruise",
                                       "settled at its first instant"};
    return text[start];
}

struct cg_find_beyond cg_find_beyond(const struct cg_verdict *verdict,
                                     const struct cg_gap_sum *sum, bool inch)
{
    struct cg_find_beyond out;
    char *comma;
    snprintf(out.text, sizeof out.text, "%s",
             cg_say_beyond(verdict, sum, inch).text);
    comma = strstr(out.text, ", at");
    if (comma != NULL)
        comma[1] = '\n';
    return out;
}

const char *cg_find_chance(double chance, char text[16])
{
    if (chance < 1e-4)
        return "under 1e-4";
    snprintf(text, 16, "%.2g", chance);
    return text;
}

const char *cg_find_left_out(void)
{
    return "Left out: bore distortion and wear, ring twist, differences "
           "around the circumference\n"
           "and between cylinders, knock, boost lag, coolant past boiling, "
           "gas pressure in the bore.";
}

const char *cg_find_second_reason(const struct cg_answer *answer)
{
    switch (answer->second_reason) {
    case CG_SECOND_OWN:
        return "its own closure, spread and residual";
    case CG_SECOND_SEATING:
        return "what keeps the top ring seated (seal shows it)";
    case CG_SECOND_BEST:
        return "no gap keeps the top ring seated as long as asked; this one "
               "nearly as long as any";
    case CG_SECOND_LIMITED:
        return "the trade's rule; gas between the rings would have it wider "
               "yet";
    case CG_SECOND_RULE:
        break;
    }
    return "margin.second_factor times the top gap, a rule of the trade";
}
