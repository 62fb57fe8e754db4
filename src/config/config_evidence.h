/* An entry of the evidence while it is read.  Private to its two readers. */
#ifndef CG_CONFIG_EVIDENCE_H
#define CG_CONFIG_EVIDENCE_H

#include "config_parts.h"
#include "evidence.h"

/* Numbers of an entry as given; NaN: not given. */
struct cg_reading_numbers {
    double temperature, spread, gap_spread, time, depth, cold_gap;
    double share, share_spread;
    double boost, coolant, ambient, speed, load;
};

/* An entry as far as it has been read. */
struct cg_reading {
    const struct cg_item *item;
    struct cg_evidence *evidence;
    struct cg_reading_numbers number;
    const char *what, *how, *duty; /* NULL: not given */
    bool sign, touched;
    struct cg_log_column column;   /* unit NULL: not given */
    struct cg_duty_case *logged;   /* with a column: the run it is of */
    const struct cg_log_note *log; /* that it was read from; NULL: none */
    size_t engine;                 /* 0: the engine itself */
};

/* Whose findings a list holds: as in struct cg_evidence_entry. */
struct cg_found_in {
    const char *from, *date;
    size_t engine;
};

/* Reads a list of entries into reader->evidence; reader->c is the engine they
 * were found in.  CG_NO_MEMORY; CG_FILE: a shipped duty cannot be read. */
enum cg_status cg_found_read(struct cg_reader *reader,
                             const config_setting_t *list, const char *path,
                             const struct cg_found_in *in,
                             struct cg_error *error);

/* Place of a word in a list, or -1 with trouble told. */
int cg_reading_word(const struct cg_reading *reading, const char *key,
                    const char *word, const char *const *names, size_t count);

/* Trouble where a key is missing or has no place in such an entry. */
void cg_reading_refuse(const struct cg_reading *reading, const char *key,
                       bool given, const char *why);

/* Takes the heading that a key "column_C" gives. */
void cg_reading_heading(struct cg_reading *reading,
                        const config_setting_t *setting,
                        const struct cg_unit *unit);

/* Reads the column's highest, as the temperature, and the run that it is of, of
 * the log that the duty is; what is wrong is told.  reading->logged is to be
 * filled.  CG_NO_MEMORY; CG_FILE: a duty cannot be read. */
enum cg_status cg_reading_log(struct cg_reading *reading,
                              struct cg_error *error);
/* Tells the entry where it was read.  Cannot fail. */
void cg_reading_say_log(const struct cg_reading *reading,
                        struct cg_evidence_entry *entry);

/* The case's conditions as the entry has them.  Cannot fail. */
void cg_reading_conditions(const struct cg_reading *reading, struct cg_case *c);
/* The duty settled at one speed and load.  Cannot fail. */
void cg_reading_hold(double speed, double load, struct cg_duty_case *duty);
/* Where the duty that the entry names is; *found false: nowhere, and told.
 * CG_FILE: the shipped duties cannot be read. */
enum cg_status cg_reading_duty_path(const struct cg_reading *reading,
                                    bool *found, char path[CG_PATH_LENGTH],
                                    struct cg_error *error);

/* The run the entry tells of, added to the evidence if new.  CG_NO_MEMORY;
 * CG_FILE: a shipped duty cannot be read. */
enum cg_status cg_reading_run(const struct cg_reading *reading, size_t *number,
                              struct cg_error *error);

#endif
