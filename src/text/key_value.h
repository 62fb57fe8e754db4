/* Figures for programs: the rows of a table of keys and of a report's summary,
 * told once for both. */
#ifndef CG_KEY_VALUE_H
#define CG_KEY_VALUE_H

enum { CG_KEYS_MOST = 48 };

struct cg_key_value {
    const char *key, *unit;
    double value; /* in the unit; NaN: not known */
};

/* Rows up to the first without a key. */
struct cg_key_values {
    struct cg_key_value row[CG_KEYS_MOST];
};

#endif
