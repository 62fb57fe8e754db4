/* --write NEW.cfg of `ladder`: the config with all changes made. */
#ifndef CG_LADDER_CONFIG_H
#define CG_LADDER_CONFIG_H

#include "ladder.h"
#include "options.h"
#include "part_file.h"

/* Writes into a part file that is open, for the case `c` as it was read: what
 * --set and --to have changed, then what the ladder has, and both gaps to file
 * to.  It is read back; where it then asks for wider gaps than those, since
 * what was found in the old engine is left out, they are taken.  *stands:
 * whether find fits as it is.  Errors: as cg_config_changed_write and
 * cg_answer_find; the file is the caller's to close. */
enum cg_status cg_ladder_config_write(const struct cg_options *options,
                                      const struct cg_case *c,
                                      const struct cg_ladder *ladder,
                                      struct cg_part_file *part, bool *stands,
                                      struct cg_error *error);

#endif
