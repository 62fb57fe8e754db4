/* The lesson's arithmetic, worked out by hand (by_hand.h) from the model's
 * numbers: all lines of all steps.  What is printed of them is for the report.
 * A figure that one line gives another takes as printed.
 */
#ifndef CG_LESSON_SHEET_H
#define CG_LESSON_SHEET_H

#include "by_hand.h"
#include "lesson.h"
#include "lesson_units.h"

/* Pressure and mass of the charge. */
struct cg_lesson_charge {
    struct cg_hand manifold, times, area, swept, absolute, air;
    struct cg_figure gas_constant;
};

/* Heat of the fuel, and what of it goes through the crown. */
struct cg_lesson_burn {
    struct cg_hand need, fuel, energy, crown, cycles, flux, flux_times;
    struct cg_figure model_flux;
};

/* Groove to ring to bore: resistances in series, always in mm, W and K. */
struct cg_lesson_ladder {
    struct cg_hand middle, flank_area, face_area;
    struct cg_hand flank, inside, film, total; /* resistances */
    struct cg_hand fall, step, ring;           /* in degrees */
    struct cg_figure crown, groove, model_ring, bore;
};

/* Two layers as thin rings that pull on each other. */
struct cg_lesson_layer_hand {
    struct cg_hand rise, free, stiffness, pull;
};
struct cg_lesson_layers {
    struct cg_lesson_layer_hand liner, block;
    struct cg_hand stiffness, pull, joined; /* of both */
    struct cg_figure model;
};

/* Growth of ring and bore at one boost. */
struct cg_lesson_growing {
    struct cg_hand ring_rise, ring, bore_rise, bore, closure;
    struct cg_figure choke; /* its size */
    double chokes; /* of the gap [m]; below 0: gives it; 0: a straight bore */
};

/* The duty's start, and its tightest instant. */
struct cg_lesson_over_time {
    struct cg_lesson_growing start, tightest;
    struct cg_hand left; /* of the gap at the start */
};

/* What is not known, and what it adds to the gap.  Inputs by their share of the
 * variance, largest first. */
enum { CG_LESSON_INPUTS = 5 };
struct cg_lesson_unknown {
    bool known; /* nothing is uncertain: no sums, no inputs */
    size_t inputs;
    const struct cg_contribution *input[CG_LESSON_INPUTS];
    double others;                   /* share of the rest [1] */
    struct cg_hand part, deviations; /* of the gap needed; of sigma */
    bool one_leads; /* the largest leaves some for the rest: the next stand */
    struct cg_hand rest, root, then; /* as if the largest were known */
};

/* How late knock makes the burn. */
struct cg_lesson_knock {
    struct cg_hand retard; /* [deg] */
};

/* Ends that touch. */
struct cg_lesson_ends {
    bool supposed; /* the closure is too small to halve: overlap is supposed */
    struct cg_hand overlap, stress, pressure, times;
};

/* What a gap leaks that is wider than it need be. */
struct cg_lesson_leak {
    bool closed; /* the top land has no clearance left */
    struct cg_hand area, product, speed, volume, mass, second, share, power;
    struct cg_figure pressure, temperature;
};

/* The gap's sum, and how far the hand is from the model. */
struct cg_lesson_sum {
    struct cg_hand left, more, per_boost, gap, off, half_degree;
    struct cg_figure cold_gap; /* given in the config, or to file to */
};

struct cg_lesson_sheet {
    const struct cg_case *c;
    const struct cg_lesson *lesson;
    bool inch;
    struct cg_hand arc;
    struct cg_lesson_charge charge;
    struct cg_lesson_burn burn;
    struct cg_lesson_ladder ladder;
    struct cg_lesson_layers layers;
    struct cg_lesson_growing boost[CG_LESSON_BOOSTS];
    struct cg_lesson_over_time over_time;
    struct cg_lesson_unknown unknown;
    struct cg_lesson_knock knock;
    struct cg_lesson_ends ends;
    struct cg_lesson_leak leak;
    struct cg_lesson_sum sum;
};

/* The growth at the config's own boost. */
const struct cg_lesson_growing *
cg_lesson_own(const struct cg_lesson_sheet *sheet);

/* The gap to file to [m], or the one needed where none in range will do. */
double cg_lesson_file_to(const struct cg_lesson_sheet *sheet);

/* The instant of the lesson where the gap is tightest. */
const struct cg_lesson_instant *
cg_lesson_tightest(const struct cg_lesson *lesson);

/* Works everything out.  The case and lesson must outlive the sheet, about
 * 40 kB.  Cannot fail. */
void cg_lesson_sheet_set(const struct cg_case *c,
                         const struct cg_lesson *lesson, bool inch,
                         struct cg_lesson_sheet *sheet);

#endif
