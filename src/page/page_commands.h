/* Commands that the page has besides those of the shell. */
#ifndef CG_PAGE_COMMANDS_H
#define CG_PAGE_COMMANDS_H

#include "options.h"
#include "status.h"

/* Writes to stdout, as one JSON list, every setting that this engine may have:
 *   {"path", "key", "about", "band", "default", "kind", "unit", "low", "high",
 *    "value", "text", "choices"}
 * value, low and high are in `unit`; "kind" is number, count, switch, choice,
 * name or words; a name whose entries are not known here has no choices.
 * Errors: as cg_config_read. */
enum cg_status cg_page_settings(const struct cg_options *options,
                                struct cg_error *error);

/* Writes to stdout the config with what --set changes, as the command line
 * reads it.  Errors: as cg_config_read and cg_config_changed_write. */
enum cg_status cg_page_keep(const struct cg_options *options,
                            struct cg_error *error);

#endif
