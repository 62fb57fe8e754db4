/* From a key as the user writes it ("charge.boost_kPa") to its setting and
 * unit, with help when there is none. */
#ifndef CG_SETTING_KEY_H
#define CG_SETTING_KEY_H

#include <stdbool.h>
#include <stddef.h>

#include "setting.h"

struct cg_key {
    const struct cg_setting *setting;
    const struct cg_unit *unit; /* that of a plain number where it has none */
};

/* True, with *key filled; or false, with a line that says what is wrong with
 * the key and what is allowed (size 0: none is wanted, none looked for). */
bool cg_key_find(const char *path, struct cg_key *key, char *trouble,
                 size_t size);

/* The unit with which `key` writes the quantity `name` ("boost_kPa": boost), or
 * NULL: it writes another, or in no unit of that dimension. */
const struct cg_unit *cg_key_unit(const char *key, const char *name,
                                  enum cg_dimension dimension);

/* Writes the key a setting is written with: "boost_kPa", or with its group
 * when `whole`.  unit NULL: the unit shown first. */
void cg_key_write(const struct cg_setting *setting, const struct cg_unit *unit,
                  bool whole, char *key, size_t size);

/* True if `path` is a group of settings: "rings" or "rings.top". */
bool cg_key_group(const char *path);

#endif
