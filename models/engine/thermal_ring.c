/* One ring: a short radial body from the groove's back to the face. */
#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "geometry.h"
#include "thermal_parts.h"

static const char *const ring_name[CG_RINGS] = {"ring_top", "ring_second",
                                                "ring_oil"};

static enum cg_status allocate(struct cg_ring_map *ring, size_t stations,
                               struct cg_error *error)
{
    ring->flat_weight =
        malloc(cg_chain_nodes(&ring->chain) * sizeof *ring->flat_weight);
    ring->share = malloc(stations * sizeof *ring->share);
    if (ring->flat_weight == NULL || ring->share == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    return CG_OK;
}

/* Heat enters all along the flank that lies on the groove; a keystone ring's is
 * longer by its slope.  What the slope does to the contact's pressure is left
 * out: contact hardly depends on load (Trans. JSME 29, 1963). */
static enum cg_status link_flank(const struct cg_case *c,
                                 const struct cg_ring_case *in,
                                 const struct cg_chain *chain, size_t groove,
                                 struct cg_network *network,
                                 struct cg_error *error)
{
    double slope = 0.5 * in->keystone_deg * CG_PI / 180.0;
    double coefficient = in->flank_coefficient * c->scale.flank;
    if (slope > 0.0)
        coefficient /= cos(slope);
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < cg_chain_nodes(chain) && status == CG_OK; i++)
        status = cg_network_add_link(
            network, groove, chain->first + i,
            coefficient * cg_chain_flat_area(chain, i), NULL, error);
    return status;
}

enum cg_status cg_thermal_add_ring(const struct cg_case *c,
                                   enum cg_ring_place place, size_t groove,
                                   struct cg_thermal *thermal,
                                   struct cg_error *error)
{
    const struct cg_ring_case *in = &c->ring[place];
    const struct cg_material *material = &c->ring_material[place];
    struct cg_ring_map *ring = &thermal->ring[place];
    struct cg_network *network = thermal->network;

    ring->chain = (struct cg_chain){
        .shape = CG_CHAIN_RADIAL,
        .from = cg_ring_inner_radius(c, place),
        .to = cg_ring_outer_radius(c),
        .width = in->width,
        .solid = {c->scale.ring_conductivity *
                      cg_curve_at(&material->conductivity, CG_RING_REFERENCE),
                  material->density * cg_curve_at(&material->heat_capacity,
                                                  CG_RING_REFERENCE)},
        .cells = (size_t)c->solver.ring_cells,
        .nodes_on_faces = true};
    ring->coat = cg_face_resistance(&c->ring_face[place]);
    ring->face_area = 2.0 * CG_PI * ring->chain.to * in->width;

    enum cg_status status = CG_OK;
    if (!thermal->shares_known)
        status = allocate(ring, thermal->bore.grid.stations, error);
    if (status == CG_OK)
        status = cg_chain_add(network, ring_name[place], &ring->chain, error);
    if (status != CG_OK)
        return status;

    size_t nodes = cg_chain_nodes(&ring->chain);
    ring->face = ring->chain.first + nodes - 1;
    double total = 0.0;
    for (size_t i = 0; i < nodes; i++)
        total += ring->flat_weight[i] = cg_chain_flat_area(&ring->chain, i);
    for (size_t i = 0; i < nodes; i++)
        ring->flat_weight[i] /= total;

    status = link_flank(c, in, &ring->chain, groove, network, error);
    if (status != CG_OK)
        return status;

    if (!thermal->shares_known)
        cg_share_time(&thermal->stroke, &thermal->bore.grid,
                      cg_ring_offset(c, place), in->width, ring->share);
    ring->face_link = network->links;
    status = cg_thermal_link_to_bore(thermal, ring->face, 0.0, ring->share,
                                     error);
    if (status == CG_OK)
        status = cg_network_add_source(network, ring->face, 0.0,
                                       CG_SIDE_FRICTION, &ring->source, error);
    return status;
}
