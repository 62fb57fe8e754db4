#include "ladder_score.h"

#include <math.h>

#include "ceiling.h"
#include "operating.h"

/* A part that is advice alone always stands. */
#define STANDS (-1.0)
#define CLOSE 1e-9 /* of a gap: advice.h */

static void set(struct cg_look *look, enum cg_ladder_part part, double fits,
                double stands, int why)
{
    look->score[part][0] = fits;
    look->score[part][1] = stands;
    look->why[part] = why;
}

/* The higher; NaN stays one, for the look to see. */
static double higher(double a, double b)
{
    return isnan(a) || a > b ? a : b;
}

/* Keeps the higher, and whose it is. */
static void raise(struct cg_look *look, enum cg_ladder_part part, double fits,
                  double stands, int why)
{
    double *score = look->score[part];
    if (fits > score[0])
        look->why[part] = why;
    score[0] = higher(score[0], fits);
    score[1] = higher(score[1], stands);
}

void cg_score_charge(const struct cg_case *c, struct cg_look *look)
{
    struct cg_operating full = cg_operating_full(c);
    struct cg_charge_state charge;
    const struct cg_finish_verdict *finish = &look->finish;
    cg_operating_charge(c, &full, &charge);
    set(look, CG_LADDER_CHARGE,
        charge.manifold_temperature / CG_CHARGE_WARM - 1.0, STANDS, 0);
    double lacks = finish->oil_needed / finish->oil_held - 1.0;
    if (!finish->plateau)
        lacks = fmax(lacks, 1.0); /* at any boost */
    set(look, CG_LADDER_FINISH, lacks, lacks, 0);
}

void cg_score_heat_begin(struct cg_look *look)
{
    for (int k = 0; k < CG_RING_LIMITS; k++)
        look->load[k] = 0.0;
    set(look, CG_LADDER_PISTON, -INFINITY, -INFINITY, 0);
    set(look, CG_LADDER_COOLANT, -INFINITY, -INFINITY, 0);
    set(look, CG_LADDER_SPARK, -INFINITY, -INFINITY, CG_PAST_LIMITS);
    set(look, CG_LADDER_PRESSURE, -INFINITY, -INFINITY, CG_PAST_LIMITS);
}

/* How far a limit is passed: in what it is of, or past it in the time that it
 * allows; its sign is that of `past`. */
static double excess(const struct cg_limit_seen *seen)
{
    double over = isinf(seen->limit) ? -1.0 : seen->reached / seen->limit - 1.0;
    if (over > 0.0 && seen->allowed > 0.0)
        over = seen->seconds / seen->allowed - 1.0;
    return seen->past ? fmax(over, CLOSE) : fmin(over, 0.0);
}

static void add_limits(const struct cg_limits *limits, struct cg_look *look)
{
    static const struct {
        enum cg_past past;
        enum cg_ladder_part part;
    } rows[] = {{CG_PAST_MELTS, CG_LADDER_PISTON},
                {CG_PAST_CROWN, CG_LADDER_PISTON},
                {CG_PAST_GROOVE, CG_LADDER_PISTON},
                {CG_PAST_GRIPS, CG_LADDER_PISTON},
                {CG_PAST_KNOCK, CG_LADDER_SPARK},
                {CG_PAST_PRESSURE, CG_LADDER_PRESSURE},
                {CG_PAST_COOLANT, CG_LADDER_COOLANT},
                {CG_PAST_FLUX, CG_LADDER_COOLANT}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double over = excess(&limits->of[rows[i].past]);
        raise(look, rows[i].part, over, over, (int)rows[i].past);
    }
}

/* Skirt, lands and bore: of the duty asked for alone, as find tells them. */
static void set_own(const struct cg_case *c, const struct cg_extremes *e,
                    struct cg_look *look)
{
    double pressure = cg_skirt_pressure(c, e->skirt.temperature,
                                        fmax(-e->clearance.skirt, 0.0));
    double tight = pressure / c->margin.skirt_pressure - 1.0;
    double land = INFINITY;
    for (int r = 0; r < CG_RINGS; r++)
        land = fmin(land, e->clearance.land[r]);
    look->skirt = e->skirt;
    look->land_least = land;
    set(look, CG_LADDER_SKIRT, tight, c->piston.skirt_taken ? STANDS : tight,
        0);
    set(look, CG_LADDER_LANDS, -land / c->piston.land_clearance, STANDS, 0);
    set(look, CG_LADDER_BORE_OIL, e->liner_top_max / CG_BORE_LIMIT - 1.0,
        STANDS, 0);
}

void cg_score_heat_add(const struct cg_case *c, const struct cg_look_duty *duty,
                       struct cg_look *look)
{
    cg_choice_load_add(c, duty->extremes, duty->limits, duty->own, look->load);
    if (duty->judged)
        add_limits(duty->limits, look);
    if (duty->own)
        set_own(c, duty->extremes, look);
}

static enum cg_ladder_part part_of(enum cg_ring_limit limit)
{
    return limit == CG_LIMIT_RING_HEAT || limit == CG_LIMIT_TENSION
               ? CG_LADDER_RING_METAL
               : CG_LADDER_RING_FACE;
}

void cg_score_heat_end(const struct cg_case *c,
                       const struct cg_performance *full, struct cg_look *look)
{
    struct cg_band limit[CG_RING_LIMITS];
    cg_choice_limits(&c->ring_material[CG_RING_TOP], &c->ring_face[CG_RING_TOP],
                     limit);
    set(look, CG_LADDER_RING_FACE, -INFINITY, -INFINITY, 0);
    set(look, CG_LADDER_RING_METAL, -INFINITY, -INFINITY, 0);
    for (int k = 0; k < CG_RING_LIMITS; k++) {
        double use = cg_choice_use(&limit[k], look->load[k]);
        raise(look, part_of((enum cg_ring_limit)k), use, use - 1.0, k);
    }
    if (c->combustion.ignition == CG_IGNITION_COMPRESSION)
        return;
    double retard = full->burn50_deg - c->combustion.burn50_deg;
    double late = retard / CG_RETARD_MOST - 1.0;
    late = cg_ceiling_capped(c, full) ? fmax(late, CLOSE) : fmin(late, 0.0);
    raise(look, CG_LADDER_SPARK, late, -INFINITY, CG_PAST_LIMITS);
}

static void set_gap(enum cg_ladder_part part, const struct cg_verdict *verdict,
                    const struct cg_ring_advice *advice, struct cg_look *look)
{
    double lacks = -1.0;
    if (verdict->given)
        lacks = advice->at_least / verdict->gap - 1.0 - CLOSE;
    if (verdict->beyond)
        lacks = fmax(lacks, verdict->need / verdict->most);
    set(look, part, lacks, lacks, 0);
}

void cg_score_gaps(const struct cg_case *c, const struct cg_answer *answer,
                   struct cg_look *look)
{
    look->point = (struct cg_ladder_point){look->boost, answer->verdict.need,
                                           answer->file_to_top.at_least,
                                           answer->shop_rule};
    look->second = answer->file_to_second.at_least;
    set_gap(CG_LADDER_TOP_GAP, &answer->verdict, &answer->file_to_top, look);
    set_gap(CG_LADDER_SECOND_GAP, &answer->second_verdict,
            &answer->file_to_second, look);
    set(look, CG_LADDER_SEATING, 1.0 - look->unseat_deg / c->seal.seated_to_deg,
        STANDS, 0);
}
