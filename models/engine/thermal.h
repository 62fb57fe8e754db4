/* The engine's thermal network: piston path, three rings, bore and block of
 * one cylinder, joined.  1-D in every body:
 *
 *   piston  one curved path: from the crown centre out through the crown disk,
 *           then down the ring belt and the skirt
 *   ring    radial, from the groove's back to the face, heated by the flank
 *   bore    stations down the bore, each radial through liner and block, with
 *           conduction along the bore between like radii
 *
 * Nodes are numbered stations first, then along the piston with each ring put
 * in after its groove.
 *
 * Conductivity and heat capacity are taken at the fixed temperatures below
 * for the whole run: the network is linear, and any circuit or ODE solver can
 * check it.  (Of a piston alloy, conductivity moves by about 5 % between 100
 * and 300 C; growth does use temperature-dependent expansion.)
 */
#ifndef CG_THERMAL_H
#define CG_THERMAL_H

#include "case.h"
#include "chain.h"
#include "network.h"
#include "status.h"
#include "sweep_share.h"

/* Where conductivity and heat capacity are taken [K]: 200, 160 and 120 C. */
#define CG_PISTON_REFERENCE 473.15
#define CG_RING_REFERENCE 433.15
#define CG_BORE_REFERENCE 393.15

struct cg_piston_map {
    size_t first, cells; /* path cells: node of cell i is node[i] */
    size_t *node;
    size_t crown_cells;  /* path cells 0 .. crown_cells - 1 are the crown */
    size_t groove[CG_RINGS]; /* nodes */
    size_t land[CG_RINGS];   /* path cell at the top of the land over a ring */
    size_t skirt_first, skirt_cells; /* path cells */
    double ring_offset[CG_RINGS]; /* crown edge to ring's upper side [m] */
    double skirt_offset;          /* crown edge to skirt top [m] */
    size_t gas_bath;     /* baths gas_bath + i on crown cell i */
    size_t skirt_source; /* + i on skirt cell i */
    double *gas_area;    /* [crown_cells] [m2] */
    size_t facing;       /* cells that face the bore: lands, then skirt */
    double *bore_share;  /* [facing][stations] time shares */
};

struct cg_ring_map {
    struct cg_chain chain;
    size_t face;         /* node */
    double *flat_weight; /* [nodes] share of the ring's cross-section [1] */
    size_t face_link;    /* links face_link + s to station s */
    double face_area;    /* whole circumference [m2] */
    double coat;         /* resistance of the face's coat [m2 K/W] */
    double *share;       /* [stations] time share */
    size_t source;       /* friction on the ring's own side */
};

struct cg_bore_map {
    struct cg_bore_grid grid;
    bool has_block;
    size_t liner_nodes, block_nodes; /* per station */
    size_t per_station;
    double *liner_weight, *block_weight; /* area weights, each sums to 1 */
    size_t gas_bath, coolant_bath, source; /* + s */
    size_t joint_link;   /* + s, if has_block */
    double joint_area;   /* of one station [m2] */
    double surface_area; /* of one station [m2] */
    bool air_cooled;
    double *outside;     /* [stations] to coolant or air, the latter at the
                            flow that its coefficients are given for [W/K] */
    double *mist_share;  /* [stations] of crank time open to oil mist */
    double *friction_share; /* [stations] ring pack and skirt together */
};

struct cg_crevice_map {
    size_t source, sources; /* on land, groove, ring, stations */
    double *part;           /* [sources] of the crevices' heat; sums to 1 */
};

struct cg_thermal {
    struct cg_network *network;
    struct cg_stroke stroke;
    struct cg_piston_map piston;
    struct cg_ring_map ring[CG_RINGS];
    struct cg_bore_map bore;
    struct cg_crevice_map crevice;
    bool shares_known;   /* time and path shares stand from a fill before */
};

/* How the friction of the piston assembly parts: top ring, second ring, oil
 * ring, skirt (common practice, no source; sums to 1). */
extern const double cg_friction_part[CG_RINGS + 1];

/* Builds the network of a checked case, all operating-point quantities at
 * zero (cg_point_apply in operating_point.h sets them).  Caller frees.
 * CG_NO_MEMORY only. */
enum cg_status cg_thermal_create(const struct cg_case *c,
                                 struct cg_thermal **thermal,
                                 struct cg_error *error);
/* Sets every value of the network anew from a case whose bore, stroke, rings,
 * piston and cells are those of the case the network was built for: what
 * follows from these alone (numbering, names, shares of time and path) is
 * kept.  CG_NO_MEMORY only. */
enum cg_status cg_thermal_refill(const struct cg_case *c,
                                 struct cg_thermal *thermal,
                                 struct cg_error *error);

/* Accepts NULL. */
void cg_thermal_free(struct cg_thermal *thermal);

/* Node at liner cell i (0: bore surface) of a station. */
size_t cg_thermal_liner_node(const struct cg_thermal *thermal,
                             size_t station, size_t cell);

/* Area-mean temperature [K] of the liner and, if there is one, the block of a
 * station (block NULL allowed); mean of a ring.  Cannot fail. */
double cg_thermal_liner_mean(const struct cg_thermal *thermal,
                             const double *temperature, size_t station);
double cg_thermal_block_mean(const struct cg_thermal *thermal,
                             const double *temperature, size_t station);
double cg_thermal_ring_mean(const struct cg_thermal *thermal,
                            const double *temperature,
                            enum cg_ring_place place);

/* Between two stations: the lower one, and the share of the next. */
struct cg_between {
    size_t station;
    double part;
};

/* Where a depth [m] lies between the middles of the stations; above the first
 * and below the last it stays at them. */
struct cg_between cg_thermal_between(const struct cg_thermal *thermal,
                                     double depth);

/* Bore surface [K] at a depth [m] below the deck, by straight lines between the
 * middles of the stations.  Cannot fail. */
double cg_thermal_bore_at(const struct cg_thermal *thermal,
                          const double *temperature, double depth);

#endif
