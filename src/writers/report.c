#define _POSIX_C_SOURCE 200809L /* strdup */
#include "report.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report_items.h"

char *cg_report_copy(struct cg_report *report, const char *text)
{
    char *copy = text != NULL ? strdup(text) : NULL;
    report->no_memory = report->no_memory || (text != NULL && copy == NULL);
    return copy;
}

char *cg_report_text(struct cg_report *report, const char *format, va_list args)
{
    va_list again;
    va_copy(again, args);
    int length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    char *text = length >= 0 ? malloc((size_t)length + 1) : NULL;
    if (text == NULL)
        report->no_memory = true;
    else
        vsnprintf(text, (size_t)length + 1, format, args);
    return text;
}

enum cg_status cg_report_create(const char *title, const char *run, bool inch,
                                struct cg_report **report,
                                struct cg_error *error)
{
    struct cg_report *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->inch = inch;
    made->title = cg_report_copy(made, title);
    made->run = cg_report_copy(made, run);
    enum cg_status status = cg_report_status(made, error);
    if (status != CG_OK) {
        cg_report_free(made);
        return status;
    }
    *report = made;
    return CG_OK;
}

static void item_free(struct cg_report_item *item)
{
    free(item->key);
    free(item->label);
    free(item->text);
    free(item->remark);
    free(item->svg);
    free(item->words);
    cg_report_table_free(item->table);
}

void cg_report_free(struct cg_report *report)
{
    if (report == NULL)
        return;
    for (size_t i = 0; i < report->items; i++)
        item_free(&report->item[i]);
    free(report->item);
    free(report->title);
    free(report->run);
    free(report);
}

bool cg_report_inch(const struct cg_report *report)
{
    return report->inch;
}

enum cg_status cg_report_status(const struct cg_report *report,
                                struct cg_error *error)
{
    return report->no_memory
               ? cg_error_set(error, CG_NO_MEMORY, "out of memory")
               : CG_OK;
}

/* Grows an array to hold one entry more; false when memory is out. */
static bool grow_by_one(struct cg_report *report, void **array, size_t count,
                        size_t *allocated, size_t size)
{
    if (count < *allocated)
        return true;
    size_t wanted = *allocated > 0 ? 2 * *allocated : 64;
    void *grown = realloc(*array, wanted * size);
    if (grown == NULL) {
        report->no_memory = true;
        return false;
    }
    *array = grown;
    *allocated = wanted;
    return true;
}

/* Takes the item, texts and all. */
void cg_report_take(struct cg_report *report, struct cg_report_item item)
{
    void *array = report->item;
    if (grow_by_one(report, &array, report->items, &report->allocated,
                    sizeof item)) {
        report->item = array;
        report->item[report->items++] = item;
    } else {
        item_free(&item);
    }
}

#define FORMATTED(text, report, format)                                        \
    va_list args;                                                              \
    va_start(args, format);                                                    \
    char *(text) = cg_report_text(report, format, args);                       \
    va_end(args)

void cg_report_first_part_ends(struct cg_report *report)
{
    cg_report_take(report, (struct cg_report_item){.kind = CG_ITEM_FIRST_END});
}

void cg_report_section(struct cg_report *report, const char *title)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_SECTION,
                                        .text = cg_report_copy(report, title)});
}

void cg_report_part(struct cg_report *report, const char *title)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_PART,
                                        .text = cg_report_copy(report, title)});
}

static void add_row(struct cg_report *report, enum cg_item_kind kind,
                    const char *key, const char *label,
                    struct cg_quantity quantity, char *words)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = kind,
                                        .key = cg_report_copy(report, key),
                                        .label = cg_report_copy(report, label),
                                        .quantity = quantity,
                                        .text = words});
}

void cg_report_answer(struct cg_report *report, const char *key,
                      const char *name, struct cg_quantity quantity)
{
    add_row(report, CG_ITEM_ANSWER, key, name, quantity, NULL);
}

void cg_report_row(struct cg_report *report, const char *key, const char *label,
                   struct cg_quantity quantity)
{
    add_row(report, CG_ITEM_ROW, key, label, quantity, NULL);
}

void cg_report_words(struct cg_report *report, const char *key,
                     const char *label, const char *format, ...)
{
    FORMATTED(words, report, format);
    add_row(report, CG_ITEM_ROW, key, label, cg_quantity(CG_SHOW_WORDS, 0.0),
            words);
}

void cg_report_remark(struct cg_report *report, const char *format, ...)
{
    FORMATTED(text, report, format);
    struct cg_report_item *last =
        report->items > 0 ? &report->item[report->items - 1] : NULL;
    if (last != NULL && last->remark == NULL)
        last->remark = text;
    else
        free(text);
}

void cg_report_verdict(struct cg_report *report, bool good, const char *format,
                       ...)
{
    FORMATTED(text, report, format);
    cg_report_take(report, (struct cg_report_item){.kind = CG_ITEM_VERDICT,
                                                   .good = good,
                                                   .text = text});
}

/* The kinds that are a text and no more. */
#define TEXT_ITEM(name, item_kind)                                             \
    void name(struct cg_report *report, const char *format, ...)               \
    {                                                                          \
        FORMATTED(text, report, format);                                       \
        cg_report_take(report, (struct cg_report_item){.kind = (item_kind),    \
                                                       .text = text});         \
    }

TEXT_ITEM(cg_report_note, CG_ITEM_NOTE)
TEXT_ITEM(cg_report_say, CG_ITEM_SAY)
TEXT_ITEM(cg_report_step, CG_ITEM_STEP)

void cg_report_figure(struct cg_report *report, const char *script,
                      const char *title, const char *format, ...)
{
    FORMATTED(text, report, format);
    add_row(report, CG_ITEM_FIGURE, script, title,
            cg_quantity(CG_SHOW_WORDS, 0.0), text);
}

void cg_report_drawing(struct cg_report *report, const char *key,
                       const char *svg, const char *title, const char *words)
{
    cg_report_drawn(report, key, svg, title, words, NULL);
}

void cg_report_drawn(struct cg_report *report, const char *key, const char *svg,
                     const char *title, const char *figure, const char *words)
{
    report->no_memory = report->no_memory || svg == NULL;
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_DRAWING,
                                        .key = cg_report_copy(report, key),
                                        .label = cg_report_copy(report, title),
                                        .text = cg_report_copy(report, figure),
                                        .words = cg_report_copy(report, words),
                                        .svg = cg_report_copy(report, svg)});
}

void cg_report_blank(struct cg_report *report, const char *name)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_BLANK,
                                        .label = cg_report_copy(report, name)});
}

void cg_report_lines(struct cg_report *report, const char *text)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_LINES,
                                        .text = cg_report_copy(report, text)});
}

void cg_report_key(struct cg_report *report, const char *key, double value,
                   const char *unit)
{
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_KEY,
                                        .key = cg_report_copy(report, key),
                                        .quantity.value = value,
                                        .text = cg_report_copy(report, unit)});
}

void cg_report_keys(struct cg_report *report, const struct cg_key_values *keys)
{
    for (size_t i = 0; i < CG_KEYS_MOST && keys->row[i].key != NULL; i++)
        cg_report_key(report, keys->row[i].key, keys->row[i].value,
                      keys->row[i].unit);
}

void cg_report_key_word(struct cg_report *report, const char *key,
                        const char *word)
{
    cg_report_take(report, (struct cg_report_item){
                               .kind = CG_ITEM_KEY,
                               .key = cg_report_copy(report, key),
                               .remark = cg_report_copy(report, word)});
}
