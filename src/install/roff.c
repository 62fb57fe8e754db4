#include "roff.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* A dot or a quote that begins a line would be a macro; a plain minus would
 * become a hyphen, which cannot be copied to a command line. */
void cg_roff_text(const char *text)
{
    bool fresh = true;
    for (; *text != '\0'; text++) {
        if (fresh && strchr(".'", *text) != NULL)
            printf("\\&");
        fresh = *text == '\n';
        switch (*text) {
        case '\\': printf("\\e"); break;
        case '-': printf("\\-"); break;
        case '~': printf("\\(ti"); break;
        case '^': printf("\\(ha"); break;
        case '`': printf("\\(ga"); break;
        case '\'': printf("\\(aq"); break;
        case '"': printf("\\(dq"); break;
        default: putchar(*text);
        }
    }
}

void cg_roff_section(const char *title)
{
    printf(".SH %s\n", title);
}

void cg_roff_tag(const char *tag, const char *argument)
{
    printf(".TP\n\\fB");
    cg_roff_text(tag);
    printf("\\fR");
    if (argument != NULL) {
        printf(" \\fI");
        cg_roff_text(argument);
        printf("\\fR");
    }
    putchar('\n');
}

void cg_roff_item(const char *text)
{
    printf(".IP \\(bu 2\n");
    cg_roff_text(text);
    putchar('\n');
}

void cg_roff_lines(const char *text)
{
    printf(".RS 4\n.nf\n");
    cg_roff_text(text);
    printf(".fi\n.RE\n");
}
