#include "pivot_order.h"

#include <assert.h>
#include <stdbool.h>
#include <stdlib.h>

enum { BITS = 64 };

/* Neighbours as rows of bits; a node is its own. */
struct graph {
    size_t nodes, words;
    uint64_t *row;  /* [nodes * words] */
    size_t *degree; /* [nodes] neighbours but itself; once it is gone: then */
    size_t *having; /* [nodes] how many of those left have so many */
    bool *gone;     /* [nodes] */
};

static uint64_t *row_of(const struct graph *graph, size_t node)
{
    return graph->row + node * graph->words;
}

static void join(struct graph *graph, size_t a, size_t b)
{
    uint64_t *word = &row_of(graph, a)[b / BITS];
    uint64_t bit = (uint64_t)1 << (b % BITS);
    graph->degree[a] += a != b && (*word & bit) == 0;
    *word |= bit;
}

/* The neighbour after `node` in a row, or the first; `nodes` past the last. */
static size_t next_in(const struct graph *graph, const uint64_t *row,
                      size_t from)
{
    size_t w = from / BITS;
    if (from >= graph->nodes)
        return graph->nodes;
    uint64_t left = row[w] >> (from % BITS) << (from % BITS);
    while (left == 0 && ++w < graph->words)
        left = row[w];
    if (left == 0)
        return graph->nodes;
    size_t node = w * BITS;
    for (size_t half = BITS / 2; half > 0; half /= 2)
        if ((left & (((uint64_t)1 << half) - 1)) == 0) {
            left >>= half;
            node += half;
        }
    return node;
}

/* The first of those left with fewest neighbours; none has less than `few`. */
static size_t fewest(const struct graph *graph, size_t few)
{
    size_t node = 0;
    while (graph->having[few] == 0)
        few++;
    while (graph->gone[node] || graph->degree[node] != few)
        node++;
    return node;
}

/* Adds the neighbours of `node` to those of `other`, one of them. */
static void merge(struct graph *graph, size_t node, size_t other)
{
    const uint64_t *from = row_of(graph, node);
    uint64_t *to = row_of(graph, other);
    size_t degree = graph->degree[other];
    graph->having[degree--]--; /* `node` goes */
    for (size_t w = 0; w < graph->words; w++) {
        uint64_t added = from[w] & ~to[w];
        to[w] |= added;
        for (; added != 0; added &= added - 1)
            degree++;
    }
    to[node / BITS] &= ~((uint64_t)1 << (node % BITS));
    graph->degree[other] = degree;
    graph->having[degree]++;
}

static void eliminate(struct graph *graph, size_t node)
{
    const uint64_t *row = row_of(graph, node);
    for (size_t i = next_in(graph, row, 0); i < graph->nodes;
         i = next_in(graph, row, i + 1))
        if (i != node)
            merge(graph, node, i);
    graph->having[graph->degree[node]]--;
    graph->gone[node] = true;
}

/* Rows of the factor from the rows of those gone: each holds who came after. */
static void fill_rows(const struct graph *graph, struct cg_pivot_order *order)
{
    size_t n = order->nodes, *start = order->start;
    for (int pass = 0; pass < 2; pass++) { /* lengths, then columns */
        for (size_t k = 0; k < n; k++) {
            size_t node = order->node[k];
            const uint64_t *row = row_of(graph, node);
            for (size_t i = next_in(graph, row, 0); i < n;
                 i = next_in(graph, row, i + 1))
                if (i != node && pass == 0)
                    start[order->place[i] + 1]++;
                else if (i != node)
                    order->column[start[order->place[i]]++] = (uint32_t)k;
        }
        for (size_t k = 0; k < n && pass == 0; k++)
            start[k + 1] += start[k];
    }
    for (size_t k = n; k > 0; k--) /* each has moved on to the next */
        start[k] = start[k - 1];
    start[0] = 0;
}

static enum cg_status make_graph(size_t nodes, struct graph *graph)
{
    *graph = (struct graph){.nodes = nodes, .words = nodes / BITS + 1};
    graph->row = calloc(nodes * graph->words + 1, sizeof *graph->row);
    graph->degree = calloc(nodes + 1, sizeof *graph->degree);
    graph->having = calloc(nodes + 1, sizeof *graph->having);
    graph->gone = calloc(nodes + 1, sizeof *graph->gone);
    return graph->row == NULL || graph->degree == NULL ||
                   graph->having == NULL || graph->gone == NULL
               ? CG_NO_MEMORY
               : CG_OK;
}

static enum cg_status put_in_order(struct graph *graph,
                                   struct cg_pivot_order *order)
{
    size_t n = graph->nodes;
    order->node = calloc(n + 1, sizeof *order->node);
    order->place = calloc(n + 1, sizeof *order->place);
    order->start = calloc(n + 1, sizeof *order->start);
    if (order->node == NULL || order->place == NULL || order->start == NULL)
        return CG_NO_MEMORY;
    size_t least = 0;
    for (size_t i = 0; i < n; i++)
        graph->having[graph->degree[i]]++;
    for (size_t k = 0; k < n; k++) {
        size_t node = fewest(graph, least);
        /* who loses a neighbour loses one */
        least = graph->degree[node] > 0 ? graph->degree[node] - 1 : 0;
        order->entries += graph->degree[node];
        order->node[k] = (uint32_t)node;
        order->place[node] = (uint32_t)k;
        eliminate(graph, node);
    }
    order->column = calloc(order->entries + 1, sizeof *order->column);
    if (order->column == NULL)
        return CG_NO_MEMORY;
    fill_rows(graph, order);
    return CG_OK;
}

enum cg_status cg_pivot_order_find(size_t nodes, size_t links, const size_t *a,
                                   const size_t *b,
                                   struct cg_pivot_order *order,
                                   struct cg_error *error)
{
    struct graph graph;
    assert(nodes < UINT32_MAX);
    *order = (struct cg_pivot_order){.nodes = nodes};
    enum cg_status status = make_graph(nodes, &graph);
    if (status == CG_OK) {
        for (size_t i = 0; i < nodes; i++)
            join(&graph, i, i);
        for (size_t l = 0; l < links; l++) {
            join(&graph, a[l], b[l]);
            join(&graph, b[l], a[l]);
        }
        status = put_in_order(&graph, order);
    }
    free(graph.row);
    free(graph.degree);
    free(graph.having);
    free(graph.gone);
    if (status == CG_OK)
        return CG_OK;
    cg_pivot_order_free(order);
    return cg_error_set(error, status, "no memory for a matrix of %zu rows",
                        nodes);
}

void cg_pivot_order_free(struct cg_pivot_order *order)
{
    free(order->node);
    free(order->place);
    free(order->start);
    free(order->column);
    *order = (struct cg_pivot_order){0};
}
