/* The closed forms of reynolds.c against a grid. */
#include <math.h>
#include <stdbool.h>

#include "check_close.h"
#include "reynolds.h"

enum { GRID = 600, SWEEPS = 6000 };

#define CHRISTOPHERSON                                                         \
    "Reynolds' equation on a grid with p held at the cavity's or above "       \
    "(D. G. Christopherson, Proc. IMechE 146 (1941))"

static const struct cg_face_state base = {.film = 1.5e-6,
                                          .opening = 0.0,
                                          .speed = 8.0,
                                          .viscosity = 4e-3,
                                          .pressure_above = 1e5,
                                          .pressure_below = 1e5};

static double height(const struct cg_face_curve *face, double film, double up)
{
    return film + (face->shape == CG_FACE_BARREL ? 0.5 * up * up / face->radius
                                                 : face->slope * up);
}

struct on_grid {
    double support, friction;
};

/* d/dx(h^3/(12 eta) dp/dx) = -V/2 dh/dx + dh/dt, x upwards, the bore going up
 * at V past a ring that goes down: by successive over-relaxation, projected. */
static struct on_grid solve(const struct cg_face_curve *face,
                            const struct cg_face_state *s)
{
    static double p[GRID + 1], h[GRID + 1], half[GRID];
    double width = face->above + face->below, dx = width / GRID;
    double cavity = fmin(s->pressure_above, s->pressure_below);
    for (int i = 0; i <= GRID; i++) {
        h[i] = height(face, s->film, -face->below + i * dx);
        p[i] = s->pressure_below +
               (s->pressure_above - s->pressure_below) * i / GRID;
    }
    for (int i = 0; i < GRID; i++) {
        double x = -face->below + (i + 0.5) * dx;
        half[i] = pow(height(face, s->film, x), 3.0) / (12.0 * s->viscosity);
    }
    for (int k = 0; k < SWEEPS; k++)
        for (int i = 1; i < GRID; i++) {
            double source = 0.25 * s->speed * (h[i + 1] - h[i - 1]) * dx +
                            s->opening * dx * dx;
            double next =
                (half[i] * p[i + 1] + half[i - 1] * p[i - 1] - source) /
                (half[i] + half[i - 1]);
            p[i] = fmax(p[i] + 1.985 * (next - p[i]), cavity);
        }
    struct on_grid out = {0};
    for (int i = 0; i < GRID; i++) {
        double mean = 0.5 * (h[i] + h[i + 1]);
        out.support += 0.5 * (p[i] + p[i + 1]) * dx;
        out.friction +=
            0.5 * mean * (p[i + 1] - p[i]) * (s->speed > 0.0 ? 1.0 : -1.0);
    }
    return out;
}

/* A number from 0 to 1 that looks drawn. */
static double drawn(unsigned *state)
{
    *state = *state * 1664525u + 1013904223u;
    return (double)(*state >> 8) / 16777216.0;
}

static void draw(unsigned *seed, struct cg_face_curve *face,
                 struct cg_face_state *s)
{
    double d[11]; /* in this order, whatever the compiler */
    for (int i = 0; i < 11; i++)
        d[i] = drawn(seed);
    *face = cg_face_curve_of(d[0] < 0.75 ? CG_FACE_BARREL : CG_FACE_TAPER,
                             (0.8 + d[1]) * 1e-3, (2.0 + 20.0 * d[2]) * 1e-6,
                             0.3 + 0.6 * d[3]);
    *s = base;
    s->film = 1e-6 * pow(10.0, d[4]);
    s->speed = 40.0 * d[5] - 20.0;
    s->viscosity = 1e-3 * pow(10.0, 2.0 * d[6]);
    s->opening = (d[7] - 0.5) * 4e3 * fabs(s->speed) * s->film;
    s->pressure_above = d[8] > 0.4 ? 1e5 * pow(10.0, 2.0 * d[9]) : 1e5;
    s->pressure_below = d[8] < 0.8 ? 1e5 * pow(10.0, d[10]) : 1e5;
}

START_TEST(support_is_the_grids)
{
    unsigned seed = 7u + (unsigned)_i;
    int cavities = 0;
    for (int k = 0; k < 10; k++) {
        struct cg_face_curve face;
        struct cg_face_state s;
        struct cg_face_film film = {0};
        draw(&seed, &face, &s);
        cg_reynolds_film(&face, &s, &film);
        struct on_grid grid = solve(&face, &s);
        double width = face.above + face.below;
        double gas = fmin(s.pressure_above, s.pressure_below) * width;
        cavities += film.reform > film.rupture;
        check_within(film.support - gas, grid.support - gas,
                     0.01 * (grid.support - gas) + 1e-3 * gas, CHRISTOPHERSON);
        double couette = s.viscosity * fabs(s.speed) * film.inverse;
        check_within(film.friction - couette, grid.friction,
                     0.02 * (fabs(grid.friction) + couette), CHRISTOPHERSON);
    }
    ck_assert_int_gt(cavities, 0);
}
END_TEST

/* Up and down are the same for a face that is the same both ways. */
START_TEST(up_is_down_turned_over)
{
    struct cg_face_curve face =
        cg_face_curve_of(CG_FACE_BARREL, 1.2e-3, 8e-6, 0.3);
    struct cg_face_curve turned =
        cg_face_curve_of(CG_FACE_BARREL, 1.2e-3, 8e-6, 0.7);
    struct cg_face_state s = base, other;
    s.pressure_above = 9e5;
    s.opening = -2e-3;
    other = s;
    other.speed = -s.speed;
    other.pressure_above = s.pressure_below;
    other.pressure_below = s.pressure_above;
    struct cg_face_film a = {0}, b = {0};
    cg_reynolds_film(&face, &s, &a);
    cg_reynolds_film(&turned, &other, &b);
    check_close(a.support, b.support, 1e-9, "definition");
    check_close(a.friction, b.friction, 1e-9, "definition");
    check_close(a.inverse, b.inverse, 1e-9, "definition");
}
END_TEST

/* Whatever the search begins with, it ends at the same bounds. */
START_TEST(the_search_forgets_its_start)
{
    struct cg_face_curve face =
        cg_face_curve_of(CG_FACE_BARREL, 1.2e-3, 8e-6, 0.5);
    struct cg_face_state s = base;
    s.pressure_above = 3e5;
    struct cg_face_film first = {0};
    cg_reynolds_film(&face, &s, &first);
    ck_assert_double_gt(first.reform, first.rupture);
    for (double start = -1e-3; start < 1e-3; start += 7e-5) {
        struct cg_face_film film = {.rupture = start, .reform = -start};
        cg_reynolds_film(&face, &s, &film);
        check_close(film.support, first.support, 1e-9, "one answer");
        check_close(film.rupture, first.rupture, 1e-8, "one answer");
    }
}
END_TEST

/* Closing in carries more, without end; drawing off less, never below the
 * cavity's gas. */
START_TEST(support_falls_with_opening)
{
    unsigned seed = 99u;
    for (int k = 0; k < 300; k++) {
        struct cg_face_curve face;
        struct cg_face_state s;
        struct cg_face_film film = {0};
        draw(&seed, &face, &s);
        double before = INFINITY;
        double least = fmin(s.pressure_above, s.pressure_below) *
                       (face.above + face.below);
        for (int i = -8; i <= 8; i++) {
            s.opening = 1e-3 * i * i * i;
            cg_reynolds_film(&face, &s, &film);
            ck_assert_double_le(film.support, before * (1.0 + 1e-9));
            ck_assert_double_ge(film.support, least * (1.0 - 1e-9));
            ck_assert(isfinite(film.friction) && film.inverse > 0.0);
            ck_assert_double_le(film.rupture, film.reform);
            before = film.support;
        }
    }
}
END_TEST

/* At rest there is no wedge, and nothing jumps on the way through it. */
START_TEST(reversal_is_smooth)
{
    struct cg_face_curve face =
        cg_face_curve_of(CG_FACE_BARREL, 1.2e-3, 8e-6, 0.4);
    struct cg_face_state s = base;
    for (int i = -1; i <= 1; i++) {
        s.opening = 1e-3 * i;
        s.pressure_above = i == 1 ? 4e5 : 1e5;
        struct cg_face_film down = {0}, up = {0}, rest = {0};
        s.speed = 1e-9;
        cg_reynolds_film(&face, &s, &down);
        s.speed = -1e-9;
        cg_reynolds_film(&face, &s, &up);
        s.speed = 0.0;
        cg_reynolds_film(&face, &s, &rest);
        check_close(down.support, rest.support, 1e-6, "continuity");
        check_close(up.support, rest.support, 1e-6, "continuity");
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reynolds");
    TCase *all = tcase_create("reynolds");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, support_is_the_grids, 0, 6);
    tcase_add_test(all, up_is_down_turned_over);
    tcase_add_test(all, the_search_forgets_its_start);
    tcase_add_test(all, support_falls_with_opening);
    tcase_add_test(all, reversal_is_smooth);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
