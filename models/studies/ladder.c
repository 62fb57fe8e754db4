#include "ladder.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_check.h"
#include "ladder_offer.h"

enum { ROUNDS = 3 };

const char *cg_ladder_word(enum cg_ladder_part part)
{
    static const char *const word[CG_LADDER_PARTS] = {
        [CG_LADDER_TOP_GAP] = "top_gap",
        [CG_LADDER_SECOND_GAP] = "second_gap",
        [CG_LADDER_RING_FACE] = "ring_face",
        [CG_LADDER_RING_METAL] = "ring_metal",
        [CG_LADDER_SEATING] = "ring_seating",
        [CG_LADDER_FINISH] = "bore_finish",
        [CG_LADDER_PISTON] = "piston",
        [CG_LADDER_SKIRT] = "skirt",
        [CG_LADDER_LANDS] = "lands",
        [CG_LADDER_BORE_OIL] = "bore_oil",
        [CG_LADDER_COOLANT] = "coolant",
        [CG_LADDER_SPARK] = "spark",
        [CG_LADDER_CHARGE] = "charge_air"};
    return word[part];
}

/* In this order parts are mended: what makes the heat, what bears it, what seals
 * it; the gaps last, since all else moves them, and the seat by them. */
static const enum cg_ladder_part mending[CG_LADDER_PARTS] = {
    CG_LADDER_CHARGE,     CG_LADDER_SPARK,      CG_LADDER_COOLANT,
    CG_LADDER_PISTON,     CG_LADDER_BORE_OIL,   CG_LADDER_SKIRT,
    CG_LADDER_LANDS,      CG_LADDER_RING_FACE,  CG_LADDER_RING_METAL,
    CG_LADDER_FINISH,     CG_LADDER_TOP_GAP,    CG_LADDER_SECOND_GAP,
    CG_LADDER_SEATING};

void cg_ladder_order(const struct cg_ladder_climb *climb,
                     enum cg_ladder_part order[CG_LADDER_PARTS])
{
    size_t count = 0;
    for (int part = 0; part < CG_LADDER_PARTS; part++) {
        double stops = climb->stop[part].fits;
        size_t at = count++;
        /* NaN is behind all */
        while (at > 0 && !isnan(stops) &&
               !(climb->stop[order[at - 1]].fits <= stops)) {
            order[at] = order[at - 1];
            at--;
        }
        order[at] = (enum cg_ladder_part)part;
    }
}

/* A ladder under way. */
struct work {
    struct cg_ladder *ladder;
    const struct cg_ladder_shelf *shelf;
    struct cg_look_book *book; /* of ladder->changed */
    double hardest[CG_LADDER_PARTS]; /* by the last climb, the boost up to the
                                        target that is hardest on it [Pa] */
    struct cg_error *error;
};

static enum cg_status target_look(struct work *work, enum cg_look_depth depth,
                                  const struct cg_look **look)
{
    return cg_look_at(work->book, work->ladder->target, depth, look,
                      work->error);
}

/* The cylinder's pressure is mostly highest before knock retards the burn, so
 * the target need not be the hardest. */
static void find_hardest(struct work *work)
{
    const struct cg_look_book *book = work->book;
    for (int part = 0; part < CG_LADDER_PARTS; part++) {
        double most = -INFINITY;
        for (size_t i = 0; i < book->looks; i++) {
            const struct cg_look *look = &book->look[i];
            if (look->depth == CG_LOOK_GAPS &&
                look->boost <= work->ladder->target + 1.0 &&
                look->score[part][0] >= most) {
                most = look->score[part][0];
                work->hardest[part] = look->boost;
            }
        }
    }
}

static enum cg_status climb(struct work *work, struct cg_ladder_climb *climb)
{
    struct cg_ladder *ladder = work->ladder;
    struct cg_look_book *book = work->book;
    const struct cg_look *look;
    double end = ladder->end;
    enum cg_status status =
        cg_look_climb(book, ladder->target, &end, climb->stop, work->error);
    if (status == CG_OK)
        status = target_look(work, CG_LOOK_GAPS, &look);
    if (status != CG_OK)
        return status;
    ladder->end = end;
    find_hardest(work);
    climb->answer = book->answer;
    climb->cost = look->cost;
    climb->unseat_deg = look->unseat_deg;
    climb->oil_held = look->finish.oil_held;
    climb->oil_needed = look->finish.oil_needed;
    climb->points = 0;
    for (size_t i = 0; i < book->looks; i++)
        if (book->look[i].depth == CG_LOOK_GAPS)
            climb->point[climb->points++] = book->look[i].point;
    return CG_OK;
}

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
            part != CG_LADDER_FINISH &&
            !(was->score[part][1] > 0.0) && now->score[part][1] > 0.0)
            return true;
    return false;
}

/* The worse of a part's scores, at the target and where it is hardest. */
static enum cg_status worst_scores(struct work *work, struct cg_look_book *book,
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

static enum cg_status try_offer(struct work *work, enum cg_ladder_part part,
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
        cg_look_begin(&tried->c, ladder->target, work->book, &ladder->finds,
                      &tried->book, work->error);
    if (status == CG_OK)
        status = cg_look_at(tried->book, ladder->target, depth, &look,
                            work->error);
    if (status == CG_OK && breaks(was, look, depth))
        return CG_OK;
    if (status == CG_OK)
        status = worst_scores(work, tried->book, part, &tried->fits,
                              &tried->stands);
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

/* Whether a part stops before the target. */
static bool stops(const struct cg_ladder *ladder,
                  const struct cg_ladder_stop *stop)
{
    return stop->fits < ladder->target || stop->fits <= 0.0;
}

/* What an offer has changed, but for what was so before. */
static void record(struct cg_ladder *ladder, enum cg_ladder_part part,
                   const struct cg_offer *offer, const struct cg_case *was,
                   const struct cg_ladder_stop *stop, bool fits, int step)
{
    for (size_t i = 0; i < offer->sets; i++) {
        const struct cg_setting *setting = cg_setting_find(offer->set[i].path);
        struct cg_ladder_change *change = &ladder->change[ladder->changes];
        *change = (struct cg_ladder_change){
            .part = part, .setting = setting, .was = NAN, .now = NAN,
            .from = stop->fits, .why = stop->why,
            .follows = !stops(ladder, &ladder->before.stop[part]),
            .holds_to = NAN, .fits = fits, .step = step,
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
        if (ladder->changes + 1 < CG_LADDER_CHANGES)
            ladder->changes++;
    }
}

/* What the step costs: the difference of the target's costs. */
static enum cg_status price(struct work *work,
                            const struct cg_ladder_cost *before, int step)
{
    struct cg_ladder *ladder = work->ladder;
    const struct cg_look *look;
    enum cg_status status = target_look(work, CG_LOOK_GAPS, &look);
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

static void swap_books(struct work *work, struct tried *tried)
{
    struct cg_look_book *book = work->book;
    work->book = tried->book;
    tried->book = book;
}

/* The offers for a part, the least change first: the first with which it fits;
 * else, where it does not stand, the one with which it stands best. */
static enum cg_status choose(struct work *work, enum cg_ladder_part part,
                             const struct cg_look *was, struct tried *best,
                             struct cg_offer *chosen)
{
    struct cg_offer offer[CG_OFFERS];
    struct tried tried = {.book = NULL};
    enum cg_status status = CG_OK;
    size_t offers = cg_offers(&work->ladder->changed, work->shelf, part,
                              work->book, was, offer);
    status = worst_scores(work, work->book, part, &best->fits, &best->stands);
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
    return status;
}

static enum cg_status mend(struct work *work, enum cg_ladder_part part,
                           const struct cg_ladder_stop *stop, int step)
{
    struct cg_ladder *ladder = work->ladder;
    const struct cg_look *look;
    struct tried *best = calloc(1, sizeof *best);
    struct cg_offer chosen = {.sets = 0};
    if (best == NULL)
        return cg_error_set(work->error, CG_NO_MEMORY, "out of memory");
    enum cg_status status = target_look(work, CG_LOOK_GAPS, &look);
    struct cg_look was = *look;
    if (status == CG_OK)
        status = choose(work, part, &was, best, &chosen);
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

static bool does_not_stand(const struct cg_ladder *ladder,
                           const struct cg_ladder_stop *stop)
{
    return stop->stands < ladder->target || stop->stands <= 0.0;
}

static bool all_stand(const struct cg_ladder *ladder,
                      const struct cg_ladder_climb *climb)
{
    bool stand = true;
    for (int part = 0; part < CG_LADDER_PARTS; part++)
        stand = stand && !does_not_stand(ladder, &climb->stop[part]);
    return stand;
}

bool cg_ladder_lived_with(const struct cg_ladder *ladder,
                          enum cg_ladder_part part)
{
    return ladder->before.stop[part].fits <= ladder->own &&
           !does_not_stand(ladder, &ladder->before.stop[part]) &&
           !does_not_stand(ladder, &ladder->after.stop[part]);
}

/* Mends what the last climb has shown to stop; *mended: anything was. */
static enum cg_status mend_all(struct work *work,
                               const struct cg_ladder_climb *last, int *step,
                               bool *mended)
{
    struct cg_ladder *ladder = work->ladder;
    enum cg_status status = CG_OK;
    size_t before = ladder->changes;
    for (int i = 0; i < CG_LADDER_PARTS && status == CG_OK; i++) {
        enum cg_ladder_part part = mending[i];
        if (stops(ladder, &last->stop[part]) && !ladder->open[part] &&
            !cg_ladder_lived_with(ladder, part))
            status = mend(work, part, &last->stop[part], (*step)++);
    }
    *mended = ladder->changes > before;
    return status;
}

/* In the order in which they are needed. */
static int sooner(const void *a, const void *b)
{
    const struct cg_ladder_change *x = a, *y = b;
    if (x->from != y->from)
        return x->from < y->from ? -1 : 1;
    return x->step != y->step ? (x->step > y->step) - (x->step < y->step)
                              : (x->setting > y->setting) -
                                    (x->setting < y->setting);
}

/* A setting changed twice for the sake of one part is one change. */
static void join(struct cg_ladder *ladder)
{
    size_t kept = 0;
    for (size_t i = 0; i < ladder->changes; i++) {
        struct cg_ladder_change *change = &ladder->change[i];
        size_t k = 0;
        while (k < kept && ladder->change[k].setting != change->setting)
            k++;
        if (k == kept) {
            ladder->change[kept++] = *change;
            continue;
        }
        struct cg_ladder_change *first = &ladder->change[k];
        first->now = change->now;
        strcpy(first->now_name, change->now_name);
        first->from = fmin(first->from, change->from);
        first->price.leak += change->price.leak;
        first->price.friction += change->price.friction;
        first->price.brake += change->price.brake;
    }
    ladder->changes = kept;
}

static void finish(struct cg_ladder *ladder)
{
    join(ladder);
    for (size_t i = 0; i < ladder->changes; i++) {
        struct cg_ladder_change *change = &ladder->change[i];
        const struct cg_ladder_stop *stop = &ladder->after.stop[change->part];
        change->fits = !stops(ladder, stop);
        change->holds_to = change->fits ? stop->fits : stop->stands;
    }
    qsort(ladder->change, ladder->changes, sizeof ladder->change[0], sooner);
    for (int part = 0; part < CG_LADDER_PARTS; part++)
        ladder->open[part] = stops(ladder, &ladder->after.stop[part]);
    ladder->stands = all_stand(ladder, &ladder->after);
}

static enum cg_status run(struct work *work)
{
    struct cg_ladder *ladder = work->ladder;
    bool mended = true;
    int step = 0;
    enum cg_status status = climb(work, &ladder->before);
    ladder->after = ladder->before;
    for (int i = 0; i < ROUNDS && status == CG_OK && mended; i++) {
        status = mend_all(work, &ladder->after, &step, &mended);
        if (status == CG_OK && mended)
            status = climb(work, &ladder->after);
    }
    if (status == CG_OK)
        finish(ladder);
    return status;
}

enum cg_status cg_ladder_create(const struct cg_case *c, double target,
                                const struct cg_ladder_shelf *shelf,
                                struct cg_ladder **ladder,
                                struct cg_error *error)
{
    if (!(target >= 0.0 && target <= CG_LADDER_MOST))
        return cg_error_set(error, CG_BAD_INPUT,
                            "ladder: a boost of 0 to %.0f kPa is allowed",
                            CG_LADDER_MOST / 1e3);
    struct cg_ladder *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->target = target;
    made->own = c->charge.boost;
    made->end = fmin(target + CG_LADDER_FURTHER, CG_LADDER_MOST);
    made->asked = *c;
    made->asked.charge.boost = target;
    if (target > 0.0 && c->charge.charger == CG_CHARGER_NONE)
        made->asked.charge.charger = CG_CHARGER_TURBINE;
    made->changed = made->asked;
    struct work work = {.ladder = made, .shelf = shelf, .error = error};
    enum cg_status status = cg_look_begin(&made->asked, target, NULL,
                                          &made->finds, &work.book, error);
    if (status == CG_OK)
        status = run(&work);
    free(work.book);
    if (status != CG_OK) {
        free(made);
        return status;
    }
    *ladder = made;
    return CG_OK;
}

void cg_ladder_free(struct cg_ladder *ladder)
{
    free(ladder);
}
