/* A case filled by a program instead of a config file: completed and looked at
 * from end to end, so that nothing unfit reaches the models. */
#ifndef CG_CASE_READY_H
#define CG_CASE_READY_H

#include "case.h"
#include "status.h"

/* Fills the defaults that depend on bore, stroke or speed (cg_case_complete),
 * then checks: required settings and bands (setting_table.c), names of fuel
 * and gas-side correlation, duty, metals, and that all fits together
 * (cg_case_check).  CG_BAD_INPUT: the first trouble, as "setting: what is
 * wrong, what is allowed"; the case may then be completed in part. */
enum cg_status cg_case_ready(struct cg_case *c, struct cg_error *error);

#endif
