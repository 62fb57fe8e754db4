/* A film over the stroke: mean conductance, contact near the dead centres. */
#include <math.h>

#include "check_close.h"
#include "constants.h"
#include "stroke_film.h"

enum { MANY = 200000, SOME = 360 };

static double speed[MANY], pressure[MANY];
static double by_film; /* of the mean looked at last */

/* Harmonic motion, sampled at the middles of equal steps. */
static void drive(size_t points, double load)
{
    for (size_t i = 0; i < points; i++) {
        speed[i] = 7.3 * sin(2.0 * CG_PI * ((double)i + 0.5) / (double)points);
        pressure[i] = load;
    }
}

static struct cg_stroke_film film_of(double film, double roughness)
{
    return (struct cg_stroke_film){film, 0.13,
                                   cg_asperity_of(roughness, 200e9, 110e9),
                                   38.0, 49.0};
}

static double mean_of(double film, double roughness, double load)
{
    struct cg_stroke_film in = film_of(film, roughness);
    drive(SOME, load);
    return cg_stroke_film_conductance(&in, SOME, speed, pressure,
                                      &by_film);
}

/* Of 1/sqrt(sin) over a quarter turn: B(1/4, 1/2)/pi. */
START_TEST(smooth_faces_in_closed_form)
{
    struct cg_stroke_film in = film_of(2e-6, 1e-12);
    double want = tgamma(0.25) * tgamma(0.5) / tgamma(0.75) / CG_PI;
    drive(MANY, 1e3);
    check_close(want, 1.6693, 1e-4, "B(1/4, 1/2)/pi, by hand");
    check_close(cg_stroke_film_conductance(&in, MANY, speed, pressure,
                                           &by_film) /
                    (0.13 / 2e-6),
                want, 2e-3, "beta function");
}
END_TEST

/* More than that of mid-stroke, less than that of the least film. */
START_TEST(between_mid_stroke_and_contact)
{
    struct cg_asperity faces = cg_asperity_of(0.4e-6, 200e9, 110e9);
    double least = cg_asperity_distance(&faces, 1.1e6);
    double mean = mean_of(2e-6, 0.4e-6, 1.1e6);
    ck_assert_double_gt(mean, 0.13 / 2e-6);
    ck_assert_double_lt(mean, 0.13 / least);
}
END_TEST

/* All in contact: the oil between the asperities and the metal side by side. */
START_TEST(thin_film_is_all_contact)
{
    struct cg_asperity faces = cg_asperity_of(0.4e-6, 200e9, 110e9);
    double want = 0.13 / cg_asperity_distance(&faces, 2.3e6) +
                  cg_asperity_conductance(&faces, 38.0, 49.0, 2.3e6);
    check_close(mean_of(1e-9, 0.4e-6, 2.3e6), want, 1e-12, "by definition");
}
END_TEST

START_TEST(load_and_thin_film_conduct_more)
{
    double before = 0.0;
    for (double load = 1e5; load < 1e7; load *= 2.0) {
        double mean = mean_of(2e-6, 0.4e-6, load);
        ck_assert_double_gt(mean, before);
        before = mean;
    }
    before = INFINITY;
    for (double film = 0.5e-6; film < 2e-5; film *= 1.5) {
        double mean = mean_of(film, 0.4e-6, 1e6);
        ck_assert_double_lt(mean, before);
        before = mean;
    }
}
END_TEST

/* By a central difference, from all oil to all contact.  Where the film meets
 * the distance that carries the load the slope jumps, and one of the points of
 * the stroke is seen on one side or the other. */
START_TEST(slope_by_the_film)
{
    for (double film = 8e-8; film < 2e-5; film *= 1.9) {
        double more = mean_of(film * 1.001, 0.37e-6, 1.3e6);
        double less = mean_of(film / 1.001, 0.37e-6, 1.3e6);
        mean_of(film, 0.37e-6, 1.3e6);
        ck_assert_double_eq_tol(by_film, log(more / less) / (2.0 * log(1.001)),
                                5e-3);
    }
    struct cg_asperity faces = cg_asperity_of(0.37e-6, 200e9, 110e9);
    for (double film = 1e-7; film < 1.4e-6; film += 1.7e-7)
        ck_assert_double_eq_tol(
            cg_asperity_slope(&faces, film),
            log(cg_asperity_pressure(&faces, film * 1.0001) /
                cg_asperity_pressure(&faces, film / 1.0001)) /
                (2.0 * log(1.0001)),
            1e-3);
}
END_TEST

START_TEST(distance_carries_the_pressure)
{
    struct cg_asperity faces = cg_asperity_of(0.37e-6, 190e9, 105e9);
    for (double load = 1e4; load < 3e7; load *= 3.7)
        check_close(cg_asperity_pressure(&faces,
                                         cg_asperity_distance(&faces, load)),
                    load, 1e-9, "inverse of each other");
    check_close(cg_asperity_distance(&faces, 1e12), 0.37e-8, 1e-12,
                "a hundredth of the roughness");
}
END_TEST

/* h s/(k m) (H/p)^0.95 = 1.25. */
START_TEST(contact_by_hand)
{
    struct cg_asperity faces = {0.5e-6, 1.0};
    check_close(cg_asperity_conductance(&faces, 40.0, 60.0, 2.5e6),
                1.25 * 48.0 * 0.1 / 0.5e-6 * pow(1e-3, 0.95), 1e-12,
                "M. M. Yovanovich, AIAA 81-1164 (1981), from memory");
    ck_assert_double_eq(cg_asperity_conductance(&faces, 40.0, 60.0, 0.0), 0.0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("stroke film");
    TCase *all = tcase_create("stroke film");
    tcase_add_test(all, smooth_faces_in_closed_form);
    tcase_add_test(all, between_mid_stroke_and_contact);
    tcase_add_test(all, thin_film_is_all_contact);
    tcase_add_test(all, load_and_thin_film_conduct_more);
    tcase_add_test(all, slope_by_the_film);
    tcase_add_test(all, distance_carries_the_pressure);
    tcase_add_test(all, contact_by_hand);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
