/* What a name of a material, a face, a duty or a fuel is made of: what it may
 * be, it is everywhere it goes, in tables, pictures and messages. */
#include "config_parts.h"

#include <stdio.h>
#include <string.h>

#include "trade_word.h"

/* One of these must be there. */
#define NAME_BEARERS                                                           \
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
#define NAME_LETTERS NAME_BEARERS "_-. "

bool cg_name_fits(const char *text, char trouble[CG_NAME_TROUBLE])
{
    size_t length = strlen(text);
    if (length == 0 || length >= CG_NAME_LENGTH)
        snprintf(trouble, CG_NAME_TROUBLE,
                 "must be a name of 1 to %d letters (got %zu)",
                 CG_NAME_LENGTH - 1, length);
    else if (text[strspn(text, NAME_LETTERS)] != '\0')
        snprintf(trouble, CG_NAME_TROUBLE,
                 "must be a name of letters A to Z and a to z, digits, blanks, "
                 "_ - and . (got \"%s\")",
                 text);
    else if (text[strcspn(text, NAME_BEARERS)] == '\0')
        snprintf(trouble, CG_NAME_TROUBLE,
                 "must be a name with a letter or a digit in it (got \"%s\")",
                 text);
    else
        return true;
    return false;
}

void cg_name_translate(const char *what, char name[CG_NAME_LENGTH])
{
    const char *ours = cg_trade_value(what, name);
    if (ours != NULL) {
        memset(name, 0, CG_NAME_LENGTH);
        snprintf(name, CG_NAME_LENGTH, "%s", ours);
    }
}

bool cg_text_fits(const char *text, char trouble[CG_NAME_TROUBLE])
{
    size_t length = strlen(text);
    if (length < CG_NAME_LENGTH)
        return true;
    snprintf(trouble, CG_NAME_TROUBLE,
             "must be a text of at most %d bytes (got %zu)", CG_NAME_LENGTH - 1,
             length);
    return false;
}
