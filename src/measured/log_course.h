/* A logged run as a duty: gaps filled, idle ends trimmed, what was measured
 * made into what the model runs by, and thinned (course.h). */
#ifndef CG_LOG_COURSE_H
#define CG_LOG_COURSE_H

#include "course.h"
#include "log_columns.h"
#include "problems.h"
#include "status.h"

/* Idling: below this share of the rated speed and this load; what is kept of it
 * before and after the run [s] (common practice, no source: a bore cools before
 * the ring does, and the tightest instant may come after the run). */
#define CG_LOG_IDLE_SPEED 0.25
#define CG_LOG_IDLE_LOAD 0.25
#define CG_LOG_IDLE_BEFORE 1.0
#define CG_LOG_IDLE_AFTER 10.0

/* The settings that lambda and burn say the same as, and whose bands they are
 * held to. */
#define CG_LOG_AS_LAMBDA "fuel.lambda"
#define CG_LOG_AS_BURN50 "combustion.burn50"

/* Slower, the engine stands [rev/s]. */
#define CG_LOG_STANDS (50.0 / 60.0)

/* What is read by a probe lags: the engine is taken as it ran in so many
 * seconds before, at this share and more of the highest load in them (common
 * practice, no source). */
#define CG_LOG_PROBE_LAG 3.0
#define CG_LOG_PROBE_LOAD 0.9

/* Reads `path` by the columns asked for, time, speed and one of boost, manifold
 * and load among them, for the case's engine: rated speed, boost, ambient and
 * fuel must be set.  Load is what the manifold pressure is between a closed
 * throttle and the boost target; mixture by the fuel's own ratio; lambda and
 * burn are held to what the model runs.  Of a column for evidence the highest
 * of the time taken is noted, nothing filled.  The list owns the course.
 * Trouble is told with file, line and heading, and *course is then NULL; *note,
 * unless NULL, is the same as the course's.  CG_NO_MEMORY, CG_FILE,
 * CG_BAD_INPUT as cg_log_rows_read. */
enum cg_status cg_log_read(const char *path, const struct cg_case *c,
                           const struct cg_log_column column[CG_LOGGED],
                           struct cg_course **list, struct cg_course **course,
                           struct cg_problems *problems,
                           struct cg_error *error);

#endif
