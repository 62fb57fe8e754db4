/* The smallest safe cold gap of one engine over one duty, by the physics library
 * alone: the same answer as `coldgap find example.cfg`. */
#include <coldgap/coldgap.h>

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

/* A curve over temperatures in degrees C, its values in `unit`. */
static void set_curve(struct cg_curve *curve, int points,
                      const double *celsius, const double *value, double unit)
{
    curve->points = points;
    for (int i = 0; i < points; i++) {
        curve->temperature[i] = celsius[i] + 273.15;
        curve->value[i] = value[i] * unit;
    }
}

#define POINTS(array) ((int)(sizeof(array) / sizeof(array)[0]))
#define CURVE(curve, celsius, value, unit)                                   \
    set_curve(curve, POINTS(celsius), celsius, value, unit)

/* The metals' values are those of configs/materials/; their sources stand
 * there. */
static struct cg_material plain_steel(void)
{
    static const double at[] = {20, 100, 200, 300, 400};
    static const double expansion[] = {11.5, 12.1, 12.7, 13.2, 13.6};
    static const double conductivity[] = {45.1, 45.1, 44.1, 41.9, 39.4};
    static const double capacity[] = {461, 479, 499, 517, 536};
    static const double modulus[] = {211, 206.5, 199.5, 192.5, 184};
    struct cg_material metal = {.name = "plain_steel", .density = 7840,
                                .poisson = 0.29, .hot_limit = 523.15};
    CURVE(&metal.expansion, at, expansion, 1e-6);
    CURVE(&metal.conductivity, at, conductivity, 1.0);
    CURVE(&metal.heat_capacity, at, capacity, 1.0);
    CURVE(&metal.modulus, at, modulus, 1e9);
    return metal;
}

static struct cg_material alloy_2618(void)
{
    static const double expansion_at[] = {100, 200, 300, 400};
    static const double expansion[] = {22.2, 23.0, 23.9, 24.6};
    static const double conductivity_at[] = {20, 200, 300};
    static const double conductivity[] = {150, 163, 168};
    static const double capacity_at[] = {20, 100, 200, 300, 400};
    static const double capacity[] = {875, 915, 960, 1000, 1045};
    static const double modulus_at[] = {20, 100, 200, 300, 350};
    static const double modulus[] = {74, 71.5, 67, 60, 56};
    struct cg_material metal = {.name = "2618", .density = 2760,
                                .poisson = 0.33, .hot_limit = 533.15};
    CURVE(&metal.expansion, expansion_at, expansion, 1e-6);
    CURVE(&metal.conductivity, conductivity_at, conductivity, 1.0);
    CURVE(&metal.heat_capacity, capacity_at, capacity, 1.0);
    CURVE(&metal.modulus, modulus_at, modulus, 1e9);
    return metal;
}

static struct cg_material grey_iron(void)
{
    static const double expansion_at[] = {100, 200, 400};
    static const double expansion[] = {10.5, 11.7, 13.0};
    static const double conductivity_at[] = {100, 200, 300, 400};
    static const double conductivity[] = {48.5, 47.5, 46.5, 45.0};
    static const double at[] = {20, 200, 400};
    static const double capacity[] = {450, 480, 545};
    static const double modulus[] = {110, 105, 97};
    struct cg_material metal = {.name = "grey_iron", .density = 7200,
                                .poisson = 0.26, .hot_limit = 673.15};
    CURVE(&metal.expansion, expansion_at, expansion, 1e-6);
    CURVE(&metal.conductivity, conductivity_at, conductivity, 1.0);
    CURVE(&metal.heat_capacity, at, capacity, 1.0);
    CURVE(&metal.modulus, at, modulus, 1e9);
    return metal;
}

/* A stretch at a held load, the speed in a straight line. */
static void add_segment(struct cg_case *c, double seconds, double rpm,
                        double rpm_end, double load)
{
    c->duty.segment[c->duty.segments++] = (struct cg_segment){
        .seconds = seconds, .speed = rpm / 60.0, .speed_end = rpm_end / 60.0,
        .load = load, .load_end = load, .heat_factor = 1.0,
        .coolant_temperature = NAN /* as in c->cooling */};
}

static void fill(struct cg_case *c)
{
    cg_case_begin(c);
    c->engine.bore = 85.3e-3;
    c->engine.stroke = 87.7e-3;
    c->engine.speed = 6800.0 / 60.0;
    c->charge.boost = 120e3;
    c->fuel.lambda = 0.82;
    c->bore.seat = CG_SEAT_PARENT;
    c->duty.start = CG_START_SETTLED;
    add_segment(c, 2.0, 4800, 4800, 0.2);
    add_segment(c, 12.0, 4800, 6800, 1.0);
    c->piston_material = alloy_2618();
    for (int ring = 0; ring < CG_RINGS; ring++)
        c->ring_material[ring] = plain_steel();
    c->bore_material = grey_iron();
}

int main(void)
{
    struct cg_case c;
    struct cg_duty_run *run = NULL;
    struct cg_answer answer;
    struct cg_error error;

    gsl_set_error_handler_off();
    fill(&c);
    cg_law_correlate(&c);
    enum cg_status status = cg_case_ready(&c, &error);
    if (status == CG_OK)
        status = cg_duty_run_create(&c, &run, &error);
    if (status == CG_OK)
        status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error);
    cg_duty_run_free(run);
    if (status != CG_OK) {
        fprintf(stderr, "gap: %s\n", error.text);
        return 1;
    }
    printf("Of this duty alone; what else the engine must survive may need "
           "more.\n");
    printf("closure %.6f mm\ncold gap %.3f mm\nfile to %.3f mm (%s)\n",
           answer.extremes.closure * 1e3, answer.top.cold_gap * 1e3,
           answer.file_to_top.file_to * 1e3,
           cg_advice_word(answer.file_to_top.from));
    printf("An estimate, not a warranty; where the ring or piston maker "
           "gives a larger minimum gap, file to that.\n");
    return 0;
}
