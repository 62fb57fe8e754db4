#include "html_text.h"

#include <stdbool.h>
#include <string.h>

#define REPLACEMENT "\xef\xbf\xbd"

static const char *entity(unsigned char letter)
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

/* Bytes of the UTF-8 letter that begins here, 0 if none does: no overlong
 * forms, no surrogates, none above U+10FFFF (RFC 3629, sec. 4). */
static size_t utf8_length(const unsigned char *at)
{
    size_t more = at[0] < 0x80                      ? 0
                  : at[0] >= 0xc2 && at[0] <= 0xdf ? 1
                  : at[0] >= 0xe0 && at[0] <= 0xef ? 2
                  : at[0] >= 0xf0 && at[0] <= 0xf4 ? 3
                                                   : 4;
    if (more == 4)
        return 0;
    for (size_t i = 1; i <= more; i++)
        if ((at[i] & 0xc0) != 0x80)
            return 0;
    bool wrong = (at[0] == 0xe0 && at[1] < 0xa0) ||
                 (at[0] == 0xed && at[1] > 0x9f) ||
                 (at[0] == 0xf0 && at[1] < 0x90) ||
                 (at[0] == 0xf4 && at[1] > 0x8f);
    return wrong ? 0 : more + 1;
}

/* U+FFFE and U+FFFF are no characters of XML. */
static bool is_character(const unsigned char *at, size_t length)
{
    if (length == 1)
        return at[0] >= 0x20 ? at[0] != 0x7f : at[0] == '\n' || at[0] == '\t';
    return length != 3 || at[0] != 0xef || at[1] != 0xbf || at[2] < 0xbe;
}

void cg_html_put(FILE *file, const char *text)
{
    const unsigned char *at = (const unsigned char *)text;
    while (*at != '\0') {
        size_t length = utf8_length(at);
        const char *known = entity(*at);
        if (known != NULL)
            fputs(known, file);
        else if (length == 0 || !is_character(at, length))
            fputs(REPLACEMENT, file);
        else
            fwrite(at, 1, length, file);
        at += length > 0 ? length : 1;
    }
}
