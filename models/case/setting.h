/* The settings: one row for every number, name or switch of a case.  The
 * config reader, --set, the template, the help and sweeps read this table;
 * nothing else knows a default or a band.
 */
#ifndef CG_SETTING_H
#define CG_SETTING_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"
#include "unit.h"

enum cg_setting_kind {
    CG_REAL,   /* double, with a dimension */
    CG_COUNT,  /* int */
    CG_SWITCH, /* bool */
    CG_CHOICE, /* int, one of `choices` in order */
    CG_NAME,   /* char[CG_NAME_LENGTH]; known names are checked later, and
                  CG_OPTIONAL it is free text, "": not given */
    CG_WORDS   /* char[CG_WORDS_LENGTH]: names, blanks between; checked later */
};

enum cg_default_rule {
    CG_REQUIRED,   /* the file must say it */
    CG_FIXED,      /* `fallback` */
    CG_PER_BORE,   /* `fallback` times engine.bore */
    CG_PER_STROKE, /* `fallback` times engine.stroke */
    CG_PER_SPEED,  /* `fallback` times engine.speed */
    CG_OPTIONAL,   /* NaN: not given */
    CG_PER_FUEL,   /* by the fuel; `fallback` if that is unknown */
    CG_PER_ALLOY   /* by the piston alloy's entry, filled by who reads it;
                      `fallback` times engine.bore where that is silent */
};

struct cg_setting {
    const char *path; /* "engine.bore", without unit */
    enum cg_setting_kind kind;
    enum cg_dimension dimension;
    const char *unit;   /* suffix shown first, "" for none; band and
                           fixed fallback are in this unit */
    enum cg_default_rule rule;
    double fallback;
    const char *text; /* default of a CG_NAME or CG_WORDS, words of a CG_CHOICE
                         separated by spaces */
    double low, high;   /* band allowed, inclusive */
    size_t offset;      /* into struct cg_case */
    const char *doc;    /* one line */
    const char *source; /* where default and band come from */
};

const struct cg_setting *cg_settings(size_t *count);

/* The setting of that path (no unit), or NULL. */
const struct cg_setting *cg_setting_find(const char *path);

/* Index of `word` in a CG_CHOICE's words, or -1; and the word of an index. */
int cg_setting_choice(const struct cg_setting *setting, const char *word);
void cg_setting_word(const struct cg_setting *setting, int choice,
                     char word[CG_NAME_LENGTH]);

/* A default that hangs on combustion.ignition: whether this one does, and its
 * number, in the sense of its rule, or words with that ignition. */
bool cg_setting_by_ignition(const struct cg_setting *setting);
double cg_setting_fallback(const struct cg_setting *setting, int ignition);
const char *cg_setting_fallback_text(const struct cg_setting *setting,
                                     int ignition);

/* Begins one field anew, by the case's ignition, as cg_case_begin does.  Cannot
 * fail. */
void cg_case_default(const struct cg_setting *setting, struct cg_case *c);

/* Makes a case just begun one of compression ignition: its defaults.  Cannot
 * fail. */
void cg_case_ignite(struct cg_case *c);

/* Fills every field of the case: FIXED defaults, NaN for REQUIRED, OPTIONAL
 * and bore- or stroke-dependent reals, 0 for required counts, an empty duty,
 * scales of 1.  Cannot fail. */
void cg_case_begin(struct cg_case *c);

/* Fills the defaults that depend on bore, stroke or speed where the field is
 * still NaN; returns the first REQUIRED setting that is still missing, or
 * NULL. */
const struct cg_setting *cg_case_complete(struct cg_case *c);

/* Fills the skirt clearance that the trade gives the piston's alloy, where it
 * is still NaN; after the materials are known.  Cannot fail. */
void cg_case_choose_skirt(struct cg_case *c);

/* A setting's value as a number, in SI, and storing one; a name has none:
 * NaN, and nothing is stored.  Cannot fail. */
double cg_setting_get(const struct cg_setting *setting,
                      const struct cg_case *c);
void cg_setting_put(const struct cg_setting *setting, struct cg_case *c,
                    double si);

#endif
