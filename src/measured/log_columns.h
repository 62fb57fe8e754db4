/* The columns of a logged run: what may be logged, how a config names it, and
 * what can be. */
#ifndef CG_LOG_COLUMNS_H
#define CG_LOG_COLUMNS_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"
#include "unit.h"

enum cg_logged {
    CG_LOGGED_TIME,
    CG_LOGGED_SPEED,
    CG_LOGGED_BOOST,    /* gauge */
    CG_LOGGED_MANIFOLD, /* absolute */
    CG_LOGGED_LOAD,
    CG_LOGGED_LAMBDA,
    CG_LOGGED_RATIO, /* air over fuel, by mass */
    CG_LOGGED_BURN50,
    CG_LOGGED_COOLANT,
    CG_LOGGED_OIL,
    CG_LOGGED_AIR,
    CG_LOGGED_NITROUS, /* share of its flow that is on */
    CG_LOGGED_FOUND, /* a temperature beside the run: evidence; no key */
    CG_LOGGED
};

enum { CG_HEADING_LENGTH = 64 };

/* A column as the config names it. */
struct cg_log_column {
    const struct cg_unit *unit;      /* NULL: not asked for */
    char heading[CG_HEADING_LENGTH]; /* the user's own word */
    char key[CG_NAME_LENGTH];        /* "speed_rpm" */
};

/* The quantity that `key` names, with its unit; false: none. */
bool cg_log_key(const char *key, enum cg_logged *quantity,
                const struct cg_unit **unit);

/* Keys a config may write, one for each quantity, in the unit shown first; and
 * of one quantity. */
size_t cg_log_keys(char key[CG_LOGGED][CG_NAME_LENGTH]);

/* What can be of a quantity in this engine, SI, ends included. */
struct cg_log_band {
    double low, high;
};
struct cg_log_band cg_log_band_of(const struct cg_case *c,
                                  enum cg_logged quantity);

/* Over how long a time without a value a straight line may go [s]: rows are
 * missed by a logger, temperatures are asked for now and then. */
double cg_log_gap(enum cg_logged quantity);

#endif
