#include <stdio.h>

#include "network_tables.h"
#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "updated_case.h"

#define TABLES                                                                 \
    "network_nodes.dat network_links.dat network_baths.dat "                   \
    "network_sources.dat network.cir network_run.dat"

/* What stands in the tables. */
static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct cg_duty_run *run = context;
    const struct cg_network *network = run->thermal->network;
    const struct {
        const char *key, *label;
        size_t count;
    } parts[] = {{"nodes", "Nodes", network->nodes},
                 {"links", "Links", network->links},
                 {"baths", "Baths", network->baths},
                 {"sources", "Sources", network->sources}};
    (void)error;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        cg_report_row(report, parts[i].key, parts[i].label,
                      cg_quantity(CG_SHOW_COUNT, (double)parts[i].count));
    cg_report_say(report,
                  "The thermal network of one cylinder: "
                  "network_nodes.dat, network_links.dat, network_baths.dat and "
                  "network_sources.dat are tables of it, network.cir a SPICE "
                  "netlist (volts are degrees C), network_run.dat coldgap's "
                  "own answer, %g s at rated speed and full load.",
                  CG_NETWORK_SECONDS);
    cg_report_first_part_ends(report);
    return CG_OK;
}

enum cg_status cg_command_network(const struct cg_options *options,
                                  struct cg_error *error)
{
    struct cg_updated_case updated;
    const struct cg_case *c = &updated.c;
    struct cg_duty_run *run = NULL;
    struct cg_table_of of;
    const char *dir = options->out != NULL ? options->out : "out";
    enum cg_status status = cg_updated_case_read(options->config, options->set,
                                           options->sets, false, &updated,
                                           error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, dir, TABLES, error);
    if (status == CG_OK)
        status = cg_duty_run_create(c, &run, error);
    if (status == CG_OK) {
        cg_table_of_set(options->told, c, &of);
        status = cg_network_tables_write(dir, &of, c, run, error);
    }
    struct cg_outputs outputs = {.title = "Thermal network of one cylinder",
                                 .of = &of,
                                 .run = "network",
                                 .tell = tell,
                                 .context = run};
    if (status == CG_OK)
        status = cg_outputs_write(options, &outputs, error);
    if (status == CG_OK && cg_outputs_talk(options))
        printf("\nWritten to %s: %s\nTo compare: ngspice -b %s/network.cir\n",
               cg_plain(dir).text, TABLES, cg_plain_word(dir).text);
    cg_duty_run_free(run);
    cg_updated_case_free(&updated);
    cg_case_free(&updated.c);
    return status;
}
