#include "json_text.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>

#include "plain_text.h"

/* A letter of one byte, escaped where JSON wants it. */
static void put_byte(FILE *out, char letter)
{
    if (letter == '"' || letter == '\\')
        fputc('\\', out);
    fputc(letter, out);
}

void cg_json_string(FILE *out, const char *text)
{
    fputc('"', out);
    while (*text != '\0') {
        bool shown;
        size_t bytes = cg_plain_step(text, &shown);
        if (*text == '\n')
            fputs("\\n", out);
        else if (!shown)
            fputs("\\ufffd", out);
        else if (bytes == 1)
            put_byte(out, *text);
        else
            fwrite(text, 1, bytes, out);
        text += bytes;
    }
    fputc('"', out);
}

void cg_json_number(FILE *out, double value)
{
    char text[32] = "null";
    for (int digits = 15; isfinite(value) && digits <= 17; digits++) {
        snprintf(text, sizeof text, "%.*g", digits, value);
        if (strtod(text, NULL) == value)
            break;
    }
    fputs(text, out);
}
