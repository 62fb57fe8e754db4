/* A duty as a course: rows in time, and all that is said of the engine's run in
 * each, straight between them.  What was logged is one, and so is a list of
 * more segments than a case holds itself.
 *
 * A case is copied by value and a course is not: duties point to courses, which
 * belong to who made them (cg_courses_free) and outlive every copy.
 */
#ifndef CG_COURSE_H
#define CG_COURSE_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

struct cg_segment;

/* What a row says, SI; NaN throughout a course: as the case says. */
enum cg_course_channel {
    CG_CHANNEL_SPEED,   /* [rev/s] */
    CG_CHANNEL_LOAD,    /* 0 closed throttle .. 1 boost target, and above */
    CG_CHANNEL_HEAT,    /* extra gas heat, knock in it [1] */
    CG_CHANNEL_COOLANT, /* [K] */
    CG_CHANNEL_LAMBDA,  /* [1] */
    CG_CHANNEL_BURN50,  /* half burned, as it was, after TDC [deg] */
    CG_CHANNEL_OIL,     /* [K] */
    CG_CHANNEL_AIR,     /* in the manifold, behind the cooler [K] */
    CG_CHANNEL_SOAK,    /* heat in the cooler's core, 1: as of full boost */
    CG_CHANNEL_WIND,    /* cooling air over cooling.air_speed [1] */
    CG_CHANNEL_NITROUS, /* share of its flow that is on [1] */
    CG_CHANNELS
};

struct cg_course_row {
    double time; /* from the duty's start [s], never back; two rows of one time
                    are a jump */
    double of[CG_CHANNELS];
};

/* A row may say this much load, and oil and air this hot [K]: above what gauges
 * overshoot and oils last (common practice, no source). */
#define CG_COURSE_MOST_LOAD 1.5
#define CG_COURSE_HOTTEST 473.15

/* The highest of a column that was asked for beside the channels, in the time
 * taken: its value (SI; 0: none was asked for), the log's own time [s], and how
 * the engine ran then, by channel. */
struct cg_log_highest {
    double value, time;
    double of[CG_CHANNELS];
};

/* What a reader of logs took and left. */
struct cg_log_note {
    char file[64];              /* name; "": no log */
    size_t lines;               /* rows read */
    size_t repeated;            /* of them, of a time that had one: left out */
    size_t taken;               /* of them, in the run */
    size_t filled[CG_CHANNELS]; /* of those, without a value of their own: on a
                                   straight line */
    size_t held;        /* values held at the end of what the model knows */
    double begin;       /* the log's own time at the duty's start [s] */
    double first, last; /* the log's own span [s] */
    double idle_begin, idle_end; /* trimmed [s] */
    double interval;             /* between rows, mean [s] */
    double most_load;            /* [1] */
    struct cg_log_highest highest;
};

/* How finely a course is run: its band over the usual one, the cells of its map
 * over the widest [1]; how often these were narrowed, and what the closure moved
 * by before that (0, 0: never) [m]. */
struct cg_course_fine {
    double band, cells;
    int times;
    double before;
};

/* What running a course leaves out of the closure [m], once it was worked out
 * (course_error.h). */
struct cg_course_left {
    bool known;
    double thinned, between;
};

struct cg_course {
    size_t rows;
    struct cg_course_row *row;
    size_t all_rows; /* before thinning; 0: it was not thinned */
    struct cg_course_row *all;
    struct cg_course_fine fine;
    double knock_heat; /* the most declared; 0: none [1] */
    double watch;      /* extremes are looked for from here on [s] */
    struct cg_log_note log;
    struct cg_course *next; /* of the list it belongs to */
};

/* A course of up to `rows` rows, none in it yet, run as finely as usual, at the
 * head of the list; the list owns it.  CG_NO_MEMORY. */
enum cg_status cg_course_create(struct cg_course **list, size_t rows,
                                struct cg_course **course,
                                struct cg_error *error);

/* The engine held for a second as the channels say.  The list owns the course.
 * CG_NO_MEMORY. */
enum cg_status cg_course_hold(const double of[CG_CHANNELS],
                              struct cg_course **list,
                              struct cg_course **course,
                              struct cg_error *error);

/* Frees a list.  Accepts NULL. */
void cg_courses_free(struct cg_course *list);

/* The course of a list of segments, none with a coolant of its own or all:
 * `coolant` [K] is that of those that leave it open.  Rows of one time where
 * one segment does not begin as the one before ended.  CG_NO_MEMORY. */
enum cg_status cg_course_of_segments(const struct cg_segment *segment,
                                     size_t segments, double coolant,
                                     struct cg_course **list,
                                     struct cg_course **course,
                                     struct cg_error *error);

/* How far a thinned course may be from the whole one: at any time, and what
 * that adds up to over time, by channel; speed over the rated one [1]. */
struct cg_thin_band {
    double off[CG_CHANNELS];
    double sum[CG_CHANNELS]; /* [s] times the unit of the channel */
};
extern const struct cg_thin_band cg_thin_usual;

/* Leaves out rows that straight lines between the others stand for, within the
 * band; the whole is kept in `all`.  From a row the line goes to the last one
 * whose line stays inside the band throughout and which brings the sum of all
 * that was left out so far within its own: what is left out averages to
 * nothing, and bodies that are slow against it do not see it.  Linear in the
 * rows but for the search ahead, which is short.  CG_NO_MEMORY. */
enum cg_status cg_course_thin(double rated_speed,
                              const struct cg_thin_band *band,
                              struct cg_course *course, struct cg_error *error);

/* A copy of the course in far fewer rows, bands ten times as wide: for what is
 * known to some kelvins.  The list owns it.  CG_NO_MEMORY. */
enum cg_status cg_course_rough(const struct cg_course *course,
                               double rated_speed, struct cg_course **list,
                               struct cg_course **rough,
                               struct cg_error *error);

/* A copy of the whole course that is run as finely as `fine` says.  The list
 * owns it.  CG_NO_MEMORY. */
enum cg_status cg_course_finer(const struct cg_course *course,
                               double rated_speed,
                               const struct cg_course_fine *fine,
                               struct cg_course **list,
                               struct cg_course **finer,
                               struct cg_error *error);

/* Whether two run alike; both NULL are.  Cannot fail. */
bool cg_course_same(const struct cg_course *a, const struct cg_course *b);

/* The course as an instant [s] of it sees it: full of detail just before, and
 * the longer ago the longer the means it is made of, 0.12 of the time that
 * has passed since; soon after it ends.  What cools and warms through one body
 * after another remembers no more.  It starts as the whole does, and is watched
 * from shortly before the instant on.  Among means a jump becomes a steep line.
 * The list owns it.  CG_NO_MEMORY. */
enum cg_seen_by {
    CG_SEEN_MEANS, /* throughout */
    CG_SEEN_ROWS,  /* the rows themselves in the last seconds */
    CG_SEEN_ALL    /* the same of the course before thinning */
};
enum cg_status cg_course_seen(const struct cg_course *course, double time,
                              enum cg_seen_by by, struct cg_course **list,
                              struct cg_course **seen, struct cg_error *error);

/* The values at a time [s], straight between the rows; before and after the
 * course its ends'.  Cannot fail. */
void cg_course_at(const struct cg_course *course, double time,
                  double of[CG_CHANNELS]);

#endif
