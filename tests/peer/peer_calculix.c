/* Chains and stepper against a finite-element solver that shares nothing with
 * them: CalculiX, quadratic elements, implicit Euler in time.
 *
 * Its time steps are halved once and extrapolated to none, so what is left of
 * its error is of second order; ours is seen by halving the cells.  The two
 * may differ by those and no more. */
#define _POSIX_C_SOURCE 200809L /* chdir */
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "chain.h"
#include "constants.h"
#include "heat_fixture.h"

static const char source[] =
    "G. Dhondt and K. Wittig, CalculiX 2.20, quadratic elements in heat "
    "transfer";

enum { ELEMENTS = 40, PLACES = 3 };

/* A row of elements from `from` to `to`, `width` across: a plane wall of unit
 * depth, or a body of revolution. */
struct body {
    const char *name;
    enum cg_chain_shape shape;
    double from, to, width;          /* [m] */
    struct cg_solid solid;
    double start;                    /* [K] */
    double film[2], bath[2];         /* at the ends [W/(m2 K)] [K] */
    double side_film, side_bath;     /* on both flat sides */
    double time;                     /* [s] */
};

static const struct body bodies[] = {
    /* aluminium crown: gas on one face, oil on the other */
    {"slab", CG_CHAIN_PLANE, 0, 0.010, 0.001, {150, 2.5e6}, 400,
     {900, 2000}, {1500, 390}, 0, 0, 3.0},
    /* iron liner: gas inside, coolant outside */
    {"hollow_cylinder", CG_CHAIN_RADIAL, 0.043, 0.051, 0.001, {46, 3.6e6}, 350,
     {700, 8000}, {1100, 365}, 0, 0, 2.0},
    /* iron fin, held hot by its hub, in a draught; so thin that the gradient
     * across it, which a chain has not, is a thousandth of a kelvin */
    {"finned_disk", CG_CHAIN_RADIAL, 0.040, 0.075, 0.0003, {46, 3.6e6}, 310,
     {20000, 80}, {480, 310}, 8, 310, 60.0},
};

/* Nodes of an 8-node element row: three across at every element's edge, two at
 * its middle. */
static void write_mesh(FILE *out, const struct body *body)
{
    double cell = (body->to - body->from) / ELEMENTS;
    fprintf(out, "*NODE, NSET=NALL\n");
    for (int i = 0; i <= 2 * ELEMENTS; i++)
        for (int j = 0; j < 3; j++)
            if (i % 2 == 0 || j != 1)
                fprintf(out, "%d, %.12g, %.12g, 0\n", 3 * i + j + 1,
                        body->from + 0.5 * cell * i, 0.5 * j * body->width);
    fprintf(out, "*ELEMENT, TYPE=%s, ELSET=EALL\n",
            body->shape == CG_CHAIN_PLANE ? "CPE8" : "CAX8");
    for (int e = 0; e < ELEMENTS; e++) {
        int a = 6 * e + 1, b = a + 6;
        fprintf(out, "%d, %d, %d, %d, %d, %d, %d, %d, %d\n", e + 1, a, b, b + 2,
                a + 2, a + 3, b + 1, a + 5, a + 1);
    }
    fprintf(out, "*NSET, NSET=PLACES\n1, %d, %d\n", 3 * ELEMENTS + 1,
            6 * ELEMENTS + 1);
}

static void write_input(FILE *out, const struct body *body, int steps)
{
    write_mesh(out, body);
    fprintf(out,
            "*MATERIAL, NAME=METAL\n*CONDUCTIVITY\n%.12g\n"
            "*DENSITY\n1\n*SPECIFIC HEAT\n%.12g\n"
            "*SOLID SECTION, ELSET=EALL, MATERIAL=METAL\n%s"
            "*INITIAL CONDITIONS, TYPE=TEMPERATURE\nNALL, %.12g\n"
            "*STEP, INC=%d\n*HEAT TRANSFER, DIRECT\n%.15g, %.15g\n",
            body->solid.conductivity, body->solid.volume_capacity,
            body->shape == CG_CHAIN_PLANE ? "1\n" : "", body->start,
            2 * steps, body->time / steps, body->time);
    fprintf(out, "*FILM\n1, F4, %.12g, %.12g\n%d, F2, %.12g, %.12g\n",
            body->bath[0], body->film[0], ELEMENTS, body->bath[1],
            body->film[1]);
    if (body->side_film > 0)
        for (int face = 1; face <= 3; face += 2)
            fprintf(out, "EALL, F%d, %.12g, %.12g\n", face, body->side_bath,
                    body->side_film);
    fprintf(out, "*NODE PRINT, NSET=PLACES, FREQUENCY=%d\nNT\n*END STEP\n",
            steps);
}

/* The last three temperatures in its answer. */
static void read_answer(const char *file, double t[PLACES])
{
    char line[256];
    int node, count = 0;
    double value;
    FILE *in = fopen(file, "r");
    ck_assert_msg(in != NULL, "CalculiX left no %s", file);
    while (fgets(line, sizeof line, in) != NULL)
        if (sscanf(line, "%d %lf", &node, &value) == 2)
            t[count++ % PLACES] = value;
    fclose(in);
    ck_assert_msg(count > 0 && count % PLACES == 0, "%d values in %s", count,
                  file);
}

static void theirs(const struct body *body, int steps, double t[PLACES])
{
    char name[64], file[80], command[256];
    ck_assert_int_eq(chdir(CG_PEER_FOLDER), 0); /* no shell sees its name */
    snprintf(name, sizeof name, "%s_%d", body->name, steps);
    snprintf(file, sizeof file, "%s.inp", name);
    FILE *out = fopen(file, "w");
    ck_assert_msg(out != NULL, "cannot write %s", file);
    write_input(out, body, steps);
    ck_assert_int_eq(fclose(out), 0);
    snprintf(command, sizeof command,
             "rm -f %s.dat && OMP_NUM_THREADS=1 ccx -i %s >%s.log", name, name,
             name);
    ck_assert_msg(system(command) == 0, "%s", command);
    snprintf(file, sizeof file, "%s.dat", name);
    read_answer(file, t);
}

/* Film area at each end of the row. */
static double end_area(const struct body *body, int end)
{
    if (body->shape == CG_CHAIN_PLANE)
        return body->width;
    return 2 * CG_PI * (end == 0 ? body->from : body->to) * body->width;
}

static void ours(const struct body *body, size_t cells, double t[PLACES])
{
    struct cg_chain chain = {.shape = body->shape,
                             .from = body->from, .to = body->to,
                             .width = body->width, .solid = body->solid,
                             .cells = cells, .nodes_on_faces = true};
    struct cg_network *n = NULL;
    ck_assert_int_eq(cg_network_create(&n, NULL), CG_OK);
    ck_assert_int_eq(cg_chain_add(n, "row", &chain, NULL), CG_OK);
    for (int end = 0; end < 2; end++)
        cg_network_add_bath(n, end == 0 ? 0 : cells,
                            body->film[end] * end_area(body, end),
                            body->bath[end], CG_SIDE_GAS, NULL, NULL);
    if (body->side_film > 0)
        for (size_t i = 0; i <= cells; i++)
            cg_network_add_bath(
                n, i, 2 * body->side_film * cg_chain_flat_area(&chain, i),
                body->side_bath, CG_SIDE_AIR, NULL, NULL);
    double *all = malloc((cells + 1) * sizeof *all);
    ck_assert_ptr_nonnull(all);
    for (size_t i = 0; i <= cells; i++)
        all[i] = body->start;
    cg_network_free(network);
    network = n;
    make_stepper();
    struct cg_step_control control = {.tolerance = 1e-6};
    run(NULL, 0, body->time, &control, all, NULL);
    t[0] = all[0];
    t[1] = all[cells / 2];
    t[2] = all[cells];
    free(all);
}

START_TEST(as_by_finite_elements)
{
    const struct body *body = &bodies[_i];
    double coarse[PLACES], fine[PLACES], half[PLACES], full[PLACES];
    theirs(body, 150, coarse);
    theirs(body, 300, fine);
    ours(body, 80, half);
    ours(body, 160, full);
    for (int i = 0; i < PLACES; i++) {
        double euler = fine[i] - coarse[i]; /* its error that is left */
        double want = fine[i] + euler;
        double allowed =
            0.05 * fabs(euler) + 2 * fabs(full[i] - half[i]) + 2e-3;
        printf("%s %d: %.4f K, by elements %.4f K, allowed %.4f\n", body->name,
               i, full[i], want, allowed);
        check_within(full[i], want, allowed, source);
        ck_assert_double_gt(fabs(full[i] - body->start), 20 * allowed);
    }
}
END_TEST

int main(void)
{
    if (system("command -v ccx >/dev/null 2>&1") != 0) {
        printf("skipped: ccx not installed\n");
        return 77;
    }
    Suite *suite = suite_create("conduction, finite elements");
    TCase *tcase = tcase_create("conduction");
    tcase_set_timeout(tcase, 120);
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_loop_test(tcase, as_by_finite_elements, 0,
                        (int)(sizeof bodies / sizeof *bodies));
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
