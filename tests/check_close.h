/* The one comparison the suites use: Check has no relative tolerance, and a
 * published value should be printed with its source when it is missed.  Each
 * one also leaves a row for the dossier. */
#ifndef CG_CHECK_CLOSE_H
#define CG_CHECK_CLOSE_H

#include <check.h>
#include <math.h>
#include <stdlib.h>

#include "dossier.h"

/* |got - want| <= relative |want|; NaN fails. */
#define check_close(got, want, relative, source)                             \
    do {                                                                     \
        double got_ = (got), want_ = (want);                                 \
        dossier_row(__FILE__, __func__, "value", #got, source, want_, got_,  \
                    (relative) * fabs(want_));                               \
        ck_assert_msg(fabs(got_ - want_) <= (relative) * fabs(want_),        \
                      "%s = %.9g, expected %.9g within %g relative (%s)",    \
                      #got, got_, want_, (double)(relative), source);        \
    } while (0)

/* |got - want| <= absolute; NaN fails. */
#define check_within(got, want, absolute, source)                            \
    do {                                                                     \
        double got_ = (got), want_ = (want);                                 \
        dossier_row(__FILE__, __func__, "value", #got, source, want_, got_,  \
                    (absolute));                                             \
        ck_assert_msg(fabs(got_ - want_) <= (absolute),                      \
                      "%s = %.9g, expected %.9g within %g (%s)", #got, got_, \
                      want_, (double)(absolute), source);                    \
    } while (0)

/* low <= got <= high; NaN fails. */
#define check_band(got, low, high, source)                                   \
    do {                                                                     \
        double got_ = (got);                                                 \
        dossier_row(__FILE__, __func__, "band", #got, source,                \
                    0.5 * ((low) + (high)), got_, 0.5 * ((high) - (low)));   \
        ck_assert_msg(got_ >= (low) && got_ <= (high),                       \
                      "%s = %.9g, expected %g to %g (%s)", #got, got_,       \
                      (double)(low), (double)(high), source);                \
    } while (0)

/* got <= most, or got >= least: a limit of one side; NaN fails. */
#define check_limit_(got, form, sign, limit, source)                          \
    do {                                                                     \
        double got_ = (got), limit_ = (limit);                               \
        dossier_row(__FILE__, __func__, form, #got, source, limit_, got_,    \
                    0.0);                                                    \
        ck_assert_msg(got_ sign limit_, "%s = %.9g, at " form " %g (%s)",    \
                      #got, got_, limit_, source);                           \
    } while (0)
#define check_most(got, limit, source)                                       \
    check_limit_(got, "most", <=, limit, source)
#define check_least(got, limit, source)                                      \
    check_limit_(got, "least", >=, limit, source)

/* Runs a suite and turns the outcome into main's exit status. */
static inline int check_run(Suite *suite)
{
    dossier_begin();
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    dossier_end(failed);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

#endif
