/* The closed part of the cycle, intake closing to exhaust opening, solved
 * again by a Runge-Kutta scheme of eighth order (GSL, Prince and Dormand) in
 * another form: internal energy is integrated, temperature found from it; the
 * crank's motion, the burn and the heat transfer are written out here. */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <math.h>
#include <stdlib.h>

#include "../cycle_case.h"
#include "check_close.h"
#include "constants.h"
#include "cycle_pass.h"

static const char source[] =
    "M. Galassi et al., GNU Scientific Library, rk8pd on the energy form";

enum { ENERGY, WORK, HEAD, PISTON, LINER, UNKNOWNS };

struct closed {
    const struct cg_cycle_input *input;
    const struct cg_zone *zone;
    double mass, burned, fresh;            /* at intake closing [kg] */
    double p_ref, v_ref, t_ref;            /* there, for Woschni */
    bool burning;
};

static double volume_at(const struct closed *c, double deg, double *depth)
{
    const struct cg_crank *k = &c->input->crank;
    double a = deg * CG_PI / 180, throw = k->stroke / 2;
    double s = throw * (1 - cos(a)) + k->rod -
               sqrt(k->rod * k->rod - pow(throw * sin(a), 2));
    double bore_area = CG_PI * k->bore * k->bore / 4;
    *depth = s;
    return bore_area * (k->stroke / (k->compression_ratio - 1) + s);
}

static double burned_share(const struct closed *c, double deg)
{
    const double a = -log(0.001); /* 99.9 % at the end of the burn */
    double at10 = cbrt(-log(0.9) / a), at50 = cbrt(-log(0.5) / a),
           at90 = cbrt(-log(0.1) / a);
    double length = c->input->burn_duration_deg / (at90 - at10);
    double t = (deg - c->input->burn50_deg) / length + at50;
    return t <= 0 ? 0 : 1 - exp(-a * t * t * t);
}

/* Temperature of the charge whose energy is `energy`, by bisection. */
static double temperature_of(const struct closed *c, double energy,
                             double burned)
{
    double low = 150, high = 6000;
    while (high - low > 1e-11 * high) {
        double t = (low + high) / 2;
        double u = (c->mass - burned) * cg_mixture_energy(&c->zone->fresh, t) +
                   burned * cg_mixture_energy(&c->zone->burned, t);
        if (u > energy)
            high = t;
        else
            low = t;
    }
    return (low + high) / 2;
}

static void state_at(const struct closed *c, double deg, double energy,
                     double *t, double *p)
{
    double depth;
    double burned = c->burned + c->fresh * burned_share(c, deg);
    double mr = (c->mass - burned) * c->zone->fresh.gas_constant +
                burned * c->zone->burned.gas_constant;
    *t = temperature_of(c, energy, burned);
    *p = mr * *t / volume_at(c, deg, &depth);
}

static double woschni(const struct closed *c, double v, double t, double p)
{
    const struct cg_cycle_input *in = c->input;
    double swept = CG_PI / 4 * pow(in->crank.bore, 2) * in->crank.stroke;
    double w = 2.28 * 2 * in->crank.stroke * in->speed;
    if (c->burning)
        w += 3.24e-3 * swept * c->t_ref / (c->p_ref * c->v_ref) *
             fmax(p - c->p_ref * pow(c->v_ref / v, 1.32), 0);
    return in->heat_factor * 3.26 * pow(in->crank.bore, -0.2) *
           pow(p / 1e3, 0.8) * pow(t, -0.53) * pow(w, 0.8);
}

static int rates(double deg, const double y[], double dy[], void *params)
{
    const struct closed *c = params;
    const struct cg_cycle_input *in = c->input;
    double depth, t, p, bore_area = CG_PI / 4 * pow(in->crank.bore, 2);
    double v = volume_at(c, deg, &depth);
    state_at(c, deg, y[ENERGY], &t, &p);
    double a = deg * CG_PI / 180, throw = in->crank.stroke / 2;
    double slope = throw * sin(a) +
                   throw * throw * sin(a) * cos(a) /
                       sqrt(pow(in->crank.rod, 2) - pow(throw * sin(a), 2));
    double seconds = 1 / (360 * in->speed);
    double h = woschni(c, v, t, p) * seconds;
    dy[WORK] = p * bore_area * slope * CG_PI / 180;
    dy[HEAD] =
        h * in->chamber_area_ratio * bore_area * (t - in->head_temperature);
    dy[PISTON] = h * bore_area * (t - in->piston_temperature);
    dy[LINER] =
        h * CG_PI * in->crank.bore * depth * (t - in->liner_temperature);
    dy[ENERGY] = -dy[WORK] - dy[HEAD] - dy[PISTON] - dy[LINER];
    return GSL_SUCCESS;
}

static void solve(struct closed *c, double from, double to, double *y)
{
    gsl_odeiv2_system system = {rates, NULL, UNKNOWNS, c};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &system, gsl_odeiv2_step_rk8pd, 0.1, 1e-8, 1e-11);
    ck_assert_ptr_nonnull(driver);
    ck_assert_int_eq(gsl_odeiv2_driver_apply(driver, &from, to, y),
                     GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
}

/* Ours at step `step_deg` against the other's; the largest difference of work,
 * over the gross work. */
static double compare(double step_deg, double tolerance)
{
    struct cg_cycle_input input = rated();
    struct cg_pass *pass = malloc(sizeof *pass);
    struct cg_cycle *cycle = malloc(sizeof *cycle);
    struct cg_error error;
    ck_assert(pass != NULL && cycle != NULL);
    input.step_deg = step_deg;
    cg_pass_set(pass, &input);
    ck_assert_msg(cg_pass_settle(pass, cycle, &error) == CG_OK, "%s",
                  error.text);

    const double *start = pass->edge[CG_LEG_COMPRESSION];
    const double *spark = pass->edge[CG_LEG_BURN];
    const double *open = pass->edge[CG_LEG_BLOW_DOWN];
    double from = pass->leg[CG_LEG_COMPRESSION].from_deg, depth, t, p;
    struct closed c = {.input = &input, .zone = &pass->zone,
                       .mass = start[CG_ZONE_MASS],
                       .burned = start[CG_ZONE_BURNED],
                       .t_ref = start[CG_ZONE_TEMPERATURE]};
    c.fresh = c.mass - c.burned;
    c.v_ref = volume_at(&c, from, &depth);
    double y[UNKNOWNS] = {
        c.fresh * cg_mixture_energy(&c.zone->fresh, c.t_ref) +
        c.burned * cg_mixture_energy(&c.zone->burned, c.t_ref)};
    state_at(&c, from, y[ENERGY], &t, &c.p_ref);
    check_close(pass->zone.side.reference_pressure, c.p_ref, 1e-9, source);

    double burn = pass->leg[CG_LEG_BURN].from_deg;
    solve(&c, from, burn, y);
    state_at(&c, burn, y[ENERGY], &t, &p);
    check_close(spark[CG_ZONE_TEMPERATURE], t, tolerance, source);
    c.burning = true;
    solve(&c, burn, input.exhaust_open_deg, y);
    state_at(&c, input.exhaust_open_deg, y[ENERGY], &t, &p);
    check_close(open[CG_ZONE_TEMPERATURE], t, tolerance, source);
    double work = open[CG_ZONE_WORK] - start[CG_ZONE_WORK];
    check_close(work, y[WORK], tolerance, source);
    check_close(open[CG_ZONE_HEAD] - start[CG_ZONE_HEAD], y[HEAD], tolerance,
                source);
    check_close(open[CG_ZONE_PISTON] - start[CG_ZONE_PISTON], y[PISTON],
                tolerance, source);
    check_close(open[CG_ZONE_LINER] - start[CG_ZONE_LINER], y[LINER],
                tolerance, source);
    free(pass);
    free(cycle);
    return fabs(work / y[WORK] - 1);
}

START_TEST(closed_cycle_by_a_scheme_of_eighth_order)
{
    double coarse = compare(1.0, 1e-5), fine = compare(0.25, 1e-7);
    printf("work: %.1e apart at steps of 1 deg, %.1e at 0.25 deg\n", coarse,
           fine);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("closed cycle, independent solver");
    TCase *tcase = tcase_create("closed cycle");
    gsl_set_error_handler_off();
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, closed_cycle_by_a_scheme_of_eighth_order);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
