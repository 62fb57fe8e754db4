/* The ring pack solved a second time by other means: equations written out
 * again from ring_pack.h, rings that land on stiff springs instead of being
 * stopped, and GSL's explicit Runge-Kutta stepper, of many small steps. */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include "check_close.h"
#include "pack_of.h"

#define CONTACT 2e9   /* stiffness of a flank [N/m] */

static struct cg_ring_pack pack;
static struct cg_pack_record record[CG_PACK_NODES];

/* Orifice by the book, both ways; downhill positive. */
static double gap_flow(double area, double t_a, double t_b, double a, double b)
{
    double g = pack.gas.gamma, up = a > b ? a : b, down = a > b ? b : a;
    double r = down / up;
    double critical = pow(2.0 / (g + 1.0), g / (g - 1.0));
    if (r < critical)
        r = critical;
    double square = 2.0 * g / (g - 1.0) *
                    (pow(r, 2.0 / g) - pow(r, (g + 1.0) / g));
    double flow = area * up * sqrt(square > 0.0 ? square : 0.0) /
                  sqrt(pack.gas.gas_constant * (a > b ? t_a : t_b));
    return a > b ? flow : -flow;
}

static double flank_flow(const struct cg_pack_ring *ring, double height,
                         double temperature, double a, double b)
{
    double r_t = pack.gas.gas_constant * temperature;
    double laminar = height * height * height * ring->flank_perimeter *
                     fabs(a * a - b * b) /
                     (24.0 * ring->viscosity * r_t * ring->flank_width);
    double choke = fabs(gap_flow(pack.discharge * height *
                                     ring->flank_perimeter,
                                 temperature, temperature, a, b));
    if (!(choke > 0.0))
        return 0.0;
    double q = 2.0 * laminar /
               (1.0 + sqrt(1.0 + 4.0 * laminar * laminar / (choke * choke)));
    return a > b ? q : -q;
}

static double mean_of(double a, double b)
{
    return 2.0 / 3.0 * (a * a + a * b + b * b) / (a + b);
}

/* y: masses, lifts, speeds, blow-by. */
static int equations(double time, const double *y, double *dydt, void *context)
{
    (void)context;
    double angle = fmod(time * 360.0 * pack.speed, 720.0);
    if (angle > 360.0)
        angle -= 720.0;
    struct cg_pack_node at;
    cg_pack_at(&pack, angle, &at);
    double pressure[5] = {at.pressure, 0, 0, 0, pack.crankcase_pressure};
    const double *t = pack.temperature;
    for (int v = 0; v < 3; v++)
        pressure[v + 1] = y[v] * pack.gas.gas_constant * t[v + 1] /
                       pack.volume[v];
    double in[5] = {0.0};
    for (int k = 0; k < 2; k++) {
        const struct cg_pack_ring *ring = &pack.ring[k];
        double above = pressure[2 * k], groove = pressure[2 * k + 1],
               below = pressure[2 * k + 2];
        double x = y[3 + k], v = y[5 + k];
        double open = fmin(fmax(x, 0.0), ring->travel);
        double pressed = groove + ring->tension - 0.5 * (above + below);
        double gap = gap_flow(pack.discharge * at.gap[k] * at.clearance[k],
                              t[2 * k], t[2 * k + 2], above, below);
        double over = flank_flow(ring, ring->travel - open + pack.leak,
                                 t[2 * k + 1], above, groove);
        double under =
            flank_flow(ring, open + pack.leak, t[2 * k + 1], groove, below);
        if (pressed < 0.0) {
            double z = -pressed / (ring->stiffness * at.clearance[k]);
            double area = pack.discharge * ring->perimeter *
                          at.clearance[k] * z * z / (1.0 + z * z);
            gap += gap_flow(area, t[2 * k], t[2 * k + 2], above, below);
        }
        in[2 * k] -= gap + over;
        in[2 * k + 1] += over - under;
        in[2 * k + 2] += gap + under;

        double area = ring->flank_perimeter * ring->flank_width;
        double force = area * (mean_of(groove, below) -
                               mean_of(above, groove)) +
                       ring->perimeter * ring->exposed * (below - above) +
                       pack.friction * at.slide * fmax(pressed, 0.0) *
                           ring->perimeter * ring->face_width +
                       ring->mass * at.acceleration;
        double low = open + pack.cushion;
        double high = ring->travel - open + pack.cushion;
        force -= ring->viscosity * pow(ring->flank_width, 3) *
                 ring->flank_perimeter *
                 (1.0 / (low * low * low) + 1.0 / (high * high * high)) * v;
        double damping = 2.0 * sqrt(CONTACT * ring->mass);
        if (x < 0.0)
            force += fmax(-CONTACT * x - damping * v, 0.0);
        if (x > ring->travel)
            force -= fmax(CONTACT * (x - ring->travel) + damping * v, 0.0);
        dydt[3 + k] = v;
        dydt[5 + k] = force / ring->mass;
    }
    for (int v = 0; v < 3; v++)
        dydt[v] = in[v + 1];
    dydt[7] = in[4];
    return GSL_SUCCESS;
}

/* Two cycles by GSL from the settled state at 0 degrees; the second's land
 * pressure every 20 degrees and blow-by. */
static void peer(const double *start, double land[36], double *blow_by)
{
    enum { N = 8 };
    gsl_odeiv2_system system = {equations, NULL, N, NULL};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &system, gsl_odeiv2_step_rkf45, 1e-8, 1e-13, 1e-6);
    double y[N], time = 0.0;
    for (int i = 0; i < N; i++)
        y[i] = start[i];
    for (int i = 0; i < 72; i++) {
        int status = gsl_odeiv2_driver_apply(
            driver, &time, 20.0 * (i + 1) / (360.0 * pack.speed), y);
        ck_assert_msg(status == GSL_SUCCESS, "%s", gsl_strerror(status));
        if (i == 35)
            y[7] = 0.0;
        if (i >= 36)
            land[i - 36] = y[1] * pack.gas.gas_constant *
                           pack.temperature[CG_PACK_LAND] / pack.volume[1];
    }
    *blow_by = y[7];
    gsl_odeiv2_driver_free(driver);
}

START_TEST(the_same_by_gsl)
{
    static const struct {
        double speed, top, second;
    } row[] = {{40.0, 4e-4, 3e-4}, {110.0, 4e-4, 5e-4}};
    struct cg_pack_state state;
    struct cg_pack_settled settled;
    struct cg_error error = {0};
    struct cg_pack_control fine = cg_pack_control_usual;
    double land[36], blow_by;
    fine.mass_tolerance *= 0.01;
    fine.lift_tolerance *= 0.01;
    pack_set(&pack, row[_i].speed, row[_i].top, row[_i].second);
    ck_assert_int_eq(cg_pack_settle(&pack, &fine, false, &state, &settled,
                                    record, &error),
                     CG_OK);
    ck_assert_int_eq(settled.period, 1);
    double start[8] = {state.mass[0], state.mass[1], state.mass[2],
                       state.lift[0], state.lift[1], 0.0, 0.0, 0.0};
    peer(start, land, &blow_by);
    for (int i = 0; i < 36; i++) {
        int node = (380 + 20 * i) % 720;
        check_close(record[node].pressure[CG_PACK_LAND], land[i], 2e-4,
                    "the peer's");
    }
    check_close(settled.cycle.to_crankcase, blow_by, 2e-4, "the peer's");
}
END_TEST

int main(void)
{
    gsl_set_error_handler_off();
    Suite *suite = suite_create("ring pack by another solver");
    TCase *tcase = tcase_create("all");
    tcase_set_timeout(tcase, 200);
    tcase_add_loop_test(tcase, the_same_by_gsl, 0, 2);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
