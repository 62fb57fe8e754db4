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
    size_t engine; /* 0: the engine itself */
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

/* The run the entry tells of, added to the evidence if new.  CG_NO_MEMORY;
 * CG_FILE: a shipped duty cannot be read. */
enum cg_status cg_reading_run(const struct cg_reading *reading, size_t *number,
                              struct cg_error *error);

#endif
