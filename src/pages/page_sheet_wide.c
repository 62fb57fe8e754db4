#include <math.h>
#include <stdio.h>

#include "page_sheet.h"
#include "show.h"

static void price_row(struct cg_page *page, const struct cg_sheet *sheet,
                      int cylinder, int ring, bool inch)
{
    const struct cg_fit *fit = &sheet->fitting.cylinder[cylinder].ring[ring];
    const struct cg_gap_price *price = &sheet->prices.ring[cylinder][ring];
    char name[48], volume[48] = "-";
    snprintf(name, sizeof name, "%d\302\240%s", cylinder + 1,
             cg_fit_ring_word(ring));
    struct cg_text wider = cg_show_length(fit->gap - fit->asked, inch);
    struct cg_text blow_by = {"not known"};
    if (!isnan(price->blow_by)) {
        blow_by = cg_show_leak(price->blow_by, inch);
        snprintf(volume, sizeof volume, "%.3g %s",
                 cg_show_draught(price->volume, inch),
                 cg_show_draught_unit(inch));
    }
    const char *const cells[] = {name, wider.text, blow_by.text, volume};
    cg_page_row(page, cells, 4, NULL);
}

static void price_table(struct cg_page *page, const struct cg_sheet *sheet,
                        bool inch)
{
    static const char *const heads[] = {"Cylinder, ring", "Wider by", "Blow-by",
                                        "Its volume"};
    cg_page_table(page,
                  inch ? "What it costs in its cylinder, inch"
                       : "What it costs in its cylinder, metric",
                  heads, 4);
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++)
            if (sheet->fitting.cylinder[i].ring[ring].state == CG_FIT_TOO_WIDE)
                price_row(page, sheet, i, ring, inch);
    cg_page_table_end(page);
}

void cg_page_too_wide(struct cg_page *page, const struct cg_sheet *sheet)
{
    double asked = sheet->prices.asked;
    if (sheet->fitting.count[CG_FIT_TOO_WIDE] == 0)
        return;
    cg_page_section(page, "Too wide");
    cg_page_say(page, "Only another ring helps.");
    price_table(page, sheet, cg_page_inch(page));
    price_table(page, sheet, !cg_page_inch(page));
    if (isnan(asked))
        cg_page_say(page, "With the gaps asked for the rings do not settle to "
                          "a motion that repeats: there is no price.");
    else
        cg_page_say(page,
                    "More than with the gaps asked for, at rated speed and "
                    "full load; with those %s (%s) pass in one cylinder "
                    "(seal's model). Where the price is not known the rings do "
                    "not settle.",
                    cg_show_leak(asked, false).text,
                    cg_show_leak(asked, true).text);
}
