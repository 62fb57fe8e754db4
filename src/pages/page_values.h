/* Tables of single values on a page, a row each, in both systems of units. */
#ifndef CG_PAGE_VALUES_H
#define CG_PAGE_VALUES_H

#include "page.h"

void cg_page_values(struct cg_page *page, const char *caption);

/* Gaps and other lengths, temperatures and what the trade measures else; SI and
 * kelvin. */
void cg_page_length(struct cg_page *page, const char *name, double metres);
/* A gap that must not come out smaller (cg_show_gap_up). */
void cg_page_gap_up(struct cg_page *page, const char *name, double metres);
void cg_page_temperature(struct cg_page *page, const char *name,
                         double kelvin);
void cg_page_pressure(struct cg_page *page, const char *name, double pascal);
void cg_page_power(struct cg_page *page, const char *name, double watt);
void cg_page_flow(struct cg_page *page, const char *name,
                  double kg_per_second);

/* Power and flow too small for whole numbers: g/s and lb/h. */
void cg_page_small_power(struct cg_page *page, const char *name, double watt);
void cg_page_leak(struct cg_page *page, const char *name,
                  double kg_per_second);

/* The same value in words of your own, and one that has no other unit. */
void cg_page_both(struct cg_page *page, const char *name, const char *metric,
                  const char *inch);
void cg_page_plain(struct cg_page *page, const char *name, const char *format,
                   ...) CG_FORMAT(3, 4);

void cg_page_values_end(struct cg_page *page);

#endif
