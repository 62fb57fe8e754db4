/* The heat balance of the shipped engines. */
#include <gsl/gsl_errno.h>

#include "case_of.h"
#include "check_close.h"
#include "heat_balance.h"

static const char *const files[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX};

/* What walls and friction give is what coolant and oil carry off: of the walls
 * the cycle speaks, of what is carried off the thermal network. */
START_TEST(what_goes_in_comes_out)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(files[_i], &set, 1);
    struct cg_duty_run *run = run_of(&c);
    struct cg_heat_balance balance =
        cg_heat_balance_at(&c, run->thermal, &run->point[run->full_load]);
    const double *part = balance.part;
    double given = part[CG_BALANCE_PISTON] + part[CG_BALANCE_HEAD] +
                   part[CG_BALANCE_BORE] + part[CG_BALANCE_CREVICE] +
                   part[CG_BALANCE_PORT] +
                   part[CG_BALANCE_EVAPORATION] + part[CG_BALANCE_FRICTION];
    check_close(balance.coolant + balance.oil, given, 0.03, "two models");
    double sum = 0.0;
    for (int i = 0; i < CG_BALANCE_PARTS; i++)
        sum += part[i];
    check_close(sum, balance.fuel, 1e-12, "first law");
    check_close(part[CG_BALANCE_BRAKE] + part[CG_BALANCE_FRICTION],
                run->point[run->full_load].performance.imep *
                    cg_crank_swept(&run->point[run->full_load].input.crank) *
                    0.5 * c.engine.speed * c.engine.cylinders,
                1e-12, "indicated work");
    cg_duty_run_free(run);
}
END_TEST

/* More of the latent heat from the port's walls: as much less for the coolant,
 * but for what the warmer charge gives back. */
START_TEST(walls_pay_for_evaporation)
{
    const char *const set[] = {"duty.name=settled", "fuel.name=methanol"};
    struct cg_case c = case_of(files[_i], set, 2);
    double coolant[2], given[2];
    for (int k = 0; k < 2; k++) {
        c.charge.wall_evaporation = 1.0 * k;
        struct cg_duty_run *run = run_of(&c);
        struct cg_heat_balance balance =
            cg_heat_balance_at(&c, run->thermal, &run->point[run->full_load]);
        coolant[k] = balance.coolant;
        given[k] = balance.part[CG_BALANCE_EVAPORATION];
        cg_duty_run_free(run);
    }
    ck_assert(given[0] == 0.0 && given[1] < 0.0);
    double less = (coolant[1] - coolant[0]) / given[1];
    ck_assert_msg(less > 0.6 && less < 1.0, "%g", less);
}
END_TEST

int main(void)
{
    gsl_set_error_handler_off();
    Suite *suite = suite_create("heat balance");
    TCase *all = tcase_create("heat balance");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, what_goes_in_comes_out, 0, 3);
    tcase_add_loop_test(all, walls_pay_for_evaporation, 0, 3);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
