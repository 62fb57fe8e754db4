#include "trade_word.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

/* A key keeps its unit: "gap_mm" is "gap" and "_mm". */
static const struct {
    const char *said, *ours;
} words[] = {
    {"afr", "lambda"},
    {"blower", "belt"},
    {"chrome", "chromium"},
    {"clearance", "skirt_clearance"},
    {"coat", "face"},
    {"coating", "face"},
    {"crn", "vapour_crn"},
    {"end_gap", "cold_gap"},
    {"gap", "cold_gap"},
    {"gas", "gasoline"},
    {"moly", "sprayed_molybdenum"},
    {"oil_squirters", "oil_jet"},
    {"petrol", "gasoline"},
    {"rpm", "speed_rpm"},
    {"steel", "plain_steel"},
    {"supercharger", "belt"},
    {"timing", "burn50"},
    {"tin", "vapour_tin"},
    {"turbo", "turbine"},
    {"turbocharger", "turbine"},
};

void cg_trade_word(const char *word, char *ours, size_t size)
{
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        size_t said = strlen(words[i].said);
        if (strncasecmp(word, words[i].said, said) == 0 &&
            (word[said] == '\0' || word[said] == '_')) {
            snprintf(ours, size, "%s%s", words[i].ours, word + said);
            return;
        }
    }
    snprintf(ours, size, "%s", word);
}

void cg_trade_hint(const char *word, char *hint, size_t size)
{
    char ours[64];
    cg_trade_word(word, ours, sizeof ours);
    hint[0] = '\0';
    if (strcmp(word, ours) != 0 && strlen(word) < sizeof ours)
        snprintf(hint, size, " (here %s)", ours);
}
