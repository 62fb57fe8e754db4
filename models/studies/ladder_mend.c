/* What is changed for a part: the least offer that will do. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_check.h"
#include "ladder_offer.h"
#include "ladder_work.h"

/* In this order parts are mended: what makes the heat, what bears it, what
 * seals it; the gaps last, since all else moves them, and the seat by them. */
static const enum cg_ladder_part mending[CG_LADDER_PARTS] = {
    CG_LADDER_CHARGE,     CG_LADDER_SPARK,     CG_LADDER_PRESSURE,
    CG_LADDER_COOLANT,    CG_LADDER_PISTON,    CG_LADDER_BORE_OIL,
    CG_LADDER_SKIRT,      CG_LADDER_LANDS,     CG_LADDER_RING_FACE,
    CG_LADDER_RING_METAL, CG_LADDER_FINISH,    CG_LADDER_TOP_GAP,
    CG_LADDER_SECOND_GAP, CG_LADDER_SEATING};

/* A ring is taken or left as a whole. */
static double score_of(const struct cg_look *look, enum cg_ladder_part part,
                       int which)
{
    if (part != CG_LADDER_RING_FACE && part != CG_LADDER_RING_METAL)
        return look->score[part][which];
    return fmax(look->score[CG_LADDER_RING_FACE][which],
                look->score[CG_LADDER_RING_METAL][which]);
}

/* Whether what stood before no longer does; but for the finish, of which more
 * fuel asks more, and which is mended after what brings that. */
static bool breaks(const struct cg_look *was, const struct cg_look *now,
                   enum cg_look_depth depth)
{
    for (int part = 0; part < CG_LADDER_PARTS; part++)
        if (cg_look_depth_of((enum cg_ladder_part)part) <= depth &&
            cg_look_depth_of((enum cg_ladder_part)part) != CG_LOOK_GAPS &&
            part != CG_LADDER_FINISH && !(was->score[part][1] > 0.0) &&
            now->score[part][1] > 0.0)
            return true;
    return false;
}

/* The worse of a part's scores, at the target and where it is hardest. */
static enum cg_status worst_scores(struct cg_ladder_work *work,
                                   struct cg_look_book *book,
                                   enum cg_ladder_part part, double *fits,
                                   double *stands)
{
    const double boost[] = {work->ladder->target, work->hardest[part]};
    double worst[2] = {-INFINITY, -INFINITY};
    for (int i = 0; i < 2; i++) {
        const struct cg_look *look;
        enum cg_status status = cg_look_at(
            book, boost[i], cg_look_depth_of(part), &look, work->error);
        if (status != CG_OK)
            return status;
        for (int which = 0; which < 2; which++)
            worst[which] = fmax(worst[which], score_of(look, part, which));
    }
    *fits = worst[0];
    *stands = worst[1];
    return CG_OK;
}

/* An offer looked at. */
struct tried {
    struct cg_case c;
    struct cg_look_book *book;
    double fits, stands; /* scores */
};

static enum cg_status try_offer(struct cg_ladder_work *work,
                                enum cg_ladder_part part,
                                const struct cg_offer *offer,
                                const struct cg_look *was, struct tried *tried)
{
    struct cg_case_problem problem[CG_CASE_PROBLEMS];
    const struct cg_look *look;
    struct cg_ladder *ladder = work->ladder;
    enum cg_look_depth depth = cg_look_depth_of(part);
    tried->c = ladder->changed;
    tried->book = NULL;
    tried->fits = tried->stands = INFINITY;
    cg_offer_make(offer, work->shelf, &tried->c);
    if (cg_case_check(&tried->c, problem) > 0)
        return CG_OK;
    enum cg_status status =
        cg_look_begin(&tried->c, ladder->target, work->book, work->book->count,
                      &tried->book, work->error);
    if (status == CG_OK)
        status =
            cg_look_at(tried->book, ladder->target, depth, &look, work->error);
    if (status == CG_OK && breaks(was, look, depth))
        return CG_OK;
    if (status == CG_OK)
        status =
            worst_scores(work, tried->book, part, &tried->fits, &tried->stands);
    /* what cannot be computed is not offered */
    return status == CG_NUMERICAL ? CG_OK : status;
}

static const char *name_in(const struct cg_case *c,
                           const struct cg_setting *setting)
{
    if (strcmp(setting->path, "rings.top.face") == 0)
        return c->ring_face[CG_RING_TOP].name; /* "" in the case: by itself */
    return (const char *)c + setting->offset;
}

/* Each part once a round. */
_Static_assert(CG_LADDER_ROUNDS * CG_LADDER_PARTS * CG_OFFER_SETS <
                   CG_LADDER_CHANGES,
               "room for all changes");

/* What an offer has changed, but for what was so before. */
static void record(struct cg_ladder *ladder, enum cg_ladder_part part,
                   const struct cg_offer *offer, const struct cg_case *was,
                   const struct cg_ladder_stop *stop, bool fits, int step)
{
    for (size_t i = 0; i < offer->sets; i++) {
        const struct cg_setting *setting = cg_setting_find(offer->set[i].path);
        struct cg_ladder_change *change = &ladder->change[ladder->changes];
        *change = (struct cg_ladder_change){
            .part = part,
            .setting = setting,
            .was = NAN,
            .now = NAN,
            .from = stop->fits,
            .why = stop->why,
            .follows = !cg_ladder_stops(ladder, &ladder->before.stop[part]),
            .holds_to = NAN,
            .fits = fits,
            .step = step,
            .price = {NAN, NAN, NAN}};
        if (offer->set[i].name != NULL) {
            strcpy(change->was_name, name_in(was, setting));
            strcpy(change->now_name, offer->set[i].name);
            if (strcmp(change->was_name, change->now_name) == 0)
                continue;
        } else {
            change->was = cg_setting_get(setting, was);
            change->now = offer->set[i].to;
            if (change->was == change->now)
                continue;
        }
        ladder->changes++;
    }
}

/* What the step costs: the difference of the target's costs. */
static enum cg_status price(struct cg_ladder_work *work,
                            const struct cg_ladder_cost *before, int step)
{
    struct cg_ladder *ladder = work->ladder;
    const struct cg_look *look;
    enum cg_status status = cg_ladder_look_at(work, CG_LOOK_GAPS, &look);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < ladder->changes; i++)
        if (ladder->change[i].step == step)
            ladder->change[i].price =
                (struct cg_ladder_cost){look->cost.leak - before->leak,
                                        look->cost.friction - before->friction,
                                        look->cost.brake - before->brake};
    return CG_OK;
}

static void swap_books(struct cg_ladder_work *work, struct tried *tried)
{
    struct cg_look_book *book = work->book;
    work->book = tried->book;
    tried->book = book;
}

/* The offers for a part, the least change first: the first with which it fits;
 * else, where it does not stand, the one with which it stands best. */
static enum cg_status choose(struct cg_ladder_work *work,
                             enum cg_ladder_part part,
                             const struct cg_look *was, struct tried *best,
                             struct cg_offer *chosen)
{
    struct cg_offer *offer = NULL;
    struct tried tried = {.book = NULL};
    size_t offers = 0;
    enum cg_status status =
        cg_offers(&work->ladder->changed, work->shelf, part, work->book, was,
                  &offer, &offers, work->error);
    if (status == CG_OK)
        status =
            worst_scores(work, work->book, part, &best->fits, &best->stands);
    bool stands = best->stands <= 0.0;
    for (size_t i = 0; i < offers && status == CG_OK && best->fits > 0.0; i++) {
        status = try_offer(work, part, &offer[i], was, &tried);
        bool fits = tried.fits <= 0.0;
        bool better = !stands && tried.stands <= 0.0 && tried.fits < best->fits;
        if (status == CG_OK && (fits || better)) {
            free(best->book);
            *best = tried;
            *chosen = offer[i];
        } else {
            free(tried.book);
        }
    }
    free(offer);
    return status;
}

static enum cg_status mend(struct cg_ladder_work *work,
                           enum cg_ladder_part part,
                           const struct cg_ladder_stop *stop, int step)
{
    struct cg_ladder *ladder = work->ladder;
    const struct cg_look *look;
    struct tried *best = calloc(1, sizeof *best);
    struct cg_offer chosen = {.sets = 0};
    if (best == NULL)
        return cg_error_set(work->error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = cg_ladder_look_at(work, CG_LOOK_GAPS, &look);
    struct cg_look was = {.depth = CG_LOOK_NONE};
    if (status == CG_OK) {
        was = *look;
        status = choose(work, part, &was, best, &chosen);
    }
    if (status == CG_OK && chosen.sets > 0) {
        struct cg_case before = ladder->changed;
        ladder->changed = best->c;
        swap_books(work, best);
        record(ladder, part, &chosen, &before, stop, best->fits <= 0.0, step);
        status = price(work, &was.cost, step);
    }
    ladder->open[part] = chosen.sets == 0 || best->fits > 0.0;
    free(best->book);
    free(best);
    return status;
}

/* Mends what the last climb has shown to stop; *mended: anything was. */
enum cg_status cg_ladder_mend(struct cg_ladder_work *work,
                              const struct cg_ladder_climb *last, int *step,
                              bool *mended)
{
    struct cg_ladder *ladder = work->ladder;
    enum cg_status status = CG_OK;
    size_t before = ladder->changes;
    for (int i = 0; i < CG_LADDER_PARTS && status == CG_OK; i++) {
        enum cg_ladder_part part = mending[i];
        if (cg_ladder_stops(ladder, &last->stop[part]) && !ladder->open[part] &&
            !cg_ladder_lived_with(ladder, part))
            status = mend(work, part, &last->stop[part], (*step)++);
    }
    *mended = ladder->changes > before;
    return status;
}
