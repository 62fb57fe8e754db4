#include "heat_matrix.h"

#include <assert.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "sparse.h"

struct cg_heat_matrix {
    size_t nodes, links;
    struct cg_sparse *sparse;
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
    cg_sparse_free(matrix->sparse);
    free(matrix->link);
    free(matrix->node);
    free(matrix->scratch);
    free(matrix);
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
    status = cg_sparse_create(made->nodes, made->links, network->link_a,
                              network->link_b, &made->sparse, error);
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
    cg_sparse_take(matrix->sparse, from->sparse);
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
    double *diagonal = matrix->scratch;
    for (size_t i = 0; i < matrix->nodes; i++)
        diagonal[i] = share * network->capacity[i] + time * matrix->node[i];
    matrix->factored = false;
    matrix->factorings++;
    struct cg_error inner;
    enum cg_status status = cg_sparse_factor(matrix->sparse, diagonal,
                                             matrix->link, time, &inner);
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
    cg_sparse_solve(matrix->sparse, x);
}

long cg_heat_matrix_factorings(const struct cg_heat_matrix *matrix)
{
    return matrix->factorings;
}

long cg_heat_matrix_solutions(const struct cg_heat_matrix *matrix)
{
    return matrix->solutions;
}
