/* The commands one by one, as the manual page tells of them: how to use each,
 * what it reads and what its answer is.  Their one-line summaries are those of
 * the table of commands. */
#include <stdio.h>
#include <string.h>

#include "option_table.h"
#include "pages.h"
#include "roff.h"

/* Paragraphs, each ended by a newline. */
static const struct {
    const char *name, *text;
} commands[] = {
    {"find",
     "Opens with the gap to file both rings to, the verdict on a gap given in "
     "the config, and the reasons; then tells how the gap comes about.\n"
     "With --samples all uncertain inputs are moved at once, N times.\n"},
    {"sweep",
     "--vary names a setting and its values, FROM:TO:STEP or a list; given "
     "again it makes a grid. A point that cannot be computed is a row with its "
     "reason. --resume goes on after the finished rows; rows that the config "
     "would not give any more are refused.\n"
     "--part K/N computes block K of N, for job arrays; the parts joined in "
     "order are the whole table. The bytes do not depend on --threads.\n"},
    {"ceiling",
     "Turns the gap round: --gap, or rings.top.cold_gap of the config, and the "
     "highest boost at which it is still the gap needed. Looks at the ring gap "
     "alone: knock, gasket and rods have ceilings of their own.\n"},
    {"ladder",
     "Follows each part of the engine from no boost to the boost wanted, --to "
     "or the config's, and tells in order of boost what stops it, what to "
     "change, to which boost that holds and what it costs. The least that will "
     "do is offered, from the config and the shipped metals, faces, alloys and "
     "fuels. --write writes the config with all changes, a comment on each "
     "changed line. Status 1 where nothing offered will do.\n"},
    {"seal",
     "Gas past the rings over the cycle: blow-by, when the rings lift, the "
     "second gap, what gas ports change, what a wider gap costs. Use it to "
     "compare, not to set a limit: a blow-by meter shows more.\n"},
    {"sheet",
     "--measured names a table of text with a line a cylinder: columns "
     "cylinder, bore, top_gap, second_gap and measured_in, lengths ending in "
     "_mm, _um, _in or _thou. Commas, semicolons or tabs part the cells; "
     "decimal commas are fine where commas do not part. An empty cell is not "
     "measured. Tells what to take off each ring, in filing steps.\n"},
    {"card",
     "What the shop needs for this engine on one sheet: both gaps with the "
     "filing allowance, parts, clearances to check, the finish to order, what "
     "to measure before and after, what was assumed, and lines to sign. The "
     "gaps are find's. Bands of the finish are those that finish judges by; "
     "grits are a start.\n"
     "--from names the config of the build before: its figures beside these, "
     "the settings that differ, and which of its evidence still proves a gap. "
     "A run without contact does so for the same parts in duties no harder; "
     "--set changes the new build alone.\n"},
    {"finish",
     "--profile names a roughness profile: one height a line (um; give "
     "--spacing), or position (mm) and height (um), or SMD text of ISO 5436-2. "
     "--simulate cuts a bore with the grits of the config instead. Gives Ra, "
     "Rz, Rpk, Rk, Rvk, Mr1, Mr2, and whether the valleys hold oil enough for "
     "the fuel of this boost; the oil needed is a scale from trade practice.\n"
     "--filter: standard takes the Gaussian line (ISO 16610-21) for Ra, Rq, Rz "
     "and the two-step line for deep valleys (ISO 13565-1) for the rest; "
     "gaussian the first for all; robust ISO 16610-31 for all; none nothing.\n"},
    {"rings",
     "Every ring metal, every face that goes on it and every piston alloy for "
     "this engine and duty, held against its limits. A limit is a band: below "
     "it a ring fits, in it it is marginal, above it unfit. Trust the order "
     "more than the figures: most bands are common practice without a "
     "source.\n"},
    {"lesson",
     "From boost to gap by hand, with this engine's figures; every printed "
     "line can be keyed into a pocket calculator. --level first keeps to plain "
     "words, --answers adds the answers to its questions.\n"},
    {"network",
     "Comes with coldgap's own answer, so that any other solver can check "
     "it.\n"},
    {"template",
     "Prints a config with every setting, its unit, its band and its "
     "default.\n"},
};

static void print_options_of(const struct cg_command_row *command)
{
    size_t options;
    const struct cg_option *option = cg_all_options(&options);
    const char *before = "Takes ";
    for (size_t i = 0; i < options; i++) {
        if (!cg_command_takes(command, option[i].name))
            continue;
        printf("%s\\-\\-", before);
        cg_roff_text(option[i].name);
        before = ", ";
    }
    if (before[0] == ',')
        printf(".\n");
}

static void print_more(const char *name)
{
    for (size_t i = 0; i < sizeof commands / sizeof commands[0]; i++)
        if (strcmp(commands[i].name, name) == 0)
            cg_roff_text(commands[i].text);
}

void cg_page_commands(void)
{
    size_t count;
    const struct cg_command_row *command = cg_all_commands(&count);
    cg_roff_section("COMMANDS");
    for (size_t i = 0; i < count; i++) {
        cg_roff_tag(command[i].name,
                    command[i].needs_config ? "CONFIG" : NULL);
        cg_roff_text(command[i].doc);
        printf(".\n");
        print_more(command[i].name);
        print_options_of(&command[i]);
    }
}
