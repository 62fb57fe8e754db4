#include "find_notes.h"

#include <stdio.h>
#include <string.h>

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
