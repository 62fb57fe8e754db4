/* What does not fit with the way the charge is fired. */
#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "case_complaint.h"
#include "operating.h"
#include "outside.h"

static bool knocks(const struct cg_duty_case *duty)
{
    bool declared = false;
    for (int i = 0; i < duty->segments; i++)
        declared = declared || duty->segment[i].knock_heat > 0.0;
    return declared;
}

static bool by_compression(const struct cg_case *c)
{
    return c->combustion.ignition == CG_IGNITION_COMPRESSION;
}

static void check_fuel(const struct cg_case *c, struct cg_complaints *list)
{
    bool diesel = strcmp(c->fuel.name, "diesel") == 0;
    cg_complain_if(
        list, by_compression(c) && !diesel, "fuel.name", "combustion.ignition",
        NAN, "compression ignition burns diesel here; allowed: \"diesel\"");
    cg_complain_if(list, !by_compression(c) && diesel, "fuel.name",
                   "combustion.ignition", NAN,
                   "diesel is fired by compression; allowed with "
                   "combustion.ignition = \"compression\"");
}

#define SPARK_RATIO 18.0
#define COMPRESSION_RATIO 11.0
#define COMPRESSION_LAMBDA 1.15
/* Common practice, no source: above the one ratio nobody fires by spark, below
 * the other no diesel starts; leaner no spark's flame runs, richer a diesel's
 * smokes. */
static void check_charge(const struct cg_case *c, struct cg_complaints *list)
{
    bool compression = by_compression(c);
    double ratio = c->engine.compression_ratio, lambda = c->fuel.lambda;
    cg_complain_if(list, !compression && ratio > SPARK_RATIO,
                   "engine.compression_ratio", "combustion.ignition",
                   SPARK_RATIO, "with a spark must be at most");
    cg_complain_if(list, compression && ratio < COMPRESSION_RATIO,
                   "engine.compression_ratio", "combustion.ignition",
                   COMPRESSION_RATIO,
                   "nothing fires by compression so low, must be at least");
    cg_complain_if(list, !compression && lambda > cg_lambda_most(c),
                   "fuel.lambda", "combustion.ignition", cg_lambda_most(c),
                   "no spark fires so lean, must be at most");
    cg_complain_if(list, compression && lambda < COMPRESSION_LAMBDA,
                   "fuel.lambda", "combustion.ignition", COMPRESSION_LAMBDA,
                   "a diesel smokes so rich, must be at least");
}

/* What fins carry off was only ever held to engines that a spark fires. */
static void check_cooling(const struct cg_case *c, struct cg_complaints *list)
{
    cg_complain_if(list, by_compression(c) && cg_air_cooled(c),
                   "cooling.medium", "combustion.ignition", NAN,
                   "a diesel that air cools is not modelled; allowed: coolant");
}

/* A diesel's rated speed [1/s] and mean piston speed [m/s].  Past either the
 * laws of delay, burn, heat and friction stand on nothing measured: the fuel
 * has not fired when the piston is far down already.  The fastest of
 * competition turn 5500 rpm, at 15 m/s; common practice, no source. */
#define FASTEST (6000.0 / 60.0)
#define PISTON_FASTEST 20.0
static void check_speed(const struct cg_case *c, struct cg_complaints *list)
{
    double speed = fmin(FASTEST, 0.5 * PISTON_FASTEST / c->engine.stroke);
    cg_complain_if(list, by_compression(c) && c->engine.speed > speed,
                   "engine.speed", "combustion.ignition", speed,
                   "no diesel turns so fast, with this stroke must be at most");
}

static void check_duties(const struct cg_case *c, struct cg_complaints *list)
{
    bool besides = false;
    /* a list for engines that air cools has knock in it, and is not asked */
    for (int i = 0; i < c->survive.duties; i++)
        besides = besides || knocks(&c->survive.duty[i]);
    cg_complain_if(
        list, by_compression(c) && knocks(&c->duty), "duty.name",
        "combustion.ignition", NAN,
        "this duty declares knock, which is of spark ignition; allowed: "
        "one without knock_heat");
    cg_complain_if(list, by_compression(c) && !cg_air_cooled(c) && besides,
                   "margin.duties",
                   "combustion.ignition", NAN,
                   "one of them declares knock, which is of spark ignition; "
                   "allowed: those without knock_heat");
}

void cg_ignition_check(const struct cg_case *c, struct cg_complaints *list)
{
    check_fuel(c, list);
    check_charge(c, list);
    check_duties(c, list);
    check_speed(c, list);
    check_cooling(c, list);
}
