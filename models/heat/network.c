/* Storage of a thermal network and its heat flows.
 *
 * Symbols: T node temperature [K], G conductance [W/K], W power [W],
 * C heat capacity [J/K].
 */
#include "network.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

const char *cg_side_text(enum cg_side side)
{
    switch (side) {
#define CG_SIDE_CASE(name, text)                                               \
    case name:                                                                 \
        return text;
        CG_SIDE_LIST(CG_SIDE_CASE)
#undef CG_SIDE_CASE
    case CG_SIDES:
        break;
    }
    return "unknown side";
}

/* One parallel array to be enlarged. */
struct column {
    void *array; /* address of the array's pointer */
    size_t size; /* of one entry [bytes] */
};

/* Enlarges `count` parallel arrays from *allocated to at least one entry more.
 * *allocated changes last: a failure half-way only wastes some memory. */
static enum cg_status grow(const struct column *columns, size_t count,
                           size_t used, size_t *allocated,
                           struct cg_error *error)
{
    if (used < *allocated)
        return CG_OK;
    size_t wanted = *allocated == 0 ? 64 : 2 * *allocated;
    for (size_t c = 0; c < count; c++) {
        void *array;
        memcpy(&array, columns[c].array, sizeof array);
        if (wanted > SIZE_MAX / columns[c].size)
            return cg_error_set(error, CG_NO_MEMORY, "network too large");
        array = realloc(array, wanted * columns[c].size);
        if (array == NULL)
            return cg_error_set(error, CG_NO_MEMORY,
                                "no memory for a network of %zu entries",
                                wanted);
        memcpy(columns[c].array, &array, sizeof array);
    }
    *allocated = wanted;
    return CG_OK;
}

enum cg_status cg_network_create(struct cg_network **network,
                                 struct cg_error *error)
{
    struct cg_network *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "no memory for a network");
    *network = made;
    return CG_OK;
}

void cg_network_free(struct cg_network *network)
{
    if (network == NULL)
        return;
    free(network->capacity);
    free(network->name);
    free(network->link_a);
    free(network->link_b);
    free(network->link_conductance);
    free(network->bath_node);
    free(network->bath_conductance);
    free(network->bath_temperature);
    free(network->bath_side);
    free(network->source_node);
    free(network->source_power);
    free(network->source_side);
    free(network);
}

void cg_network_rewind(struct cg_network *network)
{
    network->nodes = network->links = 0;
    network->baths = network->sources = 0;
}

bool cg_network_has_name(const struct cg_network *network)
{
    return network->nodes < network->named;
}

static void publish(size_t *index, size_t *count)
{
    if (index != NULL)
        *index = *count;
    (*count)++;
}

enum cg_status cg_network_add_node(struct cg_network *network, const char *name,
                                   double capacity, size_t *index,
                                   struct cg_error *error)
{
    assert(capacity > 0 && isfinite(capacity));
    const struct column columns[] = {
        {&network->capacity, sizeof *network->capacity},
        {&network->name, sizeof *network->name},
    };
    enum cg_status status =
        grow(columns, sizeof columns / sizeof *columns, network->nodes,
             &network->nodes_allocated, error);
    if (status != CG_OK)
        return status;
    size_t i = network->nodes;
    network->capacity[i] = capacity;
    if (!cg_network_has_name(network)) {
        size_t length = strlen(name), allocated = sizeof network->name[i] - 1;
        length = length < allocated ? length : allocated;
        memcpy(network->name[i], name, length);
        network->name[i][length] = '\0';
        network->named = i + 1;
    }
    publish(index, &network->nodes);
    return CG_OK;
}

enum cg_status cg_network_add_link(struct cg_network *network, size_t a,
                                   size_t b, double conductance, size_t *index,
                                   struct cg_error *error)
{
    assert(a < network->nodes && b < network->nodes && a != b);
    assert(conductance >= 0 && isfinite(conductance));
    const struct column columns[] = {
        {&network->link_a, sizeof *network->link_a},
        {&network->link_b, sizeof *network->link_b},
        {&network->link_conductance, sizeof *network->link_conductance},
    };
    enum cg_status status =
        grow(columns, sizeof columns / sizeof *columns, network->links,
             &network->links_allocated, error);
    if (status != CG_OK)
        return status;
    size_t i = network->links;
    network->link_a[i] = a;
    network->link_b[i] = b;
    network->link_conductance[i] = conductance;
    publish(index, &network->links);
    return CG_OK;
}

enum cg_status cg_network_add_bath(struct cg_network *network, size_t node,
                                   double conductance, double temperature,
                                   enum cg_side side, size_t *index,
                                   struct cg_error *error)
{
    assert(node < network->nodes && side < CG_SIDES);
    assert(conductance >= 0 && isfinite(conductance));
    const struct column columns[] = {
        {&network->bath_node, sizeof *network->bath_node},
        {&network->bath_conductance, sizeof *network->bath_conductance},
        {&network->bath_temperature, sizeof *network->bath_temperature},
        {&network->bath_side, sizeof *network->bath_side},
    };
    enum cg_status status =
        grow(columns, sizeof columns / sizeof *columns, network->baths,
             &network->baths_allocated, error);
    if (status != CG_OK)
        return status;
    size_t i = network->baths;
    network->bath_node[i] = node;
    network->bath_conductance[i] = conductance;
    network->bath_temperature[i] = temperature;
    network->bath_side[i] = side;
    publish(index, &network->baths);
    return CG_OK;
}

enum cg_status cg_network_add_source(struct cg_network *network, size_t node,
                                     double power, enum cg_side side,
                                     size_t *index, struct cg_error *error)
{
    assert(node < network->nodes && side < CG_SIDES);
    const struct column columns[] = {
        {&network->source_node, sizeof *network->source_node},
        {&network->source_power, sizeof *network->source_power},
        {&network->source_side, sizeof *network->source_side},
    };
    enum cg_status status =
        grow(columns, sizeof columns / sizeof *columns, network->sources,
             &network->sources_allocated, error);
    if (status != CG_OK)
        return status;
    size_t i = network->sources;
    network->source_node[i] = node;
    network->source_power[i] = power;
    network->source_side[i] = side;
    publish(index, &network->sources);
    return CG_OK;
}

void cg_network_net_heat(const struct cg_network *network,
                         const double *temperature, double *net)
{
    for (size_t i = 0; i < network->nodes; i++)
        net[i] = 0;
    for (size_t i = 0; i < network->links; i++) {
        size_t a = network->link_a[i], b = network->link_b[i];
        double flow =
            network->link_conductance[i] * (temperature[b] - temperature[a]);
        net[a] += flow;
        net[b] -= flow;
    }
    for (size_t i = 0; i < network->baths; i++) {
        size_t node = network->bath_node[i];
        net[node] += network->bath_conductance[i] *
                     (network->bath_temperature[i] - temperature[node]);
    }
    for (size_t i = 0; i < network->sources; i++)
        net[network->source_node[i]] += network->source_power[i];
}

void cg_network_heat_by_side(const struct cg_network *network,
                             const double *temperature, double *by_side)
{
    for (size_t i = 0; i < CG_SIDES; i++)
        by_side[i] = 0;
    for (size_t i = 0; i < network->baths; i++)
        by_side[network->bath_side[i]] +=
            network->bath_conductance[i] *
            (network->bath_temperature[i] - temperature[network->bath_node[i]]);
    for (size_t i = 0; i < network->sources; i++)
        by_side[network->source_side[i]] += network->source_power[i];
}

double cg_network_stored_heat(const struct cg_network *network,
                              const double *temperature)
{
    double stored = 0;
    for (size_t i = 0; i < network->nodes; i++)
        stored += network->capacity[i] * temperature[i];
    return stored;
}

size_t cg_network_find_floating(const struct cg_network *network,
                                char *grounded)
{
    for (size_t i = 0; i < network->nodes; i++)
        grounded[i] = 0;
    for (size_t b = 0; b < network->baths; b++)
        if (network->bath_conductance[b] > 0)
            grounded[network->bath_node[b]] = 1;
    /* Sweeps over the links, up and down by turns: a few suffice when bodies
     * are numbered end to end. */
    bool changed = true;
    for (bool up = true; changed; up = !up) {
        changed = false;
        for (size_t l = 0; l < network->links; l++) {
            size_t link = up ? l : network->links - 1 - l;
            size_t a = network->link_a[link], b = network->link_b[link];
            if (grounded[a] == grounded[b] ||
                !(network->link_conductance[link] > 0))
                continue;
            grounded[a] = grounded[b] = 1;
            changed = true;
        }
    }
    for (size_t i = 0; i < network->nodes; i++)
        if (!grounded[i])
            return i;
    return network->nodes;
}
