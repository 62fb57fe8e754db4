#include "wrap.h"

#include <stdbool.h>
#include <string.h>

/* Characters in `length` bytes: all bytes but those that go on with one. */
static int width_of(const char *text, size_t length)
{
    int width = 0;
    for (size_t i = 0; i < length; i++)
        width += ((unsigned char)text[i] & 0xC0) != 0x80;
    return width;
}

int cg_text_width(const char *text)
{
    return width_of(text, strlen(text));
}

/* Where it ends; `first`: no blank before the first word. */
static int wrap_on(FILE *out, const char *text, int column, int indent,
                   bool first)
{
    while (*text != '\0') {
        size_t length = strcspn(text, " ");
        int width = width_of(text, length);
        if (!first && column + 1 + width > CG_SCREEN_WIDTH) {
            fprintf(out, "\n%*s", indent, "");
            column = indent;
            first = true;
        }
        fprintf(out, "%s%.*s", first ? "" : " ", (int)length, text);
        column += width + !first;
        first = false;
        text += length + strspn(text + length, " ");
    }
    return column;
}

void cg_wrap(FILE *out, const char *text, int from, int indent)
{
    wrap_on(out, text, from, indent, true);
    fputc('\n', out);
}

void cg_wrap_pair(FILE *out, const char *text, const char *more, int indent)
{
    int column = wrap_on(out, text, indent, indent, true);
    fputc(',', out);
    wrap_on(out, more, column + 1, indent, false);
    fputc('\n', out);
}
