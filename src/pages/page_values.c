#include "page_values.h"

#include <stdarg.h>
#include <stdio.h>

#include "constants.h"
#include "html_text.h"
#include "page_parts.h"
#include "show.h"


void cg_page_values(struct cg_page *page, const char *caption)
{
    const char *const heads[2][3] = {{"Quantity", "metric", "inch"},
                                     {"Quantity", "inch", "metric"}};
    cg_page_table(page, caption, heads[page->inch], 3);
}

void cg_page_both(struct cg_page *page, const char *name, const char *metric,
                  const char *inch)
{
    const char *const cells[3] = {name, page->inch ? inch : metric,
                                  page->inch ? metric : inch};
    cg_page_row(page, cells, 3, NULL);
}

void cg_page_length(struct cg_page *page, const char *name, double metres)
{
    cg_page_both(page, name, cg_show_length(metres, false).text,
                 cg_show_length(metres, true).text);
}

void cg_page_gap_up(struct cg_page *page, const char *name, double metres)
{
    cg_page_both(page, name, cg_show_length_up(metres, false).text,
                 cg_show_length_up(metres, true).text);
}

void cg_page_temperature(struct cg_page *page, const char *name, double kelvin)
{
    char metric[32], inch[32];
    snprintf(metric, sizeof metric, "%.0f \302\260C", kelvin - 273.15);
    snprintf(inch, sizeof inch, "%.0f \302\260F",
             (kelvin - 273.15) * 1.8 + 32.0);
    cg_page_both(page, name, metric, inch);
}

void cg_page_pressure(struct cg_page *page, const char *name, double pascal)
{
    cg_page_both(page, name, cg_show_pressure(pascal, false).text,
                 cg_show_pressure(pascal, true).text);
}

void cg_page_power(struct cg_page *page, const char *name, double watt)
{
    cg_page_both(page, name, cg_show_power(watt, false).text,
                 cg_show_power(watt, true).text);
}

void cg_page_flow(struct cg_page *page, const char *name, double kg_per_second)
{
    cg_page_both(page, name, cg_show_flow(kg_per_second, false).text,
                 cg_show_flow(kg_per_second, true).text);
}

void cg_page_small_power(struct cg_page *page, const char *name, double watt)
{
    char metric[32], inch[32];
    snprintf(metric, sizeof metric, "%.3g kW", watt / 1e3);
    snprintf(inch, sizeof inch, "%.3g hp", watt / CG_HORSEPOWER);
    cg_page_both(page, name, metric, inch);
}

void cg_page_leak(struct cg_page *page, const char *name, double kg_per_second)
{
    cg_page_both(page, name, cg_show_leak(kg_per_second, false).text,
                 cg_show_leak(kg_per_second, true).text);
}

void cg_page_plain(struct cg_page *page, const char *name, const char *format,
                   ...)
{
    char text[CG_PAGE_TEXT];
    va_list args;
    va_start(args, format);
    vsnprintf(text, sizeof text, format, args);
    va_end(args);
    fputs("<tr><th scope=\"row\">", page->file);
    cg_html_put(page->file, name);
    fputs("</th><td colspan=\"2\" class=\"plain\">", page->file);
    cg_html_put(page->file, text);
    fputs("</td></tr>\n", page->file);
}

void cg_page_values_end(struct cg_page *page)
{
    cg_page_table_end(page);
}
