/* A thermal network: nodes that store heat, links between them, baths of
 * given temperature, and heat sources.  Every 1-D body of the engine is put
 * into one network; the stepper (stepper.h) solves it.
 *
 *   C_i dT_i/dt = sum_links G (T_j - T_i) + sum_baths G (T_bath - T_i) + W_i
 *
 * Arrays are parallel ("structure of arrays") so that a driver can change the
 * conductances, bath temperatures and sources in place while time runs.
 */
#ifndef CG_NETWORK_H
#define CG_NETWORK_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

/* Where a bath's or source's heat comes from; the ledger is kept by side. */
#define CG_SIDE_LIST(X)                                   \
    X(CG_SIDE_GAS, "gas")                                 \
    X(CG_SIDE_COOLANT, "coolant")                         \
    X(CG_SIDE_OIL, "oil")                                 \
    X(CG_SIDE_AIR, "air")                                 \
    X(CG_SIDE_FRICTION, "friction")

enum cg_side {
#define CG_SIDE_NAME(name, text) name,
    CG_SIDE_LIST(CG_SIDE_NAME)
#undef CG_SIDE_NAME
    CG_SIDES
};

const char *cg_side_text(enum cg_side side);

struct cg_network {
    size_t nodes, links, baths, sources;

    double *capacity; /* [nodes] heat capacity [J/K], > 0 */
    char (*name)[24]; /* [nodes] for tables, e.g. "liner_03_1" */

    size_t *link_a, *link_b;  /* [links] node indices, a != b */
    double *link_conductance; /* [links] [W/K], >= 0 */

    size_t *bath_node;        /* [baths] */
    double *bath_conductance; /* [baths] [W/K], >= 0 */
    double *bath_temperature; /* [baths] [K] */
    enum cg_side *bath_side;  /* [baths] */

    size_t *source_node;       /* [sources] */
    double *source_power;      /* [sources] [W] */
    enum cg_side *source_side; /* [sources] */

    size_t nodes_allocated, links_allocated, baths_allocated, sources_allocated;
    size_t named; /* nodes that have a name, in use or left by a rewind */
};

/* An empty network; free with cg_network_free.  Fails with CG_NO_MEMORY. */
enum cg_status cg_network_create(struct cg_network **network,
                                 struct cg_error *error);
/* Accepts NULL. */
void cg_network_free(struct cg_network *network);

/* Takes out all nodes, links, baths and sources, but keeps their memory and the
 * nodes' names: the same network can be put in anew with other values. */
void cg_network_rewind(struct cg_network *network);

/* Whether the node to be added next has its name from before a rewind:
 * cg_network_add_node then reads none. */
bool cg_network_has_name(const struct cg_network *network);

/* Each adder stores the new element's index in *index (NULL allowed).
 * Fail with CG_NO_MEMORY only; arguments out of range are asserts. */
enum cg_status cg_network_add_node(struct cg_network *network,
                                   const char *name, double capacity,
                                   size_t *index, struct cg_error *error);
enum cg_status cg_network_add_link(struct cg_network *network, size_t a,
                                   size_t b, double conductance,
                                   size_t *index, struct cg_error *error);
enum cg_status cg_network_add_bath(struct cg_network *network, size_t node,
                                   double conductance, double temperature,
                                   enum cg_side side, size_t *index,
                                   struct cg_error *error);
enum cg_status cg_network_add_source(struct cg_network *network, size_t node,
                                     double power, enum cg_side side,
                                     size_t *index, struct cg_error *error);

/* Net heat flow into every node [W] at the given node temperatures [K].
 * net and temperature have `nodes` entries.  Cannot fail. */
void cg_network_net_heat(const struct cg_network *network,
                         const double *temperature, double *net);

/* Heat entering the network from outside [W], summed by side:
 * by_side has CG_SIDES entries.  Cannot fail. */
void cg_network_heat_by_side(const struct cg_network *network,
                             const double *temperature, double *by_side);

/* Heat stored above 0 K, sum of C T [J].  Cannot fail. */
double cg_network_stored_heat(const struct cg_network *network,
                              const double *temperature);

/* The first node without any way to a bath over conductances > 0 W/K, or
 * `nodes` when there is none; such a node has no settled temperature.
 * grounded is scratch of `nodes` entries.  Cannot fail. */
size_t cg_network_find_floating(const struct cg_network *network,
                                char *grounded);

#endif
