/* What calibrate prints and writes. */
#ifndef CG_CALIBRATION_REPORT_H
#define CG_CALIBRATION_REPORT_H

#include <stdio.h>

#include "mix.h"

struct calibration {
    struct facts facts;
    size_t laws;
    struct learned learned[LAWS];
    double weight[LAWS]; /* the first law is the one that answers go by */
};

/* Tables for tests/README.md. */
void report_markdown(const struct calibration *all, FILE *out);

/* Which facts held back see a constant that is made wrong, by the first law.
 * A fact is missed outside its source's own band; a one-sided one where it is
 * less likely than not. */
void report_power(const struct calibration *all, FILE *out);

/* Each fact, a line, for tests/calibration/calibration.gp. */
void report_data(const struct calibration *all, FILE *out);

/* models/case/calibrated.h. */
void report_header(const struct calibration *all, FILE *out);

#endif
