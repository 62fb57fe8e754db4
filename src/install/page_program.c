#include <stdio.h>

#include "cautions.h"
#include "option_table.h"
#include "pages.h"
#include "roff.h"
#include "status.h"

static void print_head(void)
{
    printf(".TH COLDGAP 1 \"\" \"coldgap " CG_VERSION "\" \"User Commands\"\n");
    cg_roff_section("NAME");
    printf("coldgap \\- smallest safe cold piston\\-ring end gap for boosted "
           "engines\n");
    cg_roff_section("SYNOPSIS");
    printf(".B coldgap\n.I COMMAND CONFIG\n.RI [ options ]\n.br\n"
           ".B coldgap\n.I COMMAND\n.B \\-\\-help\n.br\n"
           ".B coldgap\n.BR \\-\\-help \" | \" \\-\\-version\n");
    cg_roff_section("DESCRIPTION");
    cg_roff_text(
        "An engine cycle gives the gas-side heat from boost, load and "
        "mixture; a transient\nheat model gives ring, piston and bore "
        "temperatures over a duty; growth of ring\nand bore gives the "
        "closure; a stated margin covers what is not known.\nThe answer comes "
        "with its reasons, and as tables for gnuplot.\n");
    printf(".PP\n.I CONFIG\ndescribes the engine, see\n.BR coldgap.cfg (5);\n"
           ".B coldgap template\nprints one to start from.\n");
}

static void print_commands(void)
{
    size_t commands, options;
    const struct cg_command_row *command = cg_all_commands(&commands);
    const struct cg_option *option = cg_all_options(&options);
    cg_roff_section("COMMANDS");
    for (size_t i = 0; i < commands; i++) {
        const char *before = "Takes ";
        cg_roff_tag(command[i].name,
                    command[i].needs_config ? "CONFIG" : NULL);
        cg_roff_text(command[i].doc);
        printf(".\n");
        for (size_t j = 0; j < options; j++) {
            if (!cg_command_takes(&command[i], option[j].name))
                continue;
            printf("%s\\-\\-", before);
            cg_roff_text(option[j].name);
            before = ", ";
        }
        if (before[0] == ',')
            printf(".\n");
    }
}

static void print_options(void)
{
    size_t options;
    const struct cg_option *option = cg_all_options(&options);
    cg_roff_section("OPTIONS");
    for (size_t i = 0; i < options; i++) {
        char tag[64], letter[8] = "";
        if (option[i].letter != 0)
            snprintf(letter, sizeof letter, "-%c, ", option[i].letter);
        snprintf(tag, sizeof tag, "%s--%s", letter, option[i].name);
        cg_roff_tag(tag, option[i].argument);
        cg_roff_text(option[i].doc);
        printf(".\n");
    }
    cg_roff_tag("-h, --help", NULL);
    printf("Print help, after a command that of the command, and end.\n");
    cg_roff_tag("--version", NULL);
    printf("Print the version and end.\n");
}

static void print_statuses(void)
{
    static const struct {
        int code;
        const char *text;
    } statuses[] = {
#define ROW(name, code, text) {code, text},
        CG_STATUS_LIST(ROW)
#undef ROW
    };
    int last = -1;
    cg_roff_section("EXIT STATUS");
    for (size_t i = 0; i < sizeof statuses / sizeof statuses[0]; i++) {
        char code[8];
        snprintf(code, sizeof code, "%d", statuses[i].code);
        if (statuses[i].code != last)
            cg_roff_tag(code, NULL);
        else
            printf("Or: ");
        last = statuses[i].code;
        cg_roff_text(statuses[i].text);
        printf(".\n");
    }
}

static void print_places(void)
{
    cg_roff_section("ENVIRONMENT");
    cg_roff_tag("COLDGAP_CONFIGS", NULL);
    cg_roff_text("The folder of shipped duties and materials, where it is not "
                 "the installed one.\n");
    cg_roff_tag("NO_COLOR", NULL);
    cg_roff_text("Honoured: nothing that coldgap prints is coloured.\n");
    cg_roff_section("FILES");
    cg_roff_text("PREFIX is the folder in whose bin/ the program stands; "
                 "an installed tree may be moved.\n");
    cg_roff_tag("PREFIX/share/coldgap/configs/engines/", NULL);
    cg_roff_text("Invented engines to try.\n");
    cg_roff_tag("PREFIX/share/coldgap/configs/duties/", NULL);
    cg_roff_text("What duty.name may name.\n");
    cg_roff_tag("PREFIX/share/coldgap/configs/materials/", NULL);
    cg_roff_text("Metals, every value with its source.\n");
    cg_roff_tag("PREFIX/share/coldgap/plots/", NULL);
    cg_roff_text("A gnuplot script for each picture; draw.sh draws all whose "
                 "tables are in a folder.\n");
}

void cg_page_program(void)
{
    print_head();
    print_commands();
    print_options();
    print_statuses();
    print_places();
    cg_roff_section("EXAMPLES");
    cg_roff_lines("coldgap template > my_engine.cfg\n"
                  "coldgap find my_engine.cfg -o out\n"
                  "sh PREFIX/share/coldgap/plots/draw.sh out\n"
                  "coldgap find my_engine.cfg --set charge.boost_psi=26 "
                  "--units inch\n"
                  "coldgap sweep my_engine.cfg --vary "
                  "charge.boost_kPa=0:240:20 -o out\n"
                  "coldgap ceiling my_engine.cfg --gap 0.020in\n");
    cg_roff_section("CAUTIONS");
    for (const char *const *line = cg_cautions_list(); *line != NULL; line++)
        cg_roff_item(*line);
    cg_roff_section("SEE ALSO");
    printf(".BR coldgap.cfg (5),\n.BR gnuplot (1)\n");
}
