#include "ladder.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "ladder_work.h"
#include "outside.h"

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
        [CG_LADDER_PRESSURE] = "pressure",
        [CG_LADDER_CHARGE] = "charge_air"};
    return word[part];
}

bool cg_ladder_has(const struct cg_ladder *ladder, enum cg_ladder_part part)
{
    const struct cg_case *c = &ladder->asked;
    bool spark = c->combustion.ignition == CG_IGNITION_SPARK;
    return part != (spark ? CG_LADDER_PRESSURE : CG_LADDER_SPARK) &&
           (part != CG_LADDER_COOLANT || !cg_air_cooled(c));
}

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

enum cg_status cg_ladder_look_at(struct cg_ladder_work *work,
                                 enum cg_look_depth depth,
                                 const struct cg_look **look)
{
    return cg_look_at(work->book, work->ladder->target, depth, look,
                      work->error);
}

/* The cylinder's pressure is mostly highest before knock retards the burn, so
 * the target need not be the hardest. */
static void find_hardest(struct cg_ladder_work *work)
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

static enum cg_status climb(struct cg_ladder_work *work,
                            struct cg_ladder_climb *climb)
{
    struct cg_ladder *ladder = work->ladder;
    struct cg_look_book *book = work->book;
    const struct cg_look *look;
    double end = ladder->end;
    enum cg_status status =
        cg_look_climb(book, ladder->target, &end, climb->stop, work->error);
    if (status == CG_OK)
        status = cg_ladder_look_at(work, CG_LOOK_GAPS, &look);
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

bool cg_ladder_stops(const struct cg_ladder *ladder,
                     const struct cg_ladder_stop *stop)
{
    return stop->fits < ladder->target || stop->fits <= 0.0;
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

/* In the order in which they are needed. */
static int sooner(const void *a, const void *b)
{
    const struct cg_ladder_change *x = a, *y = b;
    if (x->from != y->from)
        return x->from < y->from ? -1 : 1;
    return x->step != y->step
               ? (x->step > y->step) - (x->step < y->step)
               : (x->setting > y->setting) - (x->setting < y->setting);
}

/* Whether a change came back to where it began. */
static bool is_none(const struct cg_ladder_change *change)
{
    return isnan(change->now)
               ? strcmp(change->was_name, change->now_name) == 0
               : change->was == change->now;
}

/* A setting changed twice is one change, of the part that asked for it first;
 * one that is back where it was is none. */
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
    ladder->changes = 0;
    for (size_t i = 0; i < kept; i++)
        if (!is_none(&ladder->change[i]))
            ladder->change[ladder->changes++] = ladder->change[i];
}

static void finish(struct cg_ladder *ladder)
{
    join(ladder);
    for (size_t i = 0; i < ladder->changes; i++) {
        struct cg_ladder_change *change = &ladder->change[i];
        const struct cg_ladder_stop *stop = &ladder->after.stop[change->part];
        change->fits = !cg_ladder_stops(ladder, stop);
        change->holds_to = change->fits ? stop->fits : stop->stands;
    }
    qsort(ladder->change, ladder->changes, sizeof ladder->change[0], sooner);
    for (int part = 0; part < CG_LADDER_PARTS; part++)
        ladder->open[part] = cg_ladder_stops(ladder, &ladder->after.stop[part]);
    ladder->stands = all_stand(ladder, &ladder->after);
}

static enum cg_status run(struct cg_ladder_work *work)
{
    struct cg_ladder *ladder = work->ladder;
    bool mended = true;
    int step = 0;
    enum cg_status status = climb(work, &ladder->before);
    ladder->after = ladder->before;
    for (int i = 0; i < CG_LADDER_ROUNDS && status == CG_OK && mended; i++) {
        status = cg_ladder_mend(work, &ladder->after, &step, &mended);
        if (status == CG_OK && mended)
            status = climb(work, &ladder->after);
    }
    if (status == CG_OK)
        finish(ladder);
    return status;
}

enum cg_status cg_ladder_create(const struct cg_case *c, double target,
                                const struct cg_ladder_shelf *shelf,
                                struct cg_ladder_count *count,
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
    struct cg_ladder_work work = {
        .ladder = made, .shelf = shelf, .error = error};
    enum cg_status status =
        cg_look_begin(&made->asked, target, NULL, count, &work.book, error);
    if (status == CG_OK) {
        if (target > 0.0)
            made->asked.charge.charger = work.book->c.charge.charger;
        made->changed = made->asked;
        status = run(&work);
    }
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
