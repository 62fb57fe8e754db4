/* An entry of a list in a config ({ name = "..."; ... }), and the checks that
 * lists of metals and of faces share.  All tell their own trouble. */
#ifndef CG_CONFIG_ENTRY_H
#define CG_CONFIG_ENTRY_H

#include <stdbool.h>
#include <stddef.h>

#include "config_file.h"
#include "material.h"
#include "problems.h"

enum { CG_ENTRY_PATH = 160 };

struct cg_entry {
    const struct cg_config_file *file;
    struct cg_problems *problems;
    config_setting_t *group;
    char path[CG_ENTRY_PATH]; /* "ring_materials.my_steel" */
};

/* Hands every group of the list named `list` at the file's top, if there is
 * one, to `read`. */
void cg_entries_read(const struct cg_config_file *file, const char *list,
                     struct cg_problems *problems,
                     void (*read)(struct cg_entry *entry, const char *list,
                                  void *context),
                     void *context);

/* Trouble with a key of the entry, or with the entry itself (setting NULL,
 * key ""). */
void cg_entry_problem(const struct cg_entry *entry,
                      const config_setting_t *setting, const char *key,
                      const char *what);

/* That the entry's name is another's too. */
void cg_entry_twice(const struct cg_entry *entry);

/* The name, by which the entry's other trouble is told from then on. */
bool cg_entry_name(struct cg_entry *entry, const char *list,
                   char name[CG_NAME_LENGTH]);

/* Tells keys that are not among `keys`. */
void cg_entry_check_keys(const struct cg_entry *entry, const char *const *keys,
                         size_t count);

/* The member of that key, or NULL with trouble told. */
config_setting_t *cg_entry_member(const struct cg_entry *entry,
                                  const char *key);

/* The number in the band, or trouble; place 0: not of an array. */
bool cg_entry_number(const struct cg_entry *entry,
                     const config_setting_t *setting, const char *key,
                     int place, double low, double high, double *number);

/* Numbers of an array or list of `least` to `most`; returns how many, or 0
 * after trouble. */
int cg_entry_array(const struct cg_entry *entry, const char *key, int least,
                   int most, double low, double high, double *value);

/* A band "[ low, high ]", low below high; false after trouble. */
bool cg_entry_band(const struct cg_entry *entry, const char *key, double low,
                   double high, struct cg_band *band);

/* Names of an array of 1 to `most`; returns how many, or 0 after trouble. */
int cg_entry_words(const struct cg_entry *entry, const char *key, int most,
                   char word[][CG_NAME_LENGTH]);

#endif
