/* The words of the trade and of coldgap, and what --json prints: for the manual
 * page. */
#include <stdio.h>

#include "pages.h"
#include "roff.h"

static const struct {
    const char *word, *meaning;
} words[] = {
    {"cold gap", "the end gap of a ring in its bore, both at "
                 "margin.gapping_temperature"},
    {"hot gap", "what is left of it at an instant of the duty"},
    {"closure", "cold gap less hot gap: what the ring grows more than the bore"},
    {"duty", "what the engine is driven through: a pull, a lap, a tow"},
    {"uncertainty allowance",
     "what is added for what is not known, for the risk in margin.risk"},
    {"minimum hot gap", "the hot gap that must remain, margin.residual"},
    {"gap needed", "the model's smallest safe cold gap: closure, uncertainty "
                   "allowance and minimum hot gap, rounded up to a filing step"},
    {"shop rule", "the trade's gap for a bore and a boost, a thumb rule: common "
                  "practice, no source"},
    {"file to", "the gap to file to: the larger of gap needed and shop rule"},
    {"evidence", "what was measured on the engine, and what the model learns "
                 "from it"},
    {"notebook", "a shop's list of builds and what was found in them, which "
                 "evidence_from in a config names"},
    {"seated", "a top ring on the lower flank of its groove, where it seals"},
    {"TDC firing", "the top dead centre at which the charge burns"},
};

void cg_page_words(void)
{
    cg_roff_section("WORDS");
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        cg_roff_tag(words[i].word, NULL);
        cg_roff_text(words[i].meaning);
        printf(".\n");
    }
}

void cg_page_json(void)
{
    cg_roff_section("JSON");
    cg_roff_text("--json prints one object in place of the text:\n");
    cg_roff_lines(
        "{\"program\": \"coldgap\", \"version\": ..., \"run\": ..., "
        "\"title\": ...,\n"
        " \"cautions\": [...],\n"
        " \"summary\": {KEY: {\"value\": ..., \"unit\": ...}, ...},\n"
        " \"first\": [ITEM, ...], \"rest\": [ITEM, ...]}\n");
    cg_roff_text(
        "first is the part that --brief shows. The summary has the keys and "
        "units of summary.dat. An item says in \"is\" what it is: answer, "
        "verdict, note, say, section, part, row, table, figure, step, blank or "
        "lines. A quantity has \"value\" and \"unit\" in SI, and \"metric\" and "
        "\"inch\" as they are shown, a gap to file to rounded up. A table has "
        "\"columns\" (key, head, unit in SI) and \"rows\". A value that is not "
        "known is null. New members may come; those named here stay.\n");
}
