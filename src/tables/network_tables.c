#include "network_tables.h"

#include <stdlib.h>
#include <string.h>

#include "cautions.h"
#include "constants.h"
#include "geometry.h"
#include "stepper.h"
#include "table.h"

enum { TRACKED = 5 };
static const char *const tracked_name[TRACKED] = {
    "crown_C", "groove_top_C", "ring_top_C", "liner_top_C", "liner_low_C"};

static double celsius(double kelvin)
{
    return kelvin - CG_ZERO_CELSIUS;
}

static size_t station_at(const struct cg_thermal *thermal, double depth)
{
    double place = depth / cg_station_height(&thermal->bore.grid);
    size_t last = thermal->bore.grid.stations - 1;
    return place < (double)last ? (size_t)place : last;
}

/* Nodes of the columns: crown centre, top groove, middle of the top ring, bore
 * surface at the top and the bottom of the top ring's travel. */
static void find_tracked(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         size_t node[TRACKED])
{
    const struct cg_chain *ring = &thermal->ring[CG_RING_TOP].chain;
    double top = cg_ring_turn(c, CG_RING_TOP);
    node[0] = thermal->piston.node[0];
    node[1] = thermal->piston.groove[CG_RING_TOP];
    node[2] = ring->first + cg_chain_nodes(ring) / 2;
    node[3] = cg_thermal_liner_node(thermal, station_at(thermal, top), 0);
    node[4] = cg_thermal_liner_node(
        thermal, station_at(thermal, top + c->engine.stroke), 0);
}

/* One table of the network; its rows are written by the one who opened it. */
static enum cg_status open_part(const char *dir, const struct cg_table_of *of,
                                const char *name, const char *columns,
                                const char *remarks, struct cg_table **table,
                                struct cg_error *error)
{
    struct cg_table_head head = {
        "Thermal network at rated speed and full load, one cylinder", of,
        columns, remarks};
    return cg_table_open(dir, name, &head, table, error);
}

static enum cg_status write_nodes(const char *dir, const struct cg_table_of *of,
                                  const struct cg_network *network,
                                  const double *start, struct cg_error *error)
{
    struct cg_table *table;
    enum cg_status status =
        open_part(dir, of, "network_nodes.dat",
                  "node  name  capacity_J_K  start_C", NULL, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < network->nodes; i++)
        cg_table_line(table, "%zu %s %.12g %.12g", i, network->name[i],
                      network->capacity[i], celsius(start[i]));
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_links(const char *dir, const struct cg_table_of *of,
                                  const struct cg_network *network,
                                  struct cg_error *error)
{
    struct cg_table *table;
    enum cg_status status = open_part(dir, of, "network_links.dat",
                                      "node  other  conductance_W_K",
                                      "between two nodes", &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < network->links; i++)
        cg_table_line(table, "%zu %zu %.12g", network->link_a[i],
                      network->link_b[i], network->link_conductance[i]);
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_baths(const char *dir, const struct cg_table_of *of,
                                  const struct cg_network *network,
                                  struct cg_error *error)
{
    struct cg_table *table;
    enum cg_status status =
        open_part(dir, of, "network_baths.dat",
                  "node  conductance_W_K  temperature_C",
                  "from a node to what keeps its temperature", &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < network->baths; i++)
        cg_table_line(table, "%zu %.12g %.12g", network->bath_node[i],
                      network->bath_conductance[i],
                      celsius(network->bath_temperature[i]));
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_sources(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_network *network,
                                    struct cg_error *error)
{
    struct cg_table *table;
    enum cg_status status =
        open_part(dir, of, "network_sources.dat", "node  heat_W",
                  "heat made in a node", &table, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < network->sources; i++)
        cg_table_line(table, "%zu %.12g", network->source_node[i],
                      network->source_power[i]);
    return cg_table_close(table, CG_OK, error);
}

static enum cg_status write_network(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_network *network,
                                    const double *start,
                                    struct cg_error *error)
{
    enum cg_status status = write_nodes(dir, of, network, start, error);
    if (status == CG_OK)
        status = write_links(dir, of, network, error);
    if (status == CG_OK)
        status = write_baths(dir, of, network, error);
    if (status == CG_OK)
        status = write_sources(dir, of, network, error);
    return status;
}

static void netlist_elements(struct cg_table *table,
                             const struct cg_network *network,
                             const double *start)
{
    for (size_t i = 0; i < network->nodes; i++)
        cg_table_line(table, "C%zu n%zu 0 %.12g ic=%.12g", i, i,
                      network->capacity[i], celsius(start[i]));
    for (size_t i = 0; i < network->links; i++)
        if (network->link_conductance[i] > 0.0)
            cg_table_line(table, "RL%zu n%zu n%zu %.12g", i,
                          network->link_a[i], network->link_b[i],
                          1.0 / network->link_conductance[i]);
    for (size_t i = 0; i < network->baths; i++) {
        if (!(network->bath_conductance[i] > 0.0))
            continue;
        cg_table_line(table, "VB%zu b%zu 0 %.12g", i, i,
                      celsius(network->bath_temperature[i]));
        cg_table_line(table, "RB%zu n%zu b%zu %.12g", i,
                      network->bath_node[i], i,
                      1.0 / network->bath_conductance[i]);
    }
    for (size_t i = 0; i < network->sources; i++)
        cg_table_line(table, "IS%zu 0 n%zu %.12g", i, network->source_node[i],
                      network->source_power[i]);
}

/* Volts are degrees C, amperes watts, farads joules per kelvin.  The first
 * line of a netlist is its title; the table's comment lines begin with "#",
 * which SPICE does not know, so the netlist is written with "*" by hand. */
static enum cg_status
write_netlist(const char *dir, const struct cg_table_of *of,
              const struct cg_network *network, const double *start,
              const size_t node[TRACKED], struct cg_error *error)
{
    struct cg_table_head head = {NULL, of, NULL, NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "network.cir", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_line(table, "coldgap thermal network, config %s", of->config);
    cg_table_line(table, "* %s", cg_cautions_short());
    cg_table_line(table, "* volts: degrees C; amperes: W; farads: J/K; ohms: "
                         "K/W; ground: 0 C");
    netlist_elements(table, network, start);
    cg_table_line(table, ".options reltol=1e-6 method=gear");
    cg_table_line(table, ".tran 0.05 %g 0 0.02 uic", CG_NETWORK_SECONDS);
    cg_table_line(table, ".print tran v(n%zu) v(n%zu) v(n%zu) v(n%zu) "
                         "v(n%zu)",
                  node[0], node[1], node[2], node[3], node[4]);
    cg_table_line(table, ".end");
    return cg_table_close(table, CG_OK, error);
}

/* Steps the transient from table time to table time. */
static enum cg_status run_transient(const struct cg_case *c,
                                    struct cg_duty_run *run,
                                    struct cg_table *table,
                                    const size_t node[TRACKED],
                                    double *temperature,
                                    struct cg_error *error)
{
    struct cg_drive drive = {NULL, NULL, true};
    struct cg_step_control control = {.tolerance =
                                          0.1 * c->solver.tolerance};
    double interval = c->solver.table_step;
    long rows = (long)(CG_NETWORK_SECONDS / interval + 0.5);
    enum cg_status status = CG_OK;
    for (long i = 0; i <= rows && status == CG_OK; i++) {
        if (i > 0)
            status = cg_stepper_run(
                run->workspace.stepper, run->thermal->network, &drive,
                (double)(i - 1) * interval, (double)i * interval, &control,
                temperature, NULL, NULL, NULL, error);
        double values[1 + TRACKED] = {(double)i * interval};
        for (size_t k = 0; k < TRACKED; k++)
            values[1 + k] = celsius(temperature[node[k]]);
        if (status == CG_OK)
            cg_table_row(table, values, 1 + TRACKED);
    }
    return status;
}

static enum cg_status write_run(const char *dir, const struct cg_table_of *of,
                                const struct cg_case *c,
                                struct cg_duty_run *run,
                                const size_t node[TRACKED],
                                double *temperature, struct cg_error *error)
{
    struct cg_table_head head = {
        "coldgap's own answer to the transient of the network", of,
        "time_s  crown_C  groove_top_C  ring_top_C  liner_top_C  liner_low_C",
        "ring: its middle; liner: the stations where the top ring turns"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "network_run.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    for (size_t k = 0; k < TRACKED; k++)
        cg_table_note(table, "node %s = %zu", tracked_name[k], node[k]);
    status = run_transient(c, run, table, node, temperature, error);
    return cg_table_close(table, status, error);
}

enum cg_status cg_network_tables_write(const char *dir,
                                       const struct cg_table_of *of,
                                       const struct cg_case *c,
                                       struct cg_duty_run *run,
                                       struct cg_error *error)
{
    const struct cg_operating_point *full = &run->point[run->full_load];
    struct cg_network *network = run->thermal->network;
    size_t node[TRACKED];
    double *temperature = malloc(network->nodes * sizeof *temperature);
    if (temperature == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    find_tracked(c, run->thermal, node);
    cg_duty_run_start(c, run, temperature);
    cg_point_apply(full, full, 0.0, run->thermal);
    enum cg_status status =
        write_network(dir, of, network, temperature, error);
    if (status == CG_OK)
        status = write_netlist(dir, of, network, temperature, node, error);
    if (status == CG_OK)
        status = write_run(dir, of, c, run, node, temperature, error);
    free(temperature);
    return status;
}
