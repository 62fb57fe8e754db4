#include "say_common.h"

#include <stdio.h>

#include "show.h"

const char *cg_say_file_to_larger(void)
{
    return "until your own engine has shown better, file to the larger.";
}

struct cg_sentence cg_say_first_order(bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "With all inputs moved at once the shipped engines need up to %s "
             "more: find --samples works it out.",
             cg_show_length(CG_FIRST_ORDER_SHORT, inch).text);
    return out;
}

struct cg_sentence cg_say_beyond(const struct cg_verdict *verdict,
                                 const struct cg_gap_sum *sum, bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "no gap in range will do: the gap needed is %s, at most %s is "
             "allowed",
             cg_show_gap_up(sum->cold_gap, inch).text,
             cg_show_gap(verdict->most, inch).text);
    return out;
}

const char *cg_say_left_out(void)
{
    return "Bore distortion and wear, ring twist, differences around the "
           "circumference and between cylinders, knock, boost lag, coolant "
           "past boiling, gas pressure in the bore.";
}
