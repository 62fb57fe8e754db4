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

/* Of a letter of one to three bytes; none of four acts. */
static bool acts(const unsigned char *at, size_t length)
{
    unsigned code = at[0];
    if (length == 2)
        code = (at[0] & 0x1fu) << 6 | (at[1] & 0x3fu);
    else if (length == 3)
        code = (at[0] & 0x0fu) << 12 | (at[1] & 0x3fu) << 6 | (at[2] & 0x3fu);
    return code < 0x20 || (code >= 0x7f && code <= 0x9f) ||
           (code >= 0x2028 && code <= 0x202e) ||
           (code >= 0x2066 && code <= 0x2069) || code == 0xfffe ||
           code == 0xffff;
}

size_t cg_plain_step(const char *at, bool *shown)
{
    const unsigned char *bytes = (const unsigned char *)at;
    size_t length = letter_length(bytes);
    *shown = length == 4 || (length > 0 && !acts(bytes, length));
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
        if (shown)
            memmove(put, text, length);
        else
            *put = '?';
        put += shown ? length : 1;
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
