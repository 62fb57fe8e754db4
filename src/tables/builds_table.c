#include "builds_table.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "setting_key.h"
#include "setting_text.h"
#include "table.h"

#define GET(name, expression)                                                \
    static double get_##name(const struct cg_build *b)                       \
    {                                                                        \
        const struct cg_case *c = &b->updated.prior;                         \
        const struct cg_answer *a = &b->answer;                              \
        (void)c;                                                             \
        (void)a;                                                             \
        return expression;                                                   \
    }
#define WORD(name, expression)                                               \
    static const char *word_##name(const struct cg_build *b)                 \
    {                                                                        \
        return expression;                                                   \
    }

GET(file_to_top, a->file_to_top.file_to)
GET(file_to_second, a->file_to_second.file_to)
GET(needed_top, cg_answer_needed(a)->cold_gap)
GET(closure_top, cg_answer_needed(a)->closure)
GET(rule_top, a->shop_rule)
GET(boost, c->charge.boost)
GET(lambda, c->fuel.lambda)
GET(fuel_flow, a->performance.fuel_flow)
GET(oil_needed, b->finish.oil_needed)
GET(brake_power, a->performance.brake_power)
GET(peak_pressure, a->performance.peak_pressure)
GET(knock, a->performance.knock_integral)
GET(burn50, a->performance.burn50_deg)
GET(crown, a->extremes.crown_max)
GET(groove, a->extremes.groove_top_max)
GET(ring, a->extremes.ring_top_max)
GET(face, a->extremes.face_top_max)
GET(liner, a->extremes.liner_top_max)
GET(skirt, a->skirt.given)
WORD(hardest, b->answer.duty[b->answer.hardest].name)
WORD(metal, b->updated.c.ring[CG_RING_TOP].material)
WORD(face, b->updated.c.ring_face[CG_RING_TOP].name)
WORD(second, b->updated.c.ring[CG_RING_SECOND].material)
WORD(alloy, b->updated.c.piston.alloy)
WORD(bore, b->updated.c.bore.material)
WORD(fuel, b->updated.c.fuel.name)
WORD(oil, b->updated.c.cooling.oil_grade)

#define FIGURE(key, label, kind, name) {key, label, kind, get_##name, NULL}
#define WORDS(key, label, name) {key, label, CG_SHOW_WORDS, NULL, word_##name}

static const struct cg_build_figure figures[] = {
    FIGURE("file_to_top", "Top ring, file to", CG_SHOW_GAP_ASKED, file_to_top),
    FIGURE("file_to_second", "Second ring, file to", CG_SHOW_GAP_ASKED,
           file_to_second),
    FIGURE("gap_needed_top", "Gap needed, top ring", CG_SHOW_GAP_ASKED,
           needed_top),
    FIGURE("closure_top", "Closure, top ring", CG_SHOW_SMALL_LENGTH,
           closure_top),
    WORDS("hardest_duty", "Hardest duty", hardest),
    FIGURE("rule_top", "Shop rule, top ring", CG_SHOW_GAP_ASKED, rule_top),
    FIGURE("boost", "Boost", CG_SHOW_BOOST, boost),
    WORDS("fuel", "Fuel", fuel),
    FIGURE("lambda", "Lambda", CG_SHOW_NUMBER, lambda),
    FIGURE("fuel_flow", "Fuel burnt", CG_SHOW_FLOW, fuel_flow),
    FIGURE("brake_power", "Brake power", CG_SHOW_POWER, brake_power),
    FIGURE("peak_pressure", "Peak pressure", CG_SHOW_PEAK_PRESSURE,
           peak_pressure),
    FIGURE("burn50", "Half burnt, after TDC firing", CG_SHOW_ANGLE, burn50),
    FIGURE("knock_integral", "Knock integral", CG_SHOW_NUMBER, knock),
    FIGURE("crown_max", "Crown", CG_SHOW_TEMPERATURE, crown),
    FIGURE("groove_top_max", "Top groove", CG_SHOW_TEMPERATURE, groove),
    FIGURE("ring_top_max", "Top ring", CG_SHOW_TEMPERATURE, ring),
    FIGURE("face_top_max", "Its face", CG_SHOW_TEMPERATURE, face),
    FIGURE("liner_top_max", "Bore where it turns", CG_SHOW_TEMPERATURE, liner),
    WORDS("ring_metal", "Top ring's metal", metal),
    WORDS("ring_face", "Top ring's face", face),
    WORDS("second_metal", "Second ring's metal", second),
    WORDS("piston_alloy", "Piston alloy", alloy),
    WORDS("bore_metal", "Bore's metal", bore),
    FIGURE("skirt_clearance", "Skirt clearance", CG_SHOW_SMALL_LENGTH, skirt),
    FIGURE("Vo_needed", "Oil the bore must hold, Vo", CG_SHOW_OIL, oil_needed),
    WORDS("oil_grade", "Oil", oil),
};

const struct cg_build_figure *cg_build_figures(size_t *count)
{
    *count = sizeof figures / sizeof figures[0];
    return figures;
}

/* As a reader sees it: what is told is what was computed, rounded once. */
static struct cg_text shown(const struct cg_build_figure *figure,
                            const struct cg_build *build)
{
    return cg_quantity_bare(cg_quantity(figure->kind, figure->get(build)),
                            false);
}

bool cg_build_figure_moves(const struct cg_build_figure *figure,
                           const struct cg_builds *builds)
{
    if (figure->word != NULL)
        return strcmp(figure->word(builds->then), figure->word(builds->now)) !=
               0;
    return strcmp(shown(figure, builds->then).text,
                  shown(figure, builds->now).text) != 0;
}

static void put_figure(struct cg_table *table,
                       const struct cg_build_figure *figure,
                       const struct cg_builds *builds)
{
    bool moves = cg_build_figure_moves(figure, builds);
    if (figure->word != NULL) {
        cg_table_line(table, "%s %s %s word %d", figure->key,
                      cg_table_word(figure->word(builds->then)).text,
                      cg_table_word(figure->word(builds->now)).text, moves);
        return;
    }
    const char *unit = cg_kind_unit(figure->kind, false);
    struct cg_quantity then = {figure->kind, figure->get(builds->then)};
    struct cg_quantity now = {figure->kind, figure->get(builds->now)};
    cg_table_line(table, "%s %.7g %.7g %s %d", figure->key,
                  cg_quantity_number(then, false),
                  cg_quantity_number(now, false), *unit != '\0' ? unit : "1",
                  moves);
}

static enum cg_status write_figures(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_builds *builds,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "Two builds, side by side", of, "figure  then  now  unit  moves",
        "moves: 1 where the figure is shown as another"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "builds.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "then: %s", builds->then->name);
    for (size_t i = 0; i < sizeof figures / sizeof figures[0]; i++)
        put_figure(table, &figures[i], builds);
    return cg_table_close(table, CG_OK, error);
}

static struct cg_build_value value_of(const struct cg_setting *setting,
                                      const struct cg_case *c, bool inch)
{
    struct cg_build_value out = {""};
    bool named = setting->kind == CG_NAME || setting->kind == CG_WORDS;
    if (!named && isnan(cg_setting_get(setting, c)))
        snprintf(out.text, sizeof out.text, "not given");
    else
        cg_setting_value_text(setting, c, inch, out.text, sizeof out.text);
    return out;
}

struct cg_build_value cg_build_then(const struct cg_builds *builds, size_t i,
                                    bool inch)
{
    return value_of(builds->changes.setting[i], &builds->then->updated.prior,
                    inch);
}

struct cg_build_value cg_build_now(const struct cg_builds *builds, size_t i,
                                   bool inch)
{
    return value_of(builds->changes.setting[i], &builds->now->updated.prior,
                    inch);
}

/* In a table: a number, or a single word. */
static struct cg_table_word cell(const struct cg_setting *setting,
                                 const struct cg_case *c)
{
    char word[CG_NAME_LENGTH];
    if (setting->kind == CG_NAME || setting->kind == CG_WORDS)
        return cg_table_word((const char *)c + setting->offset);
    double si = cg_setting_get(setting, c);
    if (setting->kind == CG_CHOICE)
        cg_setting_word(setting, (int)si, word);
    else
        snprintf(word, sizeof word, "%.7g",
                 cg_unit_from_si(cg_setting_unit(setting, false), si));
    return cg_table_word(word);
}

static void put_change(struct cg_table *table, const struct cg_builds *builds,
                       size_t i)
{
    const struct cg_setting *setting = builds->changes.setting[i];
    char key[128];
    cg_key_write(setting, NULL, true, key, sizeof key);
    cg_table_line(table, "%s %s %s %d", key,
                  cell(setting, &builds->then->updated.prior).text,
                  cell(setting, &builds->now->updated.prior).text,
                  builds->changes.follows[i]);
}

static enum cg_status write_changes(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_builds *builds,
                                    struct cg_error *error)
{
    struct cg_table_head head = {
        "Settings that differ between two builds", of,
        "setting  then  now  follows",
        "follows: 1 for a default that another setting moved"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "build_changes.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "then: %s", builds->then->name);
    for (int i = 0; i < CG_MATTERS; i++)
        if (builds->changes.matter[i])
            cg_table_note(table, "the same name, another meaning: %s",
                          cg_build_matter_word((enum cg_build_matter)i));
    for (size_t i = 0; i < builds->changes.count; i++)
        put_change(table, builds, i);
    return cg_table_close(table, CG_OK, error);
}

static void put_proof(struct cg_table *table, const struct cg_builds *builds,
                      size_t i)
{
    const struct cg_updated_case *then = &builds->then->updated;
    const struct cg_evidence_entry *entry = &then->evidence.entry[i];
    bool sign = entry->what == CG_EVIDENCE_ENDS;
    double run = then->learned.closure[i];
    cg_table_line(table, "%zu %s %d %.7g %.7g %.7g %s", i + 1,
                  cg_evidence_name(entry->what), sign && entry->touched,
                  sign ? entry->cold_gap * 1e3 : NAN, run * 1e3,
                  builds->closure * 1e3,
                  cg_proof_word(cg_build_proof(entry, run, builds->closure,
                                               &builds->changes)));
}

static enum cg_status write_proof(const char *dir, const struct cg_table_of *of,
                                  const struct cg_builds *builds,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "What the evidence of the build before is to this one", of,
        "entry  what  touched  cold_gap_mm  closure_run_mm  closure_now_mm  "
        "proof",
        "closure_run: of the top ring in the run it was found in; closure_now: "
        "of this build in its hardest duty; both by the model as it was "
        "taught"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "build_proof.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "then: %s", builds->then->name);
    for (size_t i = 0; i < builds->then->updated.learned.entries; i++)
        put_proof(table, builds, i);
    return cg_table_close(table, CG_OK, error);
}

enum cg_status cg_builds_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_builds *builds,
                                      struct cg_error *error)
{
    static const char *const name[] = {"builds.dat", "build_changes.dat",
                                       "build_proof.dat"};
    enum cg_status status = CG_OK;
    for (size_t i = 0; builds == NULL && i < 3 && status == CG_OK; i++)
        status = cg_table_drop(dir, name[i], error);
    if (builds == NULL || status != CG_OK)
        return status;
    status = write_figures(dir, of, builds, error);
    if (status == CG_OK)
        status = write_changes(dir, of, builds, error);
    if (status == CG_OK)
        status = write_proof(dir, of, builds, error);
    return status;
}
