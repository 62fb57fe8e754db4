/* The parts of the config reader, and the state they share. */
#ifndef CG_CONFIG_PARTS_H
#define CG_CONFIG_PARTS_H

#include "config_file.h"
#include "data_folder.h"
#include "evidence.h"
#include "log_columns.h"
#include "metals.h"
#include "problems.h"
#include "setting_key.h"

/* Names a shop's notebook. */
#define CG_NOTEBOOK_KEY "evidence_from"

/* Where a setting was given, if it was. */
struct cg_origin {
    bool given;
    struct cg_where where;
    const struct cg_unit *unit;
};

struct cg_reader {
    struct cg_config_file file;   /* the user's */
    unsigned line;                /* in it, of the build that is read, or 0 */
    struct cg_config_file duty;   /* the shipped duty, if one is used */
    char duty_path[CG_PATH_LENGTH];
    struct cg_origin *origin;     /* one a setting; owned */
    struct cg_metals metals;      /* user's and shipped materials */
    const struct cg_metals *shipped; /* those, if they are at hand, or NULL */
    struct cg_problems *problems; /* the caller's */
    struct cg_case *c;            /* the caller's */
    struct cg_course **courses;   /* the caller's list, of what is read */
    struct cg_evidence *evidence; /* the caller's */
    const struct cg_log_column *found; /* a column more of a log, or NULL */
};

/* A value as found, whichever way it was written. */
struct cg_value {
    enum {
        CG_VALUE_NUMBER,
        CG_VALUE_TEXT,
        CG_VALUE_TRUTH,
        CG_VALUE_OTHER
    } kind;
    double number;
    const char *text;
    bool truth;
    const config_setting_t *list; /* an array or a list; else NULL */
    const char *what; /* "a number", "text", ..., for trouble */
};

/* The value of a setting in a file: int, int64 and float are all numbers. */
struct cg_value cg_value_of(const config_setting_t *setting);

/* Checks the value against the key's setting and stores it in the case.  A
 * setting given before in the same file is trouble, and so is one given by
 * --set in another unit; one given by --set or in the user's own file stays (as
 * `keep` says) or is replaced. */
enum cg_given { CG_GIVEN_TWICE, CG_GIVEN_KEEP, CG_GIVEN_REPLACE };
void cg_value_store(struct cg_reader *reader, const struct cg_key *key,
                    const struct cg_value *value, struct cg_where where,
                    enum cg_given given);

/* Reads all groups of settings of a file; `only` is a group's name, or NULL
 * for all.  Leaves lists of materials and duty.segments to others. */
void cg_tree_read(struct cg_reader *reader, const struct cg_config_file *file,
                  const char *only, enum cg_given given);

/* Applies "PATH=VALUE", given at `where`. */
void cg_override(struct cg_reader *reader, const char *set,
                 struct cg_where where);

/* Origin of a setting by path. */
struct cg_origin *cg_origin_of(struct cg_reader *reader, const char *path);
/* Where to point for trouble with a setting: its place, or the file. */
struct cg_where cg_where_given(struct cg_reader *reader, const char *path);

/* Takes the defaults of the case's ignition, and tells which settings given are
 * of the other.  After all settings are there, before names are looked up. */
void cg_ignition_read(struct cg_reader *reader);

/* Reads the duty's segments: the user's own, or those of the shipped duty
 * named.  CG_FILE: the shipped duties cannot be read. */
enum cg_status cg_duty_read(struct cg_reader *reader, struct cg_error *error);
/* A logged run as the duty; `named`: duty.name was given, else the log's name
 * is the duty's.  CG_NO_MEMORY. */
enum cg_status cg_log_duty_read(struct cg_reader *reader,
                                const struct cg_config_file *file,
                                const config_setting_t *log, bool named,
                                struct cg_error *error);
/* The heading of a log's column; false: `what` says what is wrong. */
enum { CG_NAME_TROUBLE = 192 };
bool cg_heading_of(const config_setting_t *setting,
                   char heading[CG_HEADING_LENGTH],
                   char what[CG_NAME_TROUBLE]);
/* Where the duty of that name is: shipped, or NAME.cfg in the folder of the
 * user's config.  False: in neither. */
bool cg_duty_path(const struct cg_reader *reader, const char *name,
                  const struct cg_data_names *shipped,
                  char path[CG_PATH_LENGTH]);
/* A duty of a file of its own, as it stands there; cg_duty_path finds it. */
enum cg_status cg_duty_named(struct cg_reader *reader, const char *name,
                             const char *path, struct cg_duty_case *duty,
                             struct cg_error *error);
/* Puts boost that builds and a cooler that soaks into a duty that was not logged
 * (course_lag.h), once all else of the case is there.  CG_NO_MEMORY. */
enum cg_status cg_duty_lag(const struct cg_reader *reader,
                           const struct cg_case *c, struct cg_duty_case *duty,
                           struct cg_error *error);
/* Reads the duties that margin.duties names into the case's `survive`; the one
 * asked for is not taken twice.  CG_FILE: the shipped duties cannot be read. */
enum cg_status cg_survive_read(struct cg_reader *reader,
                               struct cg_error *error);
/* Tells trouble of settings that are given for coolant where air cools, and the
 * other way round; and what it says. */
void cg_cooling_check(struct cg_reader *reader);
const char *cg_cooling_other(const struct cg_case *c);
/* CG_NO_MEMORY. */
enum cg_status cg_segments_read(struct cg_reader *reader,
                                const struct cg_config_file *file,
                                const config_setting_t *segments,
                                struct cg_error *error);

/* Reads user's and shipped materials, looks up the case's names. */
enum cg_status cg_materials_read(struct cg_reader *reader,
                                 struct cg_error *error);

/* A group in a list of groups of the user's file. */
struct cg_item {
    struct cg_reader *reader;
    config_setting_t *group;
    char path[64]; /* "evidence[3]" */
    int number;
};

/* Hands every group of the list at `path`, if there is one, to `read`. */
void cg_items_read(struct cg_reader *reader, const char *path, int most,
                   void (*read)(struct cg_item *item, void *context),
                   void *context);

/* The same of a list found, called `path` in trouble. */
void cg_items_in(struct cg_reader *reader, const config_setting_t *list,
                 const char *path, int most,
                 void (*read)(struct cg_item *item, void *context),
                 void *context);

/* Trouble with a key of the item; setting NULL: with the item itself. */
void cg_item_problem(const struct cg_item *item,
                     const config_setting_t *setting, const char *key,
                     const char *format, ...) CG_FORMAT(4, 5);
void cg_item_unknown_key(const struct cg_item *item,
                         const config_setting_t *setting,
                         const char *const *keys, size_t count);

/* The number in the band (SI), or false with trouble told; the text, or NULL
 * with trouble told. */
bool cg_item_number(const struct cg_item *item,
                    const config_setting_t *setting,
                    const struct cg_unit *unit, double low, double high,
                    double *si);
const char *cg_item_text(const struct cg_item *item,
                         const config_setting_t *setting);

/* Reads uncertainty.correlations. */
void cg_correlations_read(struct cg_reader *reader);

/* Reads evidence; after all else, for each run is a copy of the case. */
enum cg_status cg_evidence_read(struct cg_reader *reader,
                                struct cg_error *error);

/* Reads the notebook that `evidence_from` names (config_notebook.c). */
enum cg_status cg_notebook_read(struct cg_reader *reader,
                                struct cg_error *error);

/* The engine of a build of a notebook: what a config says, but for its
 * evidence, then the texts "PATH=VALUE" of the list `set` (NULL: none).  path
 * NULL: those alone.  Trouble is told. */
enum cg_status cg_build_read(const struct cg_item *build, const char *path,
                             const config_setting_t *set, struct cg_case *c,
                             struct cg_error *error);

/* Whether a text is a name: 1 to 47 letters and digits of ASCII, blanks, "_",
 * "-" and "."; else `trouble` says what is wrong and what is allowed. */
bool cg_name_fits(const char *text, char trouble[CG_NAME_TROUBLE]);

/* Puts coldgap's name in the place of a builder's, where there is one for
 * `what` (trade_word.h).  For a name that is not known as it is. */
void cg_name_translate(const char *what, char name[CG_NAME_LENGTH]);

/* The same of a free text, which may be empty; it is only ever shown. */
bool cg_text_fits(const char *text, char trouble[CG_NAME_TROUBLE]);

/* Says what is wrong with a name ("unknown fuel") and which names are allowed,
 * the nearest first. */
void cg_name_unknown(struct cg_reader *reader, const char *path,
                     const char *what, const char *name,
                     const char *const *names, size_t count);

#endif
