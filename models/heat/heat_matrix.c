#include "heat_matrix.h"

#include <assert.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "envelope.h"

struct cg_heat_matrix {
    size_t nodes, links;
    struct cg_envelope *envelope;
    double *link;       /* [links] conductances last read [W/K] */
    double *node;       /* [nodes] sums of the conductances at a node [W/K] */
    double *scratch;    /* [nodes] */
    double share, time; /* of the factors */
    bool factored;
    long factorings, solutions;
};

void cg_heat_matrix_free(struct cg_heat_matrix *matrix)
{
    if (matrix == NULL)
        return;
    cg_envelope_free(matrix->envelope);
    free(matrix->link);
    free(matrix->node);
    free(matrix->scratch);
    free(matrix);
}

/* The envelope that holds the diagonal and every link. */
static enum cg_status make_envelope(const struct cg_network *network,
                                    struct cg_envelope **envelope,
                                    struct cg_error *error)
{
    size_t *first = calloc(network->nodes + 1, sizeof *first);
    if (first == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "no memory for the matrix");
    for (size_t i = 0; i < network->nodes; i++)
        first[i] = i;
    for (size_t l = 0; l < network->links; l++) {
        size_t a = network->link_a[l], b = network->link_b[l];
        size_t low = a < b ? a : b, high = a < b ? b : a;
        if (low < first[high])
            first[high] = low;
    }
    enum cg_status status =
        cg_envelope_create(network->nodes, first, envelope, error);
    free(first);
    return status;
}

enum cg_status cg_heat_matrix_create(const struct cg_network *network,
                                     struct cg_heat_matrix **matrix,
                                     struct cg_error *error)
{
    enum cg_status status = CG_OK;
    struct cg_heat_matrix *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto no_memory;
    made->nodes = network->nodes;
    made->links = network->links;
    made->link = calloc(made->links + 1, sizeof *made->link);
    made->node = calloc(made->nodes + 1, sizeof *made->node);
    made->scratch = calloc(made->nodes + 1, sizeof *made->scratch);
    if (made->link == NULL || made->node == NULL || made->scratch == NULL)
        goto no_memory;
    status = make_envelope(network, &made->envelope, error);
    if (status != CG_OK)
        goto out;
    *matrix = made;
    return CG_OK;

no_memory:
    status = cg_error_set(error, CG_NO_MEMORY, "no memory for the matrix");
out:
    cg_heat_matrix_free(made);
    return status;
}

void cg_heat_matrix_read(struct cg_heat_matrix *matrix,
                         const struct cg_network *network)
{
    assert(network->nodes == matrix->nodes && network->links == matrix->links);
    double *node = matrix->scratch;
    memset(node, 0, matrix->nodes * sizeof *node);
    for (size_t l = 0; l < network->links; l++) {
        node[network->link_a[l]] += network->link_conductance[l];
        node[network->link_b[l]] += network->link_conductance[l];
    }
    for (size_t b = 0; b < network->baths; b++)
        node[network->bath_node[b]] += network->bath_conductance[b];

    size_t link_size = matrix->links * sizeof *matrix->link;
    size_t node_size = matrix->nodes * sizeof *matrix->node;
    if (memcmp(node, matrix->node, node_size) == 0 &&
        (link_size == 0 ||
         memcmp(network->link_conductance, matrix->link, link_size) == 0))
        return;
    matrix->factored = false;
    memcpy(matrix->node, node, node_size);
    if (link_size > 0)
        memcpy(matrix->link, network->link_conductance, link_size);
}

bool cg_heat_matrix_has(const struct cg_heat_matrix *matrix, double share,
                        double time)
{
    return matrix->factored && share == matrix->share && time == matrix->time;
}

void cg_heat_matrix_take(struct cg_heat_matrix *matrix,
                         const struct cg_heat_matrix *from)
{
    assert(matrix->nodes == from->nodes && matrix->links == from->links);
    memcpy(matrix->link, from->link, from->links * sizeof *matrix->link);
    memcpy(matrix->node, from->node, from->nodes * sizeof *matrix->node);
    cg_envelope_take(matrix->envelope, from->envelope);
    matrix->factored = from->factored;
    matrix->share = from->share;
    matrix->time = from->time;
}

enum cg_status cg_heat_matrix_factor(struct cg_heat_matrix *matrix,
                                     const struct cg_network *network,
                                     double share, double time,
                                     struct cg_error *error)
{
    if (cg_heat_matrix_has(matrix, share, time))
        return CG_OK;
    struct cg_envelope *envelope = matrix->envelope;
    cg_envelope_clear(envelope);
    for (size_t i = 0; i < matrix->nodes; i++)
        cg_envelope_add(envelope, i, i,
                        share * network->capacity[i] + time * matrix->node[i]);
    for (size_t l = 0; l < matrix->links; l++)
        cg_envelope_add(envelope, network->link_a[l], network->link_b[l],
                        -time * matrix->link[l]);
    matrix->factored = false;
    matrix->factorings++;
    struct cg_error inner;
    enum cg_status status = cg_envelope_factor(envelope, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "heat balance: %.400s", inner.text);
    matrix->factored = true;
    matrix->share = share;
    matrix->time = time;
    return CG_OK;
}

void cg_heat_matrix_solve(struct cg_heat_matrix *matrix, double *x)
{
    assert(matrix->factored);
    matrix->solutions++;
    cg_envelope_solve(matrix->envelope, x);
}

long cg_heat_matrix_factorings(const struct cg_heat_matrix *matrix)
{
    return matrix->factorings;
}

long cg_heat_matrix_solutions(const struct cg_heat_matrix *matrix)
{
    return matrix->solutions;
}
