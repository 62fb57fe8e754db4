/* Private to duty_*.c: a run's pieces and the points that it comes by, as they
 * are laid out. */
#ifndef CG_DUTY_LAYOUT_H
#define CG_DUTY_LAYOUT_H

#include "duty_run.h"

/* Pieces and unsolved points of the case's duty, into a run that has its
 * network.  Errors: as cg_duty_run_lay_out. */
enum cg_status cg_duty_lay_out(const struct cg_case *c, struct cg_duty_run *run,
                               struct cg_error *error);

/* The same as it is laid out in `like`, a run of a case with this one's engine
 * and duty: the same pieces, places and points, at the same numbers, each run
 * as this case is moved.  Laid out anew, points that are one might come apart
 * by a last bit.  CG_NO_MEMORY. */
enum cg_status cg_duty_lay_out_like(const struct cg_case *c,
                                    const struct cg_duty_run *like,
                                    struct cg_duty_run *run,
                                    struct cg_error *error);

/* Both not given, or equal. */
bool cg_lay_same(double a, double b);

/* One point more, unsolved, of what is asked for; those left by an earlier
 * layout are used again.  CG_NO_MEMORY. */
enum cg_status cg_lay_point(const struct cg_case *c, struct cg_duty_run *run,
                            const double of[CG_CHANNELS],
                            struct cg_error *error);

/* The point that runs so, added if it is new.  CG_NO_MEMORY. */
enum cg_status cg_lay_point_at(const struct cg_case *c, struct cg_duty_run *run,
                               const double of[CG_CHANNELS], size_t *index,
                               struct cg_error *error);

/* One place of a mapped run more, between no points yet.  CG_NO_MEMORY. */
enum cg_status cg_lay_place(const struct cg_case *c, struct cg_duty_run *run,
                            const double of[CG_CHANNELS],
                            struct cg_error *error);

/* One piece more, between two times [s].  CG_NO_MEMORY. */
enum cg_status cg_lay_piece(struct cg_duty_run *run, double from, double to,
                            size_t start, size_t end, struct cg_error *error);

/* Where a mapped run makes what lies between its points.  CG_NO_MEMORY. */
enum cg_status cg_lay_mixed(struct cg_duty_run *run, struct cg_error *error);

/* Into how many pieces what rises by so many of the widest cells is cut. Cannot
 * fail. */
int cg_lay_cuts(double cells);

/* The course of the case's duty, into a run that holds nothing yet: by its own
 * points while these are few, or fewer than the map's, as those are exact, and
 * a short log through many channels comes by more corners than it has rows.
 * CG_NO_MEMORY. */
enum cg_status cg_lay_course(const struct cg_case *c, struct cg_duty_run *run,
                             struct cg_error *error);

#endif
