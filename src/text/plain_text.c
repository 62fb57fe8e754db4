#include "plain_text.h"

#include <stdio.h>
#include <string.h>

/* What a shell leaves alone. */
#define BARE                                                                   \
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"           \
    "_./:=,+@%-"

/* Bytes of the UTF-8 letter that begins here, 0 if none does. */
static size_t letter_length(const unsigned char *at)
{
    size_t more = at[0] < 0x80                     ? 0
                  : at[0] >= 0xc2 && at[0] <= 0xdf ? 1
                  : at[0] >= 0xe0 && at[0] <= 0xef ? 2
                  : at[0] >= 0xf0 && at[0] <= 0xf4 ? 3
                                                   : 4;
    if (more == 4)
        return 0;
    for (size_t i = 1; i <= more; i++)
        if ((at[i] & 0xc0) != 0x80)
            return 0;
    bool wrong =
        (at[0] == 0xe0 && at[1] < 0xa0) || (at[0] == 0xed && at[1] > 0x9f) ||
        (at[0] == 0xf0 && at[1] < 0x90) || (at[0] == 0xf4 && at[1] > 0x8f);
    return wrong ? 0 : more + 1;
}

static unsigned code_of(const unsigned char *at, size_t length)
{
    unsigned code = length == 1   ? at[0]
                    : length == 2 ? at[0] & 0x1fu
                    : length == 3 ? at[0] & 0x0fu
                                  : at[0] & 0x07u;
    for (size_t i = 1; i < length; i++)
        code = code << 6 | (at[i] & 0x3fu);
    return code;
}

/* Whether a letter acts, or is not to be seen: controls, soft hyphens, turns of
 * the reading direction, ends of lines, signs without width, tags. */
static bool acts(unsigned code)
{
    static const unsigned from_to[][2] = {
        {0x00, 0x1f},     {0x7f, 0x9f},     {0xad, 0xad},
        {0x61c, 0x61c},   {0x180e, 0x180e}, {0x200b, 0x200f},
        {0x2028, 0x202e}, {0x2060, 0x206f}, {0xfeff, 0xfeff},
        {0xfff9, 0xfffb}, {0xfffe, 0xffff}, {0xe0000, 0xe007f}};
    for (size_t i = 0; i < sizeof from_to / sizeof from_to[0]; i++)
        if (code >= from_to[i][0] && code <= from_to[i][1])
            return true;
    return false;
}

size_t cg_plain_step(const char *at, bool *shown)
{
    const unsigned char *bytes = (const unsigned char *)at;
    size_t length = letter_length(bytes);
    *shown = length > 0 && !acts(code_of(bytes, length));
    return length > 0 ? length : 1;
}

bool cg_plain_is(const char *text)
{
    bool shown = true;
    while (*text != '\0' && shown)
        text += cg_plain_step(text, &shown);
    return shown;
}

void cg_plain_make(char *text)
{
    char *put = text;
    bool shown;
    while (*text != '\0') {
        size_t length = cg_plain_step(text, &shown);
        if (!shown)
            *put++ = '?';
        for (size_t i = 0; shown && i < length; i++)
            *put++ = text[i];
        text += length;
    }
    *put = '\0';
}

struct cg_plain cg_plain(const char *text)
{
    struct cg_plain plain;
    int length = snprintf(plain.text, sizeof plain.text, "%s", text);
    if (length >= (int)sizeof plain.text)
        strcpy(plain.text + sizeof plain.text - 4, "...");
    cg_plain_make(plain.text);
    return plain;
}

struct cg_plain cg_plain_word(const char *text)
{
    struct cg_plain word, plain = cg_plain(text);
    if (text[0] != '\0' && text[0] != '-' && text[strspn(text, BARE)] == '\0')
        return plain;
    size_t used = (size_t)sprintf(word.text, "%s'", text[0] == '-' ? "./" : "");
    for (const char *at = plain.text;
         *at != '\0' && used + sizeof "'\\'''" < sizeof word.text; at++) {
        if (*at == '\'')
            used += (size_t)sprintf(word.text + used, "'\\'");
        word.text[used++] = *at;
    }
    strcpy(word.text + used, "'");
    return word;
}
