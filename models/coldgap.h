/* coldgap's physics for programs of your own: the one header to include.
 *
 *     #include <coldgap/coldgap.h>
 *     cc example.c $(pkg-config --cflags --libs coldgap)
 *
 *     struct cg_case c;
 *     cg_case_begin(&c);              every field, at its default
 *     c.engine.bore = 0.0853; ...     SI, kelvin, crank angles in degrees
 *     cg_law_correlate(&c)            uncertainties that are known together
 *     cg_case_ready(&c, &error)       completed and checked
 *     cg_duty_run_create(&c, &run, &error)
 *     cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error)
 *     cg_answer_second(&c, run, &answer, &error)
 *     answer.file_to_top.file_to      over c.duty and those of c.survive
 *     cg_duty_run_free(run)
 *
 * Promised, to keep name and meaning until a new major version (before 1.0: a
 * new minor one); what else the included headers declare may change:
 *
 *   status.h      enum cg_status, struct cg_error, cg_status_text
 *   case.h        struct cg_case and what it holds, but for `scale`
 *   material.h    struct cg_material, struct cg_curve
 *   setting.h     cg_case_begin; by name: cg_settings, cg_setting_find,
 *                 cg_setting_get, cg_setting_put; units: cg_unit_find,
 *                 cg_unit_to_si, cg_unit_from_si
 *   case_ready.h  cg_case_ready
 *   duty_run.h    cg_duty_run_create, cg_duty_run_free
 *   answer.h      struct cg_answer, cg_answer_find, cg_answer_second,
 *                 cg_answer_stands, cg_shop_rule
 *   advice.h      what to file to: struct cg_ring_advice (answer.file_to_top,
 *                 file_to_second), enum cg_fits (verdict.fits)
 *   duty_limits.h where the gap is not the trouble: enum cg_past, struct
 *                 cg_limits (answer.duty[i].limits), cg_limits_first
 *   law.h         cg_law_correlate
 *   ceiling.h     struct cg_ceiling, cg_ceiling_find
 *
 * Structs may gain fields: fill a case by cg_case_begin, never by position,
 * and compile with the headers of the library you link.
 *
 * A failed call says why in its struct cg_error and leaves its results alone.
 * Nothing is printed, no file is read, and there are no globals: cases may run
 * side by side in threads, each with a run of its own.  GSL would end the
 * program on an error: call gsl_set_error_handler_off() once, at its start.
 *
 * Who shows an answer shows its cautions: it is an estimate, not a warranty;
 * where the ring or piston maker gives a larger minimum gap, file to that.
 */
#ifndef CG_COLDGAP_H
#define CG_COLDGAP_H

#include "advice.h"
#include "answer.h"
#include "case.h"
#include "case_ready.h"
#include "ceiling.h"
#include "duty_run.h"
#include "duty_limits.h"
#include "law.h"
#include "setting.h"
#include "status.h"

#endif
