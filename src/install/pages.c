/* coldgap_pages: a tool of the build.
 *
 *   coldgap_pages program              the manual page coldgap.1
 *   coldgap_pages config               the manual page coldgap.cfg.5
 *   coldgap_pages completion <SCRIPT   the script, its line "# TABLES" replaced
 *                                      by the tables */
#include <stdio.h>
#include <string.h>

#include "pages.h"

static void complete(void)
{
    char line[512];
    while (fgets(line, sizeof line, stdin) != NULL)
        if (strcmp(line, "# TABLES\n") == 0)
            cg_page_tables();
        else
            fputs(line, stdout);
}

static const struct {
    const char *name;
    void (*print)(void);
} pages[] = {
    {"program", cg_page_program},
    {"config", cg_page_config},
    {"completion", complete},
};

int main(int argc, char **argv)
{
    for (size_t i = 0; argc == 2 && i < sizeof pages / sizeof pages[0]; i++)
        if (strcmp(argv[1], pages[i].name) == 0) {
            pages[i].print();
            return fflush(stdout) != 0 || ferror(stdout) || ferror(stdin);
        }
    fprintf(stderr, "coldgap_pages: program, config or completion\n");
    return 2;
}
