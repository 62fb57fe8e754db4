#include "bench_network.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "chain.h"
#include "constants.h"

static const struct cg_solid iron = {46, 7200.0 * 500};
static const struct cg_solid alloy = {155, 2680.0 * 960};
static const struct cg_solid steel = {38, 7800.0 * 480};

enum { RADIAL = 6, CROWN = 10, LAND = 4, SKIRT = 12, STATIONS = 30 };

#define BORE_RADIUS 0.043
#define LINER_LENGTH 0.120
#define GAS_LIGHT_H 220.0   /* [W/(m2 K)] */
#define GAS_LIGHT_T 850.0   /* [K] */
#define GAS_FULL_FACTOR 4.2 /* times the coefficient [1] */
#define GAS_FULL_T 1180.0   /* [K] */

static void must(enum cg_status status, const struct cg_error *error)
{
    if (status == CG_OK)
        return;
    fprintf(stderr, "bench network: %s\n", error->text);
    exit(cg_status_exit(status));
}

static void bath(struct cg_network *network, size_t node, double conductance,
                 double temperature, enum cg_side side)
{
    struct cg_error error;
    must(cg_network_add_bath(network, node, conductance, temperature, side,
                             NULL, &error),
         &error);
}

static void join(struct cg_network *network, size_t a, size_t b,
                 double conductance)
{
    struct cg_error error;
    must(cg_network_add_link(network, a, b, conductance, NULL, &error), &error);
}

static size_t add_chain(struct cg_network *network, const char *name,
                        struct cg_chain *chain)
{
    struct cg_error error;
    must(cg_chain_add(network, name, chain, &error), &error);
    return chain->first;
}

/* Stations from the deck down, each a radial chain with coolant behind it. */
static void add_liner(struct cg_network *network, size_t stations)
{
    double height = LINER_LENGTH / (double)stations;
    for (size_t s = 0; s < stations; s++) {
        char name[32];
        snprintf(name, sizeof name, "liner_%02zu", s + 1);
        struct cg_chain wall = {.shape = CG_CHAIN_RADIAL,
                                .from = BORE_RADIUS,
                                .to = BORE_RADIUS + 0.007,
                                .width = height,
                                .solid = iron,
                                .cells = RADIAL};
        size_t first = add_chain(network, name, &wall);
        double depth = ((double)s + 0.5) * height;
        double bore_area = 2 * CG_PI * BORE_RADIUS * height;
        double film = GAS_LIGHT_H * exp(-depth / 0.03) * bore_area;
        bath(network, first,
             cg_series(film, cg_chain_end_conductance(&wall, 0)), GAS_LIGHT_T,
             CG_SIDE_GAS);
        bath(network, first + RADIAL - 1,
             cg_series((depth < 0.09 ? 5000.0 : 60.0) * 2 * CG_PI * wall.to *
                           height,
                       cg_chain_end_conductance(&wall, 1)),
             365, CG_SIDE_COOLANT);
        for (size_t c = 0; s > 0 && c < RADIAL; c++)
            join(network, first + c - RADIAL, first + c,
                 iron.conductivity * cg_chain_flat_area(&wall, c) / height);
    }
}

/* A contact shared out over the first cells of all stations. */
static void rub(struct cg_network *network, size_t node, size_t stations,
                double conductance, double reach)
{
    for (size_t s = 0; s < stations; s++) {
        double x = ((double)s + 0.5) / (double)stations;
        double share = (1 + reach * cos(CG_PI * x)) / (double)stations;
        join(network, node, s * RADIAL, conductance * share);
    }
}

/* Crown disk, lands and skirt as one path; its cells touch gas, oil and, by
 * the top land and the skirt, the liner.  Returns the first node. */
static size_t add_piston(struct cg_network *network, size_t refine,
                         size_t stations)
{
    size_t crown = CROWN * refine, shell = (LAND + SKIRT) * refine;
    struct cg_chain disk = {.shape = CG_CHAIN_RADIAL,
                            .from = 0,
                            .to = 0.0425,
                            .width = 0.008,
                            .solid = alloy,
                            .cells = crown};
    struct cg_chain down = {.shape = CG_CHAIN_PLANE,
                            .from = 0,
                            .to = 0.050,
                            .width = 2 * CG_PI * 0.040 * 0.006,
                            .solid = alloy,
                            .cells = shell};
    size_t first = add_chain(network, "crown", &disk);
    size_t below = add_chain(network, "shell", &down);
    join(network, below - 1, below,
         cg_series(cg_chain_end_conductance(&disk, 1),
                   cg_chain_end_conductance(&down, 0)));
    for (size_t c = 0; c < crown; c++) {
        double area = cg_chain_flat_area(&disk, c);
        bath(network, first + c, GAS_LIGHT_H * area, GAS_LIGHT_T, CG_SIDE_GAS);
        bath(network, first + c, 900 * area, 375, CG_SIDE_OIL);
    }
    double side = 2 * CG_PI * 0.0425 * 0.050 / (double)shell;
    for (size_t c = 0; c < shell; c++)
        bath(network, below + c, 350 * side, 375, CG_SIDE_OIL);
    rub(network, below, stations, 2.0, 0.9);
    for (size_t k = 0; k < 6; k++)
        rub(network, below + (LAND + 1 + 2 * k) * refine - 1, stations, 3.0,
            0.6);
    return below;
}

static void add_rings(struct cg_network *network, size_t below, size_t refine,
                      size_t stations)
{
    for (size_t r = 0; r < 3; r++) {
        char name[24];
        snprintf(name, sizeof name, "ring_%zu", r + 1);
        struct cg_chain ring = {.shape = CG_CHAIN_RADIAL,
                                .from = 0.0397,
                                .to = BORE_RADIUS,
                                .width = 0.0012,
                                .solid = steel,
                                .cells = 3};
        size_t first = add_chain(network, name, &ring);
        for (size_t c = 0; c < 3; c++)
            join(network, below + (r + 1) * refine, first + c, 1.1);
        rub(network, first + 2, stations, 9.0, 0.6 - 0.1 * (double)r);
    }
}

struct cg_network *bench_network_create(size_t refine)
{
    struct cg_error error;
    struct cg_network *network;
    must(cg_network_create(&network, &error), &error);
    size_t stations = 30 * refine;
    add_liner(network, stations);
    size_t below = add_piston(network, refine, stations);
    add_rings(network, below, refine, stations);
    return network;
}

void bench_network_pull(struct cg_network *network)
{
    for (size_t b = 0; b < network->baths; b++) {
        if (network->bath_side[b] != CG_SIDE_GAS)
            continue;
        network->bath_temperature[b] = GAS_FULL_T;
        network->bath_conductance[b] *= GAS_FULL_FACTOR;
    }
}
