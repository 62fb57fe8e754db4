/* The ring films over the crank. */
#ifndef CG_FILM_TABLE_H
#define CG_FILM_TABLE_H

#include "duty_run.h"
#include "table_of.h"

/* film.dat in folder `dir`: a block each for the top and the second ring at
 * rated speed and full load; with the constant law one of an earlier run is
 * removed.  CG_FILE with the reason; as cg_ring_film_solve. */
enum cg_status cg_film_table_write(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_case *c,
                                   struct cg_duty_run *run,
                                   struct cg_error *error);

#endif
