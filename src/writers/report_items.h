/* What a report is made of: for report.c and the writers alone. */
#ifndef CG_REPORT_ITEMS_H
#define CG_REPORT_ITEMS_H

#include <stdarg.h>

#include "report.h"

enum cg_item_kind {
    CG_ITEM_SECTION,   /* text */
    CG_ITEM_PART,      /* text */
    CG_ITEM_ANSWER,    /* key, label, quantity */
    CG_ITEM_VERDICT,   /* text, good */
    CG_ITEM_NOTE,      /* text */
    CG_ITEM_SAY,       /* text */
    CG_ITEM_ROW,       /* key, label, quantity, or words in text; remark */
    CG_ITEM_TABLE,     /* key, text (caption), table */
    CG_ITEM_FIGURE,    /* key (script), label (title), text */
    CG_ITEM_DRAWING,   /* key, label (title), text, svg; words of its own */
    CG_ITEM_STEP,      /* text */
    CG_ITEM_BLANK,     /* label */
    CG_ITEM_LINES,     /* text */
    CG_ITEM_FIRST_END, /* nothing */
    CG_ITEM_KEY        /* key, quantity.value, text (unit), remark (word) */
};

struct cg_report_cell {
    double value;
    char *words; /* NULL: the value */
    enum cg_kind kind; /* its own, where the column's is words; else the
                          column's */
};

struct cg_report_table {
    size_t columns;
    struct cg_report_column *column; /* its texts are the report's */
    size_t cells, allocated;
    struct cg_report_cell *cell; /* row by row */
    enum cg_report_mark *mark;   /* of each row; as many as `allocated` */
};

struct cg_report_item {
    enum cg_item_kind kind;
    bool good;
    char *key, *label, *text, *remark, *svg, *words; /* NULL where there is
                                                      none */
    struct cg_quantity quantity;
    struct cg_report_table *table;
};

struct cg_report {
    char *title, *run;
    bool inch, no_memory;
    size_t items, allocated;
    struct cg_report_item *item;
};

/* Adds an item, which becomes the report's, texts and all. */
void cg_report_take(struct cg_report *report, struct cg_report_item item);

/* Texts of a report: NULL once memory is out, which the report then knows. */
char *cg_report_copy(struct cg_report *report, const char *text);
char *cg_report_text(struct cg_report *report, const char *format,
                     va_list args);

/* Accepts NULL. */
void cg_report_table_free(struct cg_report_table *table);

#endif
