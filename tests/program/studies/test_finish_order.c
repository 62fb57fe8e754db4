/* The finish to order: what lies in its bands is asked for no change, and the
 * stones named leave such a finish. */
#include "case_of.h"
#include "check_close.h"
#include "finish_order.h"
#include "grit.h"

static struct cg_finish_order order_of(const struct cg_case *c)
{
    struct cg_finish_order order;
    struct cg_error error = {0};
    enum cg_status status = cg_finish_order_find(c, 1, &order, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return order;
}

/* A value of a band, part of the way from its lower end. */
static double within(struct cg_band band, double part)
{
    return band.low + part * (band.high - band.low);
}

/* A finish of those figures, as the advice sees it. */
static struct cg_core core_of(const struct cg_finish_order *order, double rvk,
                              double mr2, double rest)
{
    struct cg_core core = {.rpk = within(order->rpk, rest),
                           .rk = within(order->rk, rest),
                           .mr1 = within(order->mr1, rest),
                           .rvk = within(order->rvk, rvk),
                           .mr2 = within(order->mr2, mr2)};
    core.oil = core.a2 = core.rvk * (1.0 - core.mr2) / 2.0;
    return core;
}

START_TEST(what_lies_in_the_bands_wants_no_change)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_finish_order order = order_of(&c);
    int seen = 0;
    for (int i = 0; i <= 10; i++)
        for (int k = 0; k <= 10; k++)
            for (int m = 0; m <= 4; m++) {
                struct cg_finish_verdict verdict = order.need;
                struct cg_core core =
                    core_of(&order, 0.1 * i, 0.1 * k, 0.25 * m);
                if (core.oil > order.oil.high * (1.0 - 1e-9))
                    continue; /* out of the band of Vo */
                ck_assert_double_ge(core.oil, order.oil.low * (1.0 - 1e-9));
                core.oil *= 1.0 + 1e-9;
                cg_finish_hold(&c, &core, true, &verdict);
                ck_assert(cg_finish_passes(&verdict));
                ck_assert_int_eq(verdict.advices, 0);
                seen++;
            }
    ck_assert_int_gt(seen, 300);
}
END_TEST

/* The ends of the bands: where the figures are, as core_of takes them, and
 * which of them go on past the end. */
static const struct end {
    const char *what;
    double rvk, mr2;              /* parts of their bands */
    double on_rvk, on_mr2;        /* parts more */
    double on_rpk, on_rk, on_oil; /* shares more */
    enum cg_honing_change change; /* asked for past it */
} ends[] = {{"most Rpk", 0.3, 0.8, 0, 0, 1, 0, 0, CG_PLATEAU_LONGER},
            {"most Rk", 0.3, 0.8, 0, 0, 0, 1, 0, CG_PLATEAU_FINER},
            {"least Rvk", 0.0, 1.0, -1, 0, 0, 0, 0, CG_BASE_COARSER},
            {"most Rvk", 1.0, 1.0, 1, 0, 0, 0, 0, CG_BASE_FINER},
            {"least Mr2", 0.0, 0.0, 0, -1, 0, 0, 0, CG_PLATEAU_LONGER},
            {"most Mr2", 1e-3, 1.0, 0, 1, 0, 0, 0, CG_PLATEAU_SHORTER},
            {"least Vo", 1e-3, 1.0, 0, 0, 0, 0, -1, CG_PLATEAU_SHORTER},
            {"most Vo", 1.0, 1.0, 0, 0, 0, 0, 1, CG_BASE_FINER}};

static struct cg_core core_at(const struct cg_finish_order *order,
                              const struct end *end, double past)
{
    struct cg_core core = core_of(order, end->rvk + past * end->on_rvk,
                                  end->mr2 + past * end->on_mr2, 0.5);
    if (end->on_rpk > 0.0)
        core.rpk = order->rpk.high * (1.0 + past);
    if (end->on_rk > 0.0)
        core.rk = order->rk.high * (1.0 + past);
    core.oil *= 1.0 + past * end->on_oil;
    return core;
}

/* Each band ends where its advice begins. */
START_TEST(what_lies_past_a_band_wants_one)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_finish_order order = order_of(&c);
    for (size_t i = 0; i < COUNT_OF(ends); i++) {
        struct cg_finish_verdict within = order.need, past = order.need;
        struct cg_core core = core_at(&order, &ends[i], -0.02);
        cg_finish_hold(&c, &core, true, &within);
        ck_assert_msg(within.advices == 0, "%s: advice within", ends[i].what);
        core = core_at(&order, &ends[i], 0.02);
        cg_finish_hold(&c, &core, true, &past);
        ck_assert_msg(past.advices == 1, "%s: %d advices past it", ends[i].what,
                      past.advices);
        ck_assert_msg(past.advice[0].change == ends[i].change, "%s: change %d",
                      ends[i].what, past.advice[0].change);
    }
}
END_TEST

/* On the usual plateau the least valleys hold just what is needed. */
START_TEST(least_valleys_hold_the_oil_needed)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_finish_order order = order_of(&c);
    struct cg_core core = core_of(&order, 0.0, 1.0, 0.0);
    ck_assert_double_eq_tol(core.oil, order.need.oil_needed, 1e-9 * core.oil);
    ck_assert_double_eq_tol(order.oil.high, CG_FINISH_AMPLE * order.oil.low,
                            1e-9 * order.oil.high);
}
END_TEST

/* Stones far off are changed by class until their surface passes. */
START_TEST(stones_are_changed_until_they_pass)
{
    static const int base[] = {80, 180, 400, 1200};
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    c.charge.boost = 250e3;
    for (size_t i = 0; i < COUNT_OF(base); i++) {
        c.bore.finish.base_grit = base[i];
        struct cg_finish_order order = order_of(&c);
        ck_assert_msg(order.passes, "from %d to %d", base[i], order.base_grit);
        ck_assert_double_ge(order.need.oil_held, order.need.oil_needed);
        ck_assert_double_le(order.need.oil_held, order.oil.high);
    }
    c.bore.finish.base_grit = 1200;
    ck_assert_int_lt(order_of(&c).base_grit, 1200);
}
END_TEST

START_TEST(stones_that_serve_stay)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_finish_order order = order_of(&c);
    ck_assert_int_eq(order.base_grit, c.bore.finish.base_grit);
    ck_assert_int_eq(order.plateau_grit, c.bore.finish.plateau_grit);
    ck_assert(order.passes);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("finish to order");
    TCase *all = tcase_create("order");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, what_lies_in_the_bands_wants_no_change);
    tcase_add_test(all, what_lies_past_a_band_wants_one);
    tcase_add_test(all, least_valleys_hold_the_oil_needed);
    tcase_add_test(all, stones_are_changed_until_they_pass);
    tcase_add_test(all, stones_that_serve_stay);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
