/* evidence_from = "shop.cfg": a shop's notebook, what was found in builds of
 * this engine and of others.
 *   builds = (
 *     { engine = "my_engine.cfg"; date = "2026-03-14";
 *       found = ( { touched = false; cold_gap_mm = 0.45; } ); },
 *     { set = ( "engine.bore_mm=92", "engine.stroke_mm=84",
 *               "engine.speed_rpm=7000", "charge.boost_kPa=120" );
 *       found = ( { touched = true; cold_gap_mm = 0.30; } ); } );
 * A build's engine is a config, or a config with some settings other, or the
 * settings alone.  Names are taken from the folder of the file they stand in,
 * as includes are.  A build that names the very config which was asked for, and
 * sets nothing, is that engine's own; what an engine's config says of evidence
 * and notebooks itself is left alone. */
#define _POSIX_C_SOURCE 200809L /* stat */

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "config_build.h"
#include "config_evidence.h"
#include "plain_text.h"

enum { BUILDS = 16 };

/* An engine by its file; none: inode 0 of no device. */
struct engine {
    dev_t device;
    ino_t inode;
};

struct notebook {
    struct cg_reader *asked;          /* of the config that names it */
    struct engine engine[BUILDS + 1]; /* [0]: the one asked for */
    size_t engines;
    struct cg_case *c; /* of a build */
    enum cg_status status;
    struct cg_error *error;
};

static struct engine engine_at(const char *path)
{
    struct stat about;
    if (stat(path, &about) != 0)
        return (struct engine){0, 0};
    return (struct engine){about.st_dev, about.st_ino};
}

/* Number of the build's engine. */
static size_t number_of(struct notebook *notebook, const struct cg_build *build)
{
    struct engine engine = {0, 0};
    if (build->engine != NULL && build->set == NULL)
        engine = engine_at(build->path);
    for (size_t i = 0; engine.inode != 0 && i < notebook->engines; i++)
        if (notebook->engine[i].device == engine.device &&
            notebook->engine[i].inode == engine.inode)
            return i;
    notebook->engine[notebook->engines] = engine;
    return notebook->engines++;
}

/* Scores are of the engine asked for: what the model is comes from there. */
static void take_model(const struct cg_case *from, struct cg_case *c)
{
    c->combustion.heat_factor = from->combustion.heat_factor;
    memcpy(c->combustion.heat_transfer, from->combustion.heat_transfer,
           sizeof c->combustion.heat_transfer);
    c->uncertainty = from->uncertainty;
    memcpy(c->correlation, from->correlation, sizeof c->correlation);
    c->solver = from->solver;
}

/* The build's engine into notebook->c; false: not there, and told. */
static bool read_case(struct notebook *notebook, const struct cg_build *build,
                      size_t number)
{
    struct cg_error trouble = {CG_OK, ""};
    struct cg_problems *problems = notebook->asked->problems;
    size_t before = problems->count;
    if (number == 0) {
        *notebook->c = *notebook->asked->c;
        return true;
    }
    enum cg_status status =
        cg_build_read(build->item, build->engine != NULL ? build->path : NULL,
                      build->set, notebook->c, &trouble);
    if (status == CG_NO_MEMORY)
        notebook->status =
            cg_error_set(notebook->error, status, "%s", trouble.text);
    else if (status != CG_OK)
        cg_item_problem(build->item, NULL, "engine", "%s", trouble.text);
    take_model(notebook->asked->c, notebook->c);
    return status == CG_OK && problems->count == before;
}

static void read_build(struct cg_item *item, void *context)
{
    struct notebook *notebook = context;
    struct cg_build build;
    char path[96];
    if (!cg_build_keys_read(item, &build) || notebook->status != CG_OK)
        return;
    size_t number = number_of(notebook, &build);
    if (!read_case(notebook, &build, number))
        return;
    const struct cg_found_in in = {item->path, build.date, number};
    snprintf(path, sizeof path, "%s.found", item->path);
    notebook->status =
        cg_found_read(item->reader, build.found, path, &in, notebook->error);
}

/* What stands beside the builds. */
static void check_top(struct cg_reader *reader)
{
    const config_setting_t *root = config_root_setting(&reader->file.config);
    for (int i = 0; i < config_setting_length(root); i++) {
        const config_setting_t *top =
            config_setting_get_elem(root, (unsigned)i);
        if (strcmp(config_setting_name(top), "builds") != 0)
            cg_problem(reader->problems, cg_config_where(&reader->file, top),
                       config_setting_name(top),
                       "does not belong here, allowed: builds");
    }
}

static void read_builds(struct cg_reader *reader, struct notebook *notebook)
{
    struct cg_evidence *evidence = notebook->asked->evidence;
    const char *name = strrchr(reader->file.path, '/');
    snprintf(evidence->notebook, sizeof evidence->notebook, "%s",
             name != NULL ? name + 1 : reader->file.path);
    cg_plain_make(evidence->notebook);
    notebook->engine[0] = engine_at(notebook->asked->file.path);
    notebook->engines = 1;
    check_top(reader);
    cg_items_read(reader, "builds", BUILDS, read_build, notebook);
}

/* Opens the notebook and reads its builds; `path` is for its trouble. */
static enum cg_status read_file(struct cg_reader *asked,
                                const config_setting_t *setting,
                                const char *path, struct cg_error *error)
{
    struct cg_error trouble = {CG_OK, ""};
    struct notebook notebook = {
        .asked = asked, .status = CG_OK, .error = error};
    struct cg_reader reader = {.problems = asked->problems,
                               .evidence = asked->evidence,
                               .courses = asked->courses};
    size_t before = asked->problems->count;
    notebook.c = reader.c = malloc(sizeof *reader.c);
    enum cg_status status =
        reader.c == NULL ? cg_error_set(error, CG_NO_MEMORY, "out of memory")
                         : cg_config_file_open(&reader.file, path,
                                               asked->problems, &trouble);
    if (status == CG_FILE || status == CG_BAD_INPUT) {
        cg_config_file_trouble(asked->problems,
                               cg_config_where(&asked->file, setting),
                               CG_NOTEBOOK_KEY, &trouble);
        status = CG_OK;
    } else if (status == CG_OK && asked->problems->count == before) {
        read_builds(&reader, &notebook);
        status = notebook.status;
    }
    cg_config_file_close(&reader.file);
    free(reader.c);
    return status;
}

enum cg_status cg_notebook_read(struct cg_reader *reader,
                                struct cg_error *error)
{
    char path[CG_PATH_LENGTH];
    const config_setting_t *setting =
        config_lookup(&reader->file.config, CG_NOTEBOOK_KEY);
    if (setting == NULL)
        return CG_OK;
    struct cg_value value = cg_value_of(setting);
    if (value.kind == CG_VALUE_TEXT && value.text[0] != '\0' &&
        cg_path_in(&reader->file, value.text, path))
        return read_file(reader, setting, path, error);
    cg_problem(reader->problems, cg_config_where(&reader->file, setting),
               CG_NOTEBOOK_KEY,
               "must be the name of a notebook, from the "
               "config's own folder (got %s)",
               value.what);
    return CG_OK;
}
