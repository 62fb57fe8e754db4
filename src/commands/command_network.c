#include <stdio.h>

#include "cautions.h"
#include "network_tables.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "taught.h"

#define TABLES                                                                 \
    "network_nodes.dat network_links.dat network_baths.dat "                   \
    "network_sources.dat network.cir network_run.dat"

enum cg_status cg_command_network(const struct cg_options *options,
                                  struct cg_error *error)
{
    struct cg_taught taught;
    const struct cg_case *c = &taught.c;
    struct cg_duty_run *run = NULL;
    struct cg_table_of of;
    const char *dir = options->out != NULL ? options->out : "out";
    enum cg_status status = cg_taught_read(options->config, options->set,
                                           options->sets, false, &taught,
                                           error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, dir, TABLES, error);
    if (status == CG_OK)
        status = cg_duty_run_create(c, &run, error);
    if (status == CG_OK) {
        cg_table_of_set(options->told, c, &of);
        status = cg_network_tables_write(dir, &of, c, run, error);
    }
    if (status == CG_OK && !options->quiet) {
        const struct cg_network *network = run->thermal->network;
        printf("Thermal network of one cylinder: %zu nodes, %zu links, %zu "
               "baths, %zu sources.\n"
               "Written to %s: network_nodes.dat, _links, _baths and _sources,\n"
               "network.cir (SPICE; volts are degrees C), network_run.dat\n"
               "(coldgap's own answer: %g s at rated speed, full load).\n"
               "To compare: ngspice -b %s/network.cir\n\n"
               "%s\n",
               network->nodes, network->links, network->baths,
               network->sources, cg_plain(dir).text, CG_NETWORK_SECONDS,
               cg_plain_word(dir).text,
               cg_cautions_text());
    }
    cg_duty_run_free(run);
    cg_taught_free(&taught);
    return status;
}
