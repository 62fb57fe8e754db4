/* Private to thermal*.c: the builders of the single bodies.  Each adds its
 * nodes, links, baths and sources to thermal->network and fills its map; what
 * the map holds already of a network filled before, it keeps.
 * Order of calls: bore, piston (which calls ring after each groove), crevice. */
#ifndef CG_THERMAL_PARTS_H
#define CG_THERMAL_PARTS_H

#include "thermal.h"

/* Heat conductivity of engine oil [W/(m K)], from memory: 0.13 at 100-150 C
 * (e.g. Heywood 1988 uses 0.13-0.14); of the gas in the land clearance at
 * about 650 K: 0.05, air, Incropera et al. table A.4, from memory. */
#define CG_OIL_CONDUCTIVITY 0.13
#define CG_LAND_GAS_CONDUCTIVITY 0.05

enum cg_status cg_thermal_add_bore(const struct cg_case *c,
                                   struct cg_thermal *thermal,
                                   struct cg_error *error);
enum cg_status cg_thermal_add_piston(const struct cg_case *c,
                                     struct cg_thermal *thermal,
                                     struct cg_error *error);
/* `groove` is the node the flanks touch. */
enum cg_status cg_thermal_add_ring(const struct cg_case *c,
                                   enum cg_ring_place place, size_t groove,
                                   struct cg_thermal *thermal,
                                   struct cg_error *error);

/* After the piston. */
enum cg_status cg_thermal_add_crevice(const struct cg_case *c,
                                      struct cg_thermal *thermal,
                                      struct cg_error *error);

/* Links `node` to the bore surface of every station by
 * coefficient * area * share[s]; stations without share get no link. */
enum cg_status cg_thermal_link_to_bore(struct cg_thermal *thermal,
                                       size_t node, double conductance,
                                       const double *share,
                                       struct cg_error *error);

#endif
