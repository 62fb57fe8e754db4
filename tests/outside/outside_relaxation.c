/* The Larson-Miller parameter against the equivalent times of its paper. */
#include "check_close.h"
#include "relaxation.h"

#define HOUR 3600.0
#define LM                                                                   \
    "Larson and Miller, Trans. ASME 74 (1952) 765, table of equivalent "     \
    "conditions; from memory"

static const struct {
    double hours, fahrenheit;             /* condition */
    double other_fahrenheit, other_hours; /* does the same */
} equivalent[] = {
    {10000.0, 1000.0, 1200.0, 13.0},
    {1000.0, 1200.0, 1350.0, 12.0},
    {1000.0, 300.0, 400.0, 2.2},
};

static double kelvin(double fahrenheit)
{
    return (fahrenheit + 459.67) / 1.8;
}

/* The paper rounds times to two figures. */
START_TEST(equivalent_times)
{
    double parameter = cg_larson_miller(kelvin(equivalent[_i].fahrenheit),
                                        equivalent[_i].hours * HOUR);
    double hours = cg_larson_miller_time(
                       parameter, kelvin(equivalent[_i].other_fahrenheit)) /
                   HOUR;
    check_close(hours, equivalent[_i].other_hours, 0.05, LM);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside relaxation");
    TCase *all = tcase_create("Larson-Miller");
    tcase_add_loop_test(all, equivalent_times, 0,
                        sizeof equivalent / sizeof equivalent[0]);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
