/* Opens a libconfig file. */
#ifndef CG_CONFIG_FILE_H
#define CG_CONFIG_FILE_H

#include <libconfig.h>

#include "problems.h"
#include "status.h"

struct cg_config_file {
    const char *path; /* as the user wrote it; the caller's */
    config_t config;
    char *folder; /* of the file: where its includes are taken from */
};

/* Reads and parses `path`; includes are relative to the file's own folder.
 * Syntax trouble goes to `problems` and gives CG_OK with an empty config.
 * CG_FILE, CG_NO_MEMORY otherwise.  Always close it afterwards. */
enum cg_status cg_config_file_open(struct cg_config_file *file,
                                   const char *path,
                                   struct cg_problems *problems,
                                   struct cg_error *error);
void cg_config_file_close(struct cg_config_file *file);

/* Trouble with a file that a config names from its own folder; where that is
 * looked for is said of one that cannot be opened. */
void cg_config_file_trouble(struct cg_problems *problems, struct cg_where where,
                            const char *key, const struct cg_error *trouble);

/* Where a setting stands: libconfig names the file of included ones only. */
struct cg_where cg_config_where(const struct cg_config_file *file,
                                const config_setting_t *setting);

#endif
