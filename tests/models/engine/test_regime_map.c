#include <math.h>

#include "check_close.h"
#include "regime_map.h"

/* A path that winds through all channels but heat, which it leaves open, and
 * oil, which stands. */
static void row_at(size_t i, struct cg_course_row *row)
{
    double t = 0.02 * (double)i;
    *row = (struct cg_course_row){
        t,
        {70.0 + 30.0 * sin(t), 0.5 + 0.5 * sin(0.7 * t), NAN,
         360.0 + 8.0 * sin(0.05 * t), 0.9 + 0.1 * cos(t), 15.0 + 5.0 * sin(t),
         380.0, 310.0 + 15.0 * sin(0.2 * t), NAN}};
}

static void begin(struct cg_course **list, struct cg_course **course,
                  struct cg_regime_map *map)
{
    *map = (struct cg_regime_map){.nodes = 0};
    ck_assert_int_eq(cg_course_create(list, 5000, course, NULL), CG_OK);
    for (; (*course)->rows < 5000; (*course)->rows++)
        row_at((*course)->rows, &(*course)->row[(*course)->rows]);
    ck_assert_int_eq(cg_regime_map_begin(*course, 100.0, 1.0, map, NULL),
                     CG_OK);
}

/* Weights are those of a mean whose values are the place's own: what runs
 * straight with the channels is exact. */
START_TEST(a_place_is_the_mean_of_its_corners)
{
    struct cg_course *list = NULL, *course = NULL;
    struct cg_regime_map map;
    begin(&list, &course, &map);
    ck_assert_int_eq(map.cells[CG_CHANNEL_HEAT], 0);
    ck_assert_int_eq(map.cells[CG_CHANNEL_OIL], 0);
    for (size_t i = 0; i < course->rows; i++) {
        struct cg_map_place place;
        double weight = 0.0, sum[CG_CHANNELS] = {0.0};
        ck_assert_int_eq(
            cg_regime_map_find(&map, course->row[i].of, &place, NULL), CG_OK);
        ck_assert_uint_le(place.corners, 7); /* six channels move */
        for (size_t c = 0; c < place.corners; c++) {
            double of[CG_CHANNELS];
            cg_regime_map_node(&map, place.node[c], of);
            ck_assert_double_gt(place.weight[c], 0.0);
            weight += place.weight[c];
            for (int k = 0; k < CG_CHANNELS; k++)
                sum[k] += place.weight[c] * of[k];
        }
        ck_assert_double_eq_tol(weight, 1.0, 1e-12);
        for (int k = 0; k < CG_CHANNELS; k++)
            if (k != CG_CHANNEL_HEAT && k != CG_CHANNEL_SOAK)
                ck_assert_double_eq_tol(sum[k], course->row[i].of[k], 1e-5);
        ck_assert(isnan(sum[CG_CHANNEL_HEAT]));
    }
    /* half of the rows at most; all corners of such a grid are a million */
    ck_assert_uint_lt(map.nodes, 2500);
    ck_assert_uint_gt(map.nodes, 20);
    cg_regime_map_free(&map);
    cg_courses_free(list);
}
END_TEST

/* A bend in one channel is missed by no more than the square of half a cell,
 * and from cell to cell nothing jumps. */
START_TEST(values_between_corners_go_on)
{
    struct cg_course *list = NULL, *course = NULL;
    struct cg_regime_map map;
    double before = NAN;
    begin(&list, &course, &map);
    for (size_t i = 0; i < course->rows; i++) {
        struct cg_map_place place;
        double square = 0.0, load = course->row[i].of[CG_CHANNEL_LOAD];
        ck_assert_int_eq(
            cg_regime_map_find(&map, course->row[i].of, &place, NULL), CG_OK);
        for (size_t c = 0; c < place.corners; c++) {
            double of[CG_CHANNELS];
            cg_regime_map_node(&map, place.node[c], of);
            square +=
                place.weight[c] * of[CG_CHANNEL_LOAD] * of[CG_CHANNEL_LOAD];
        }
        double half = 0.5 * map.width[CG_CHANNEL_LOAD];
        ck_assert_double_ge(square, load * load - 1e-9);
        ck_assert_double_le(square, load * load + half * half + 1e-9);
        if (i > 0)
            ck_assert_double_le(fabs(square - before), 0.02);
        before = square;
    }
    cg_regime_map_free(&map);
    cg_courses_free(list);
}
END_TEST

/* Mixture alone has a corner where it bends; half burned before and after top
 * dead centre, the corners are those of the ends. */
START_TEST(corners_where_it_bends)
{
    struct cg_course *list = NULL, *course = NULL;
    struct cg_regime_map map = {.nodes = 0};
    const double of[CG_CHANNELS] = {70.0, 0.5, NAN, 360.0, 0.83,
                                    -3.0, 380.0, 310.0, NAN};
    ck_assert_int_eq(cg_course_hold(of, &list, &course, NULL), CG_OK);
    course->row[1].of[CG_CHANNEL_LAMBDA] = 1.1;
    course->row[1].of[CG_CHANNEL_BURN50] = 12.0;
    ck_assert_int_eq(cg_regime_map_begin(course, 100.0, 1.0, &map, NULL),
                     CG_OK);
    double cells = (1.0 - map.low[CG_CHANNEL_LAMBDA]) /
                   map.width[CG_CHANNEL_LAMBDA];
    ck_assert_double_eq_tol(cells, round(cells), 1e-9);
    ck_assert_double_eq(map.low[CG_CHANNEL_BURN50], -3.0);
    ck_assert_double_eq_tol(map.cells[CG_CHANNEL_BURN50] *
                                map.width[CG_CHANNEL_BURN50],
                            15.0, 1e-12);
    cg_regime_map_free(&map);
    cg_courses_free(list);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("regime_map");
    TCase *tests = tcase_create("regime_map");
    tcase_add_test(tests, a_place_is_the_mean_of_its_corners);
    tcase_add_test(tests, values_between_corners_go_on);
    tcase_add_test(tests, corners_where_it_bends);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
