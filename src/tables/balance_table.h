/* The heat balance of find. */
#ifndef CG_BALANCE_TABLE_H
#define CG_BALANCE_TABLE_H

#include "heat_balance.h"
#include "status.h"
#include "table_of.h"

/* heat_balance.dat in folder `dir`: where the fuel's energy goes, a row each.
 * CG_FILE with the reason. */
enum cg_status cg_balance_table_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_heat_balance *balance,
                                      struct cg_error *error);

#endif
