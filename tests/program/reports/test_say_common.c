/* Words that follow from figures. */
#include <math.h>

#include "case_of.h"
#include "check_close.h"
#include "say_common.h"

/* The model's clearance against the trade's band, ends included; a band that is
 * not known is no judgement. */
START_TEST(where_a_skirt_lies)
{
    static const struct {
        double cold, low, high;
        const char *lies;
    } row[] = {{0.09e-3, 0.10e-3, 0.12e-3, "below"},
               {0.10e-3, 0.10e-3, 0.12e-3, "in"},
               {0.12e-3, 0.10e-3, 0.12e-3, "in"},
               {0.13e-3, 0.10e-3, 0.12e-3, "above"},
               {0.13e-3, NAN, NAN, "-"}};
    for (size_t i = 0; i < COUNT_OF(row); i++) {
        struct cg_skirt_answer skirt = {
            .cold = row[i].cold, .trade = {row[i].low, row[i].high}};
        ck_assert_str_eq(cg_say_skirt_lies(&skirt), row[i].lies);
    }
}
END_TEST

int main(void)
{
    TCase *all = tcase_create("all");
    tcase_add_test(all, where_a_skirt_lies);
    Suite *suite = suite_create("say common");
    suite_add_tcase(suite, all);
    return check_run(suite);
}
