#include "build_change.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "evidence_gap.h"

/* Numbers that differ by less, relative, were meant to be the same: one may
 * have been given in inches. */
#define SAME 1e-9

static bool same_number(double a, double b)
{
    if (isnan(a) || isnan(b))
        return isnan(a) && isnan(b);
    return fabs(a - b) <= SAME * fmax(fabs(a), fabs(b));
}

static bool is_text(const struct cg_setting *setting)
{
    return setting->kind == CG_NAME || setting->kind == CG_WORDS;
}

static bool same_setting(const struct cg_setting *setting,
                         const struct cg_case *a, const struct cg_case *b)
{
    const char *left = (const char *)a + setting->offset;
    const char *right = (const char *)b + setting->offset;
    if (is_text(setting))
        return strcmp(left, right) == 0;
    return same_number(cg_setting_get(setting, a), cg_setting_get(setting, b));
}

static bool same_curve(const struct cg_curve *a, const struct cg_curve *b)
{
    bool same = a->points == b->points;
    for (int i = 0; i < a->points && same; i++)
        same = same_number(a->temperature[i], b->temperature[i]) &&
               same_number(a->value[i], b->value[i]);
    return same;
}

static bool same_band(const struct cg_band *a, const struct cg_band *b)
{
    return same_number(a->low, b->low) && same_number(a->high, b->high);
}

static bool same_material(const struct cg_material *a,
                          const struct cg_material *b)
{
    return same_number(a->density, b->density) &&
           same_number(a->poisson, b->poisson) &&
           same_curve(&a->expansion, &b->expansion) &&
           same_curve(&a->conductivity, &b->conductivity) &&
           same_curve(&a->heat_capacity, &b->heat_capacity) &&
           same_curve(&a->modulus, &b->modulus) &&
           same_number(a->hot_limit, b->hot_limit) &&
           strcmp(a->kind, b->kind) == 0 &&
           same_number(a->hot_limit_high, b->hot_limit_high) &&
           same_number(a->hardness, b->hardness) &&
           same_band(&a->skirt_per_bore, &b->skirt_per_bore);
}

static bool same_bases(const struct cg_face *a, const struct cg_face *b)
{
    bool same = a->bases == b->bases;
    for (int i = 0; i < a->bases && same; i++)
        same = strcmp(a->on[i], b->on[i]) == 0;
    return same;
}

static bool same_face(const struct cg_face *a, const struct cg_face *b)
{
    return same_bases(a, b) && same_band(&a->temperature, &b->temperature) &&
           same_band(&a->peak_pressure, &b->peak_pressure) &&
           same_band(&a->peak_rise, &b->peak_rise) &&
           same_number(a->hardness, b->hardness) &&
           same_number(a->thickness, b->thickness) &&
           same_number(a->conductivity, b->conductivity) &&
           strcmp(a->failure, b->failure) == 0;
}

static bool same_segment(const struct cg_segment *a, const struct cg_segment *b)
{
    return same_number(a->seconds, b->seconds) &&
           same_number(a->speed, b->speed) &&
           same_number(a->speed_end, b->speed_end) &&
           same_number(a->load, b->load) &&
           same_number(a->load_end, b->load_end) &&
           same_number(a->heat_factor, b->heat_factor) &&
           same_number(a->coolant_temperature, b->coolant_temperature) &&
           same_number(a->air, b->air) &&
           same_number(a->knock_heat, b->knock_heat);
}

static bool same_run(const struct cg_duty_case *a, const struct cg_duty_case *b)
{
    bool same =
        a->segments == b->segments && cg_course_same(a->course, b->course);
    for (int i = 0; i < a->segments && same; i++)
        same = same_segment(&a->segment[i], &b->segment[i]);
    return same;
}

/* Of the duty asked for these are settings; of the others they are not. */
static bool same_start(const struct cg_duty_case *a,
                       const struct cg_duty_case *b)
{
    return a->start == b->start &&
           same_number(a->cruise_speed, b->cruise_speed) &&
           same_number(a->cruise_load, b->cruise_load);
}

/* Another name is a setting's matter: here the same name means another thing.
 */
static bool other_material(const struct cg_material *a,
                           const struct cg_material *b)
{
    return strcmp(a->name, b->name) == 0 && !same_material(a, b);
}

static bool other_duty(const struct cg_duty_case *a,
                       const struct cg_duty_case *b)
{
    return strcmp(a->name, b->name) == 0 && !same_run(a, b);
}

static bool other_survive(const struct cg_survive_case *a,
                          const struct cg_survive_case *b)
{
    bool other = false;
    for (int i = 0; i < a->duties && i < b->duties; i++)
        other = other || other_duty(&a->duty[i], &b->duty[i]) ||
                (strcmp(a->duty[i].name, b->duty[i].name) == 0 &&
                 !same_start(&a->duty[i], &b->duty[i]));
    return other;
}

static void compare_matters(const struct cg_case *a, const struct cg_case *b,
                            bool matter[CG_MATTERS])
{
    const struct cg_face *face = &a->ring_face[CG_RING_TOP];
    const struct cg_face *other = &b->ring_face[CG_RING_TOP];
    matter[CG_MATTER_PISTON] =
        other_material(&a->piston_material, &b->piston_material);
    for (int i = 0; i < CG_RINGS; i++)
        matter[CG_MATTER_RING_TOP + i] =
            other_material(&a->ring_material[i], &b->ring_material[i]);
    matter[CG_MATTER_FACE] =
        strcmp(face->name, other->name) == 0 && !same_face(face, other);
    matter[CG_MATTER_BORE] =
        other_material(&a->bore_material, &b->bore_material);
    matter[CG_MATTER_BLOCK] =
        other_material(&a->block_material, &b->block_material);
    matter[CG_MATTER_DUTY] = other_duty(&a->duty, &b->duty);
    matter[CG_MATTER_SURVIVE] = other_survive(&a->survive, &b->survive);
}

/* What a default hangs on; NaN: on nothing that is a setting's number. */
static double basis(const struct cg_setting *setting, const struct cg_case *c)
{
    switch (setting->rule) {
    case CG_PER_BORE:
        return c->engine.bore;
    case CG_PER_STROKE:
        return c->engine.stroke;
    case CG_PER_SPEED:
        return c->engine.speed;
    default:
        return NAN;
    }
}

/* Whether both values are the default of their own case. */
static bool follows(const struct cg_setting *setting, const struct cg_case *a,
                    const struct cg_case *b)
{
    return same_number(cg_setting_get(setting, a),
                       cg_setting_fallback(setting, a->combustion.ignition) *
                           basis(setting, a)) &&
           same_number(cg_setting_get(setting, b),
                       cg_setting_fallback(setting, b->combustion.ignition) *
                           basis(setting, b)) &&
           !isnan(basis(setting, a));
}

/* Whether the path begins with one of the words, parted by blanks. */
static bool among(const char *words, const char *path)
{
    for (; *words != '\0'; words += strspn(words, " ")) {
        size_t length = strcspn(words, " ");
        if (strncmp(path, words, length) == 0)
            return true;
        words += length;
    }
    return false;
}

/* What the model takes an engine of those parts to be, and no part itself. */
static bool is_model(const char *path)
{
    return among("combustion.heat_transfer combustion.heat_factor "
                 "rings.film_law rings.oil_supply rings.top.flank "
                 "rings.second.flank rings.oil.flank rings.top.film "
                 "rings.second.film rings.oil.film piston.splash piston.jet "
                 "piston.gallery_film "
                 "piston.friction piston.skirt_film cooling.coolant_film "
                 "cooling.fins",
                 path);
}

/* Whether the setting is one of the parts that make the top ring's gap close.
 * The cold gap itself is none: proof carries from gap to gap. */
static bool is_part(const char *path)
{
    return among("engine. piston. rings. bore.", path) && !is_model(path) &&
           !among("engine.name engine.speed rings.top.cold_gap "
                  "rings.second.cold_gap rings.top.maker_minimum "
                  "rings.second.maker_minimum rings.top.service bore.finish.",
                  path);
}

void cg_build_compare(const struct cg_case *then, const struct cg_case *now,
                      struct cg_build_changes *changes)
{
    size_t count;
    const struct cg_setting *setting = cg_settings(&count);
    assert(count <= CG_BUILD_CHANGES);
    memset(changes, 0, sizeof *changes);
    for (size_t i = 0; i < count; i++) {
        if (same_setting(&setting[i], then, now))
            continue;
        changes->setting[changes->count] = &setting[i];
        changes->follows[changes->count++] = follows(&setting[i], then, now);
        changes->model = changes->model || is_model(setting[i].path);
        changes->parts = changes->parts || is_part(setting[i].path);
    }
    compare_matters(then, now, changes->matter);
    for (int i = 0; i < CG_MATTER_DUTY; i++)
        changes->parts = changes->parts || changes->matter[i];
}

bool cg_build_same(const struct cg_build_changes *changes)
{
    bool same = changes->count == 0;
    for (int i = 0; i < CG_MATTERS; i++)
        same = same && !changes->matter[i];
    return same;
}

const char *cg_build_matter_word(enum cg_build_matter matter)
{
    static const char *const word[CG_MATTERS] = {
        [CG_MATTER_PISTON] = "piston alloy",
        [CG_MATTER_RING_TOP] = "top ring's metal",
        [CG_MATTER_RING_SECOND] = "second ring's metal",
        [CG_MATTER_RING_OIL] = "oil ring's metal",
        [CG_MATTER_FACE] = "top ring's face",
        [CG_MATTER_BORE] = "bore's metal",
        [CG_MATTER_BLOCK] = "block's metal",
        [CG_MATTER_DUTY] = "duty",
        [CG_MATTER_SURVIVE] = "duties to survive"};
    return word[matter];
}

const char *cg_proof_word(enum cg_proof proof)
{
    static const char *const word[] = {
        [CG_PROOF_HOLDS] = "holds",      [CG_PROOF_EASIER] = "easier",
        [CG_PROOF_PARTS] = "parts",      [CG_PROOF_MODEL] = "model",
        [CG_PROOF_OTHER] = "other",      [CG_PROOF_WARNS] = "warns",
        [CG_PROOF_MEASURED] = "measured"};
    return word[proof];
}

enum cg_proof cg_build_proof(const struct cg_evidence_entry *entry, double run,
                             double closure,
                             const struct cg_build_changes *changes)
{
    if (entry->what != CG_EVIDENCE_ENDS)
        return CG_PROOF_MEASURED;
    if (entry->touched)
        return CG_PROOF_WARNS;
    if (entry->engine != 0)
        return CG_PROOF_OTHER;
    if (changes->parts)
        return CG_PROOF_PARTS;
    if (changes->model)
        return CG_PROOF_MODEL;
    return cg_evidence_as_hard(run, closure) ? CG_PROOF_HOLDS : CG_PROOF_EASIER;
}
