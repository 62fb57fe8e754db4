/* The thermal network laid open: as a table, as a SPICE netlist, and with
 * coldgap's own answer to the same transient, so that any other solver can
 * check the heat model. */
#ifndef CG_NETWORK_TABLES_H
#define CG_NETWORK_TABLES_H

#include "case.h"
#include "duty_run.h"
#include "status.h"
#include "table_of.h"

/* Length of the transient [s]. */
#define CG_NETWORK_SECONDS 20.0

/* Writes network_nodes.dat, _links, _baths and _sources, network.cir and
 * network_run.dat: rated speed, load 1 held for CG_NETWORK_SECONDS from the
 * duty's start.  `run` is for the same
 * case; its network is left set to that operating point. */
enum cg_status cg_network_tables_write(const char *dir,
                                       const struct cg_table_of *of,
                                       const struct cg_case *c,
                                       struct cg_duty_run *run,
                                       struct cg_error *error);

#endif
