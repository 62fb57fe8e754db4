/* Finite volumes for one-dimensional bodies.
 *
 * Symbols: x, r position along the chain [m], A, w cross-section [m2] or
 * height [m], k conductivity, rho c heat capacity per volume.
 *
 * Steady flow between two positions is exact for the shape:
 *   plane   G = k A / (x2 - x1)
 *   radial  G = 2 pi k w / ln(r2 / r1)
 * H. S. Carslaw and J. C. Jaeger, "Conduction of Heat in Solids" (1959),
 * sections 3.2 and 7.2.
 */
#include "chain.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>

#include "constants.h"

double cg_chain_face(const struct cg_chain *chain, size_t cell)
{
    assert(cell <= chain->cells);
    double share = (double)cell / (double)chain->cells;
    return chain->from + share * (chain->to - chain->from);
}

double cg_chain_centre(const struct cg_chain *chain, size_t cell)
{
    return 0.5 * (cg_chain_face(chain, cell) + cg_chain_face(chain, cell + 1));
}

size_t cg_chain_nodes(const struct cg_chain *chain)
{
    return chain->nodes_on_faces ? chain->cells + 1 : chain->cells;
}

double cg_chain_position(const struct cg_chain *chain, size_t node)
{
    return chain->nodes_on_faces ? cg_chain_face(chain, node)
                                 : cg_chain_centre(chain, node);
}

/* The bounds of what a node stands for: its cell, or, with nodes on the faces,
 * the halves of the two cells it parts. */
static double lower_bound(const struct cg_chain *chain, size_t node)
{
    if (!chain->nodes_on_faces)
        return cg_chain_face(chain, node);
    return node > 0 ? cg_chain_centre(chain, node - 1) : chain->from;
}

static double upper_bound(const struct cg_chain *chain, size_t node)
{
    if (!chain->nodes_on_faces)
        return cg_chain_face(chain, node + 1);
    return node < chain->cells ? cg_chain_centre(chain, node) : chain->to;
}

double cg_chain_flat_area(const struct cg_chain *chain, size_t node)
{
    assert(chain->shape == CG_CHAIN_RADIAL);
    double inner = lower_bound(chain, node);
    double outer = upper_bound(chain, node);
    return CG_PI * (outer + inner) * (outer - inner);
}

static double conductance(const struct cg_chain *chain, double from, double to)
{
    double k = chain->solid.conductivity;
    switch (chain->shape) {
    case CG_CHAIN_PLANE:
        return k * chain->width / (to - from);
    case CG_CHAIN_RADIAL:
        return 2 * CG_PI * k * chain->width / log(to / from);
    }
    return NAN; /* not reached: the switch is complete */
}

double cg_chain_end_conductance(const struct cg_chain *chain, int end)
{
    assert(end == 0 || end == 1);
    assert(!chain->nodes_on_faces);
    if (end == 0) {
        assert(chain->shape == CG_CHAIN_PLANE || chain->from > 0);
        return conductance(chain, chain->from, cg_chain_centre(chain, 0));
    }
    return conductance(chain, cg_chain_centre(chain, chain->cells - 1),
                       chain->to);
}

double cg_series(double a, double b)
{
    /* One of them at 0 blocks the path; both at 0 would give 0/0. */
    return a > 0 && b > 0 ? 1 / (1 / a + 1 / b) : 0;
}

static double capacity(const struct cg_chain *chain, size_t node)
{
    double rho_c = chain->solid.volume_capacity;
    if (chain->shape == CG_CHAIN_RADIAL)
        return rho_c * cg_chain_flat_area(chain, node) * chain->width;
    return rho_c * chain->width *
           (upper_bound(chain, node) - lower_bound(chain, node));
}

enum cg_status cg_chain_add(struct cg_network *network, const char *name,
                            struct cg_chain *chain, struct cg_error *error)
{
    assert(chain->cells >= 1 && chain->from < chain->to && chain->width > 0);
    assert(chain->shape == CG_CHAIN_PLANE || chain->from >= 0);
    assert(!chain->nodes_on_faces || chain->shape == CG_CHAIN_PLANE ||
           chain->from > 0);
    size_t first = network->nodes, nodes = cg_chain_nodes(chain);
    for (size_t i = 0; i < nodes; i++) {
        char label[64];
        if (cg_network_has_name(network))
            label[0] = '\0';
        else if (nodes == 1)
            snprintf(label, sizeof label, "%s", name);
        else
            snprintf(label, sizeof label, "%.40s_%zu", name, i + 1);
        enum cg_status status = cg_network_add_node(
            network, label, capacity(chain, i), NULL, error);
        if (status == CG_OK && i > 0)
            status = cg_network_add_link(
                network, first + i - 1, first + i,
                conductance(chain, cg_chain_position(chain, i - 1),
                            cg_chain_position(chain, i)),
                NULL, error);
        if (status != CG_OK)
            return status;
    }
    chain->first = first;
    return CG_OK;
}
