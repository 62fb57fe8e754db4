/* One-dimensional bodies as chains of cells in a thermal network.
 *
 * Finite volumes: each cell carries its whole heat capacity at its centre; the
 * conductance between two centres is the exact one for the shape (plane wall,
 * hollow cylinder, disk).  A face that meets a film or a bath is half a cell
 * away from its centre; cg_chain_end_conductance gives that half, to be put in
 * series with the film.  Second order in the cell size.
 * S. V. Patankar, "Numerical Heat Transfer and Fluid Flow" (1980), ch. 4.
 */
#ifndef CG_CHAIN_H
#define CG_CHAIN_H

#include <stdbool.h>
#include <stddef.h>

#include "network.h"
#include "status.h"

struct cg_solid {       /* properties frozen for the run */
    double conductivity;    /* [W/(m K)] */
    double volume_capacity; /* rho c [J/(m3 K)] */
};

enum cg_chain_shape {
    CG_CHAIN_PLANE,  /* heat flows along x through a constant area */
    CG_CHAIN_RADIAL  /* heat flows along r through 2 pi r height: hollow
                        cylinder wall, ring, disk (from r = 0 allowed) */
};

struct cg_chain {
    enum cg_chain_shape shape;
    double from, to; /* x or r at the two ends [m], from < to */
    double width;    /* PLANE: cross-section [m2]; RADIAL: height [m] */
    struct cg_solid solid;
    size_t cells;    /* >= 1 */
    bool nodes_on_faces; /* cells + 1 nodes, the first and last on the
                            surfaces: for a body that several films meet at
                            one surface temperature.  Else a node in the
                            middle of each cell. */
    size_t first;    /* out: index of the first node; the rest follow */
};

/* Adds the chain's nodes and inner links to the network, and sets first.
 * Node names are "NAME_1", "NAME_2", ... (or NAME alone for one cell).
 * Fails with CG_NO_MEMORY. */
enum cg_status cg_chain_add(struct cg_network *network, const char *name,
                            struct cg_chain *chain, struct cg_error *error);

/* Conductance from the end face (0: at `from`, 1: at `to`) to the centre of
 * the cell next to it [W/K]; infinite for a disk's centre is never asked. */
double cg_chain_end_conductance(const struct cg_chain *chain, int end);

/* Position of the centre of cell i and of its lower face [m]. */
double cg_chain_centre(const struct cg_chain *chain, size_t cell);
double cg_chain_face(const struct cg_chain *chain, size_t cell);

/* Number of nodes, and position of a node [m]. */
size_t cg_chain_nodes(const struct cg_chain *chain);
double cg_chain_position(const struct cg_chain *chain, size_t node);

/* Area of the flat side that a node stands for, e.g. the gas side of a crown
 * disk or the flank of a ring [m2]: RADIAL only. */
double cg_chain_flat_area(const struct cg_chain *chain, size_t node);

/* Two conductances in series [W/K]. */
double cg_series(double a, double b);

#endif
