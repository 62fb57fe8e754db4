#include "ladder_look.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ladder_score.h"
#include "seal_friction.h"
#include "simulated.h"

#define SAME 1.0 /* boosts that are one [Pa] */
#define DRAW 1   /* of the simulated surface, as `finish` begins with */

/* The stones alone; what the finish is held against is the case's. */
static bool like_stones(const struct cg_finish_case *a,
                        const struct cg_finish_case *b)
{
    return a->base_grit == b->base_grit && a->plateau_grit == b->plateau_grit &&
           a->plateau_share == b->plateau_share &&
           a->crosshatch_deg == b->crosshatch_deg;
}

static enum cg_status take_finish(const struct cg_look_book *like,
                                  struct cg_look_book *book,
                                  struct cg_error *error)
{
    if (like == NULL ||
        !like_stones(&like->c.bore.finish, &book->c.bore.finish))
        return cg_simulated_core(&book->c, DRAW, &book->core, &book->bends,
                                 error);
    book->core = like->core;
    book->bends = like->bends;
    return CG_OK;
}

enum cg_status cg_look_begin(const struct cg_case *c, double keep,
                             const struct cg_look_book *like,
                             struct cg_ladder_count *count,
                             struct cg_look_book **book, struct cg_error *error)
{
    struct cg_look_book *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->c = *c;
    made->keep = keep;
    made->count = count;
    if (made->c.charge.charger == CG_CHARGER_NONE) /* as ring_choice.h */
        made->c.charge.charger = CG_CHARGER_TURBINE;
    enum cg_status status = take_finish(like, made, error);
    if (status != CG_OK) {
        free(made);
        return status;
    }
    *book = made;
    return CG_OK;
}

static enum cg_status look_at_charge(struct cg_look_book *book,
                                     const struct cg_case *c,
                                     struct cg_look *look,
                                     struct cg_error *error)
{
    enum cg_status status =
        cg_finish_judge(c, &book->core, book->bends, &look->finish, error);
    if (status == CG_OK)
        cg_score_charge(c, look);
    return status;
}

/* One duty, nominal. */
static enum cg_status run_duty(const struct cg_case *c, bool own,
                               struct cg_look *look, struct cg_error *error)
{
    struct cg_duty_run *run;
    struct cg_extremes extremes;
    struct cg_limits limits;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    status =
        cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes, NULL, error);
    if (status == CG_OK) {
        cg_limits_judge(c, run, &extremes, &limits);
        struct cg_look_duty duty = {&extremes, &limits, own,
                                    own || c->survive.named};
        cg_score_heat_add(c, &duty, look);
        if (own)
            cg_score_heat_end(c, &run->point[run->full_load].performance, look);
    }
    cg_duty_run_free(run);
    return status;
}

/* The case's own duty comes last, as the scores of the ring take in all. */
static enum cg_status look_at_heat(const struct cg_case *c,
                                   struct cg_look *look, struct cg_error *error)
{
    struct cg_case other = *c;
    enum cg_status status = CG_OK;
    cg_score_heat_begin(look);
    for (int i = 0; i < c->survive.duties && status == CG_OK; i++) {
        other.duty = c->survive.duty[i];
        status = run_duty(&other, false, look, error);
    }
    return status == CG_OK ? run_duty(c, true, look, error) : status;
}

/* When the top ring leaves its seat, where it does so soonest; rings that
 * flutter without repeating are not seated. */
static enum cg_status find_seat(const struct cg_case *c,
                                struct cg_duty_run *run,
                                const struct cg_answer *answer,
                                struct cg_look *look, struct cg_error *error)
{
    struct cg_seal *seal;
    struct cg_seal_answer at;
    enum cg_status status =
        cg_seal_create(c, run, cg_second_gap_point(run), &seal, error);
    if (status != CG_OK)
        return status;
    status = cg_seal_solve(seal, answer->verdict.gap,
                           answer->second_verdict.gap, &at, error);
    cg_seal_free(seal);
    look->unseat_deg =
        status == CG_OK ? at.settled.cycle.unseat_deg[CG_RING_TOP] : 0.0;
    return status == CG_NO_MEMORY ? status : CG_OK;
}

static enum cg_status find_cost(const struct cg_case *c,
                                struct cg_duty_run *run,
                                const struct cg_answer *answer,
                                struct cg_look *look, struct cg_error *error)
{
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_seal_friction friction;
    look->cost = (struct cg_ladder_cost){
        NAN, NAN, answer->balance.part[CG_BALANCE_BRAKE]};
    enum cg_status status =
        cg_seal_create(c, run, run->full_load, &seal, error);
    if (status != CG_OK)
        return status;
    status = cg_seal_solve(seal, answer->verdict.gap,
                           answer->second_verdict.gap, &at, error);
    if (status == CG_OK) {
        look->cost.leak = at.blow_by;
        status =
            cg_seal_friction_find(seal, run, run->full_load, &friction, error);
    }
    if (status == CG_OK)
        look->cost.friction = friction.power[0] + friction.power[1];
    cg_seal_free(seal);
    return status == CG_NUMERICAL ? CG_OK : status;
}

static void take_answer(const struct cg_case *c, const struct cg_answer *answer,
                        struct cg_look *look)
{
    cg_score_heat_begin(look);
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        struct cg_look_duty seen = {&duty->extremes, &duty->limits, i == 0,
                                    duty->judged};
        cg_score_heat_add(c, &seen, look);
    }
    cg_score_heat_end(c, &answer->performance, look);
    cg_score_gaps(c, answer, look);
}

static enum cg_status look_at_gaps(struct cg_look_book *book,
                                   const struct cg_case *c,
                                   struct cg_look *look, struct cg_error *error)
{
    struct cg_duty_run *run;
    struct cg_answer answer;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    bool keep = fabs(look->boost - book->keep) < SAME;
    status = cg_answer_find(c, run, 0.0, NULL, NULL, &answer, error);
    if (status == CG_OK)
        status = cg_answer_second(c, run, &answer, error);
    if (status == CG_OK)
        status = find_seat(c, run, &answer, look, error);
    if (status == CG_OK && keep)
        status = find_cost(c, run, &answer, look, error);
    cg_duty_run_free(run);
    if (status != CG_OK)
        return status;
    take_answer(c, &answer, look);
    book->count->answers++;
    if (book->count->told != NULL)
        book->count->told(book->count->context, book->count->answers);
    if (keep)
        book->answer = answer;
    return CG_OK;
}

/* A score that is no number would pass for a good one. */
static enum cg_status check_scores(const struct cg_look *look,
                                   enum cg_look_depth depth,
                                   struct cg_error *error)
{
    for (int i = 0; i < CG_LADDER_PARTS; i++) {
        enum cg_ladder_part part = (enum cg_ladder_part)i;
        const double *score = look->score[part];
        if (cg_look_depth_of(part) <= depth &&
            (isnan(score[0]) || isnan(score[1])))
            return cg_error_set(error, CG_NUMERICAL,
                                "ladder: %s at %.0f kPa cannot be judged",
                                cg_ladder_word(part), look->boost / 1e3);
    }
    return CG_OK;
}

static enum cg_status deepen(struct cg_look_book *book,
                             enum cg_look_depth depth, struct cg_look *look,
                             struct cg_error *error)
{
    struct cg_case at = book->c;
    enum cg_status status = CG_OK;
    at.charge.boost = look->boost;
    if (look->depth < CG_LOOK_CHARGE)
        status = look_at_charge(book, &at, look, error);
    if (status == CG_OK && depth == CG_LOOK_HEAT)
        status = look_at_heat(&at, look, error);
    if (status == CG_OK && depth == CG_LOOK_GAPS)
        status = look_at_gaps(book, &at, look, error);
    if (status == CG_OK)
        status = check_scores(look, depth, error);
    if (status == CG_OK)
        look->depth = depth;
    return status;
}

/* The place of a boost among those looked at, made if it is not there; NULL:
 * there is no room for one more. */
static struct cg_look *place_of(struct cg_look_book *book, double boost)
{
    size_t i = 0;
    while (i < book->looks && book->look[i].boost < boost - SAME)
        i++;
    if (i < book->looks && fabs(book->look[i].boost - boost) <= SAME)
        return &book->look[i];
    if (book->looks == CG_LOOKS)
        return NULL;
    memmove(&book->look[i + 1], &book->look[i],
            (book->looks - i) * sizeof book->look[0]);
    memset(&book->look[i], 0, sizeof book->look[i]);
    book->look[i].boost = boost;
    book->looks++;
    return &book->look[i];
}

enum cg_status cg_look_at(struct cg_look_book *book, double boost,
                          enum cg_look_depth depth, const struct cg_look **look,
                          struct cg_error *error)
{
    struct cg_look *place = place_of(book, boost);
    if (place == NULL)
        return cg_error_set(error, CG_NUMERICAL,
                            "ladder: more than %d boosts are to be looked at",
                            CG_LOOKS);
    *look = place;
    return place->depth < depth ? deepen(book, depth, place, error) : CG_OK;
}
