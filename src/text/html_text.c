#include "html_text.h"

#include <stdbool.h>
#include <stddef.h>

#include "plain_text.h"

static const char *entity(char letter)
{
    switch (letter) {
    case '&': return "&amp;";
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '"': return "&quot;";
    case '\'': return "&#39;";
    }
    return NULL;
}

void cg_html_put(FILE *file, const char *text)
{
    while (*text != '\0') {
        bool shown;
        size_t length = cg_plain_step(text, &shown);
        const char *known = entity(*text);
        if (known != NULL)
            fputs(known, file);
        else if (shown || *text == '\n' || *text == '\t')
            fwrite(text, 1, length, file);
        else
            fputc('?', file);
        text += length;
    }
}
