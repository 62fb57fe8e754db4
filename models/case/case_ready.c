#include "case_ready.h"

#include <math.h>
#include <string.h>

#include "case_check.h"
#include "fuel.h"
#include "heat_transfer.h"
#include "operating.h"
#include "outside.h"
#include "setting.h"

/* Of a segment, as the config reader allows them. */
#define LONGEST 36000.0      /* [s] */
#define MOST_OVERSPEED 1.5   /* of the rated speed [1] */
#define LEAST_HEAT 0.3       /* heat factor [1] */
#define MOST_HEAT 3.0
#define COLDEST 233.15       /* coolant [K] */
#define HOTTEST 413.15

static bool within(double value, double low, double high)
{
    return value >= low && value <= high;
}

/* The limits of a band stand in the setting's own unit; what a conversion
 * rounds away must not put them out of reach. */
static enum cg_status check_band(const struct cg_setting *setting,
                                 const struct cg_case *c,
                                 struct cg_error *error)
{
    const struct cg_unit *unit =
        cg_unit_find(setting->dimension, setting->unit);
    double si = cg_setting_get(setting, c), value = cg_unit_from_si(unit, si);
    double slack = 1e-9 * (fabs(setting->low) + fabs(setting->high));
    if (setting->kind == CG_NAME || setting->kind == CG_WORDS ||
        setting->kind == CG_SWITCH ||
        ((setting->rule == CG_OPTIONAL || setting->rule == CG_PER_FUEL) &&
         isnan(si)))
        return CG_OK;
    if (setting->kind == CG_CHOICE) {
        char word[CG_NAME_LENGTH];
        cg_setting_word(setting, (int)si, word);
        return word[0] != '\0'
                   ? CG_OK
                   : cg_error_set(error, CG_BAD_INPUT,
                                  "%s: no such choice (got %.0f), allowed: %s",
                                  setting->path, si, setting->text);
    }
    if (within(value, setting->low - slack, setting->high + slack))
        return CG_OK;
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: must be %.6g to %.6g%s%s (got %.6g)",
                        setting->path, setting->low, setting->high,
                        unit->suffix[0] != '\0' ? " " : "", unit->suffix,
                        value);
}

static enum cg_status check_settings(struct cg_case *c,
                                     struct cg_error *error)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    enum cg_status status = CG_OK;
    cg_case_choose_skirt(c);
    (void)cg_case_complete(c); /* what is missing is out of its band */
    for (size_t i = 0; i < count && status == CG_OK; i++)
        status = check_band(&settings[i], c, error);
    return status;
}

static enum cg_status check_names(const struct cg_case *c,
                                  struct cg_error *error)
{
    if (cg_fuel_find(c->fuel.name) == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "fuel.name: unknown, a name of fuel.h is allowed");
    if (cg_heat_transfer_find(c->combustion.heat_transfer) == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "combustion.heat_transfer: unknown, a name of "
                            "heat_transfer.h is allowed");
    return CG_OK;
}

static bool segment_fits(const struct cg_segment *s, double rated)
{
    double most = MOST_OVERSPEED * rated, least = 0.01 * rated;
    return within(s->seconds, 1e-3, LONGEST) &&
           within(s->speed, least, most) &&
           within(s->speed_end, least, most) && within(s->load, 0.0, 1.0) &&
           within(s->load_end, 0.0, 1.0) &&
           within(s->heat_factor, LEAST_HEAT, MOST_HEAT) &&
           within(s->nitrous, 0.0, 1.0) &&
           (s->knock_heat == 0.0 ||
            within(s->knock_heat, CG_KNOCK_HEAT_LEAST, CG_KNOCK_HEAT_MOST)) &&
           (s->air == 0.0 || within(s->air, CG_AIR_LEAST, CG_AIR_MOST)) &&
           (isnan(s->coolant_temperature) ||
            within(s->coolant_temperature, COLDEST, HOTTEST));
}

static bool given_within(double value, double low, double high)
{
    return isnan(value) || within(value, low, high);
}

static bool row_fits(const struct cg_course_row *row, double rated,
                     double lambda_most)
{
    return within(row->of[CG_CHANNEL_SPEED], 0.01 * rated,
                  MOST_OVERSPEED * rated) &&
           within(row->of[CG_CHANNEL_LOAD], 0.0, CG_COURSE_MOST_LOAD) &&
           given_within(row->of[CG_CHANNEL_HEAT], LEAST_HEAT,
                        MOST_HEAT * CG_KNOCK_HEAT_MOST) &&
           given_within(row->of[CG_CHANNEL_COOLANT], COLDEST, HOTTEST) &&
           given_within(row->of[CG_CHANNEL_LAMBDA], 0.6, lambda_most) &&
           given_within(row->of[CG_CHANNEL_BURN50], -10.0, 60.0) &&
           given_within(row->of[CG_CHANNEL_OIL], COLDEST, CG_COURSE_HOTTEST) &&
           given_within(row->of[CG_CHANNEL_AIR], COLDEST,
                        CG_COURSE_HOTTEST) &&
           given_within(row->of[CG_CHANNEL_SOAK], 0.0, 1.0) &&
           given_within(row->of[CG_CHANNEL_WIND], CG_AIR_LEAST, CG_AIR_MOST) &&
           given_within(row->of[CG_CHANNEL_NITROUS], 0.0, 1.0);
}

static enum cg_status check_course(const struct cg_case *c,
                                   const struct cg_course *course,
                                   struct cg_error *error)
{
    double leanest = cg_lambda_most(c);
    bool fits = course->rows >= 2 &&
                course->row[course->rows - 1].time > course->row[0].time;
    for (size_t i = 0; fits && i < course->rows; i++)
        fits = row_fits(&course->row[i], c->engine.speed, leanest) &&
               (i == 0 || course->row[i].time >= course->row[i - 1].time);
    return fits ? CG_OK
                : cg_error_set(error, CG_BAD_INPUT,
                               "duty.course: two rows and more are allowed, "
                               "times never back, values as course.h and the "
                               "settings of the same names say");
}

static bool sets_coolant(const struct cg_duty_case *duty)
{
    for (int i = 0; i < duty->segments; i++)
        if (duty->course == NULL &&
            !isnan(duty->segment[i].coolant_temperature))
            return true;
    return false;
}

static enum cg_status check_segments(const struct cg_case *c,
                                     const struct cg_duty_case *duty,
                                     struct cg_error *error)
{
    if (duty->course != NULL)
        return check_course(c, duty->course, error);
    if (!(duty->segments >= 1 && duty->segments <= CG_SEGMENTS))
        return cg_error_set(error, CG_BAD_INPUT,
                            "duty.segments: 1 to %d are allowed (got %d)",
                            CG_SEGMENTS, duty->segments);
    if (cg_air_cooled(c) && sets_coolant(duty))
        return cg_error_set(error, CG_BAD_INPUT,
                            "duty.segments: a coolant, where cooling.medium is "
                            "air; NaN is allowed");
    for (int i = 0; i < duty->segments; i++)
        if (!segment_fits(&duty->segment[i], c->engine.speed))
            return cg_error_set(
                error, CG_BAD_INPUT,
                "duty.segments[%d]: 0.001 to %g s, speeds of 0.01 to %g "
                "engine.speed, loads of 0 to 1, a heat factor of %g to %g, "
                "a coolant of %g to %g K (NaN: as cooling.coolant), a "
                "knock heat of %g to %g (0: no knock), %g to %g of "
                "cooling.air_speed (0: all) and nitrous of 0 to 1 are "
                "allowed",
                i, LONGEST, MOST_OVERSPEED, LEAST_HEAT, MOST_HEAT, COLDEST,
                HOTTEST, CG_KNOCK_HEAT_LEAST, CG_KNOCK_HEAT_MOST, CG_AIR_LEAST,
                CG_AIR_MOST);
    return CG_OK;
}

static enum cg_status check_duty(const struct cg_case *c,
                                 struct cg_error *error)
{
    enum cg_status status = check_segments(c, &c->duty, error);
    if (status == CG_OK &&
        !(c->survive.duties >= 0 && c->survive.duties < CG_DUTIES))
        return cg_error_set(error, CG_BAD_INPUT,
                            "survive.duties: 0 to %d are allowed (got %d)",
                            CG_DUTIES - 1, c->survive.duties);
    for (int i = 0; i < c->survive.duties && status == CG_OK; i++)
        status = check_segments(c, &c->survive.duty[i], error);
    return status;
}

static bool curve_fits(const struct cg_curve *curve)
{
    if (!(curve->points >= 1 && curve->points <= CG_CURVE_POINTS))
        return false;
    for (int i = 0; i < curve->points; i++)
        if (!(curve->value[i] > 0.0 && isfinite(curve->value[i])) ||
            !isfinite(curve->temperature[i]) ||
            (i > 0 &&
             !(curve->temperature[i] > curve->temperature[i - 1])))
            return false;
    return true;
}

static enum cg_status check_metal(const struct cg_material *metal,
                                  const char *path, struct cg_error *error)
{
    if (within(metal->density, 500.0, 25000.0) &&
        within(metal->poisson, 0.05, 0.49) && metal->hot_limit > 0.0 &&
        curve_fits(&metal->expansion) && curve_fits(&metal->conductivity) &&
        curve_fits(&metal->heat_capacity) && curve_fits(&metal->modulus))
        return CG_OK;
    return cg_error_set(error, CG_BAD_INPUT,
                        "%s: the metal's density, Poisson's ratio, limit and "
                        "four curves of 1 to %d points must be set, positive, "
                        "temperatures rising",
                        path, CG_CURVE_POINTS);
}

static enum cg_status check_metals(const struct cg_case *c,
                                   struct cg_error *error)
{
    static const char *const rings[CG_RINGS] = {
        "rings.top.material", "rings.second.material", "rings.oil.material"};
    enum cg_status status =
        check_metal(&c->piston_material, "piston.alloy", error);
    for (int i = 0; i < CG_RINGS && status == CG_OK; i++)
        status = check_metal(&c->ring_material[i], rings[i], error);
    if (status == CG_OK)
        status = check_metal(&c->bore_material, "bore.material", error);
    if (status == CG_OK && (c->bore.seat == CG_SEAT_CAST_IN ||
                            c->bore.seat == CG_SEAT_PRESSED))
        status =
            check_metal(&c->block_material, "bore.block_material", error);
    return status;
}

static enum cg_status check_sense(const struct cg_case *c,
                                  struct cg_error *error)
{
    struct cg_case_problem problem[CG_CASE_PROBLEMS];
    if (cg_case_check(c, problem) == 0)
        return CG_OK;
    const struct cg_setting *setting = cg_setting_find(problem[0].path);
    const struct cg_unit *unit =
        cg_unit_find(setting->dimension, setting->unit);
    if (isnan(problem[0].limit))
        return cg_error_set(error, CG_BAD_INPUT, "%s: %s", problem[0].path,
                            problem[0].text);
    return cg_error_set(error, CG_BAD_INPUT, "%s: %s: %.4g %s",
                        problem[0].path, problem[0].text,
                        cg_unit_from_si(unit, problem[0].limit),
                        unit->suffix);
}

enum cg_status cg_case_ready(struct cg_case *c, struct cg_error *error)
{
    enum cg_status status = check_settings(c, error);
    if (status == CG_OK)
        status = check_names(c, error);
    if (status == CG_OK)
        status = check_duty(c, error);
    if (status == CG_OK)
        status = check_metals(c, error);
    if (status == CG_OK)
        status = check_sense(c, error);
    return status;
}
