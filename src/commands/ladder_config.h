/* --write NEW.cfg of `ladder`: the config with all changes made. */
#ifndef CG_LADDER_CONFIG_H
#define CG_LADDER_CONFIG_H

#include "options.h"
#include "part_file.h"
#include "report_ladder.h"

/* Whether NEW.cfg may stand where it is asked for: a config that names files in
 * its own folder, as `c` was read of it, is written there alone.
 * CG_BAD_INPUT; else as cg_config_names_file. */
enum cg_status cg_ladder_config_place(const struct cg_options *options,
                                      const struct cg_case *c,
                                      struct cg_error *error);

/* Writes into a part file that is open, for the case as it was read, without
 * what evidence has moved: what --set and --to have changed, then what the
 * ladder has, and both gaps to file to.  It is read back; where it then asks
 * for wider gaps than those, since what was found in the old engine is left
 * out, they are taken.  *written tells of it.  Errors: as
 * cg_config_changed_write and cg_answer_find; the file is the caller's to
 * close. */
enum cg_status cg_ladder_config_write(const struct cg_options *options,
                                      const struct cg_case *prior,
                                      const struct cg_ladder *ladder,
                                      struct cg_part_file *part,
                                      struct cg_ladder_written *written,
                                      struct cg_error *error);

#endif
