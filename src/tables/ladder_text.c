#include "ladder_text.h"

#include <math.h>
#include <stdio.h>

#include "setting_key.h"
#include "setting_text.h"

struct cg_ladder_text cg_ladder_key(const struct cg_ladder_change *change,
                                    bool inch)
{
    struct cg_ladder_text out = {""};
    cg_key_write(change->setting, cg_setting_unit(change->setting, inch), true,
                 out.text, sizeof out.text);
    return out;
}

struct cg_ladder_text cg_ladder_value(const struct cg_ladder_change *change,
                                      bool now, bool inch)
{
    struct cg_ladder_text out = {""};
    const struct cg_setting *setting = change->setting;
    double si = now ? change->now : change->was;
    char word[CG_NAME_LENGTH];
    if (setting->kind == CG_NAME)
        snprintf(out.text, sizeof out.text, "%s",
                 now ? change->now_name : change->was_name);
    else if (isnan(si))
        snprintf(out.text, sizeof out.text, "not given");
    else if (setting->kind == CG_SWITCH)
        snprintf(out.text, sizeof out.text, si != 0.0 ? "true" : "false");
    else if (setting->kind == CG_CHOICE) {
        cg_setting_word(setting, (int)si, word);
        snprintf(out.text, sizeof out.text, "%s", word);
    } else {
        snprintf(out.text, sizeof out.text, "%.6g",
                 cg_unit_from_si(cg_setting_unit(setting, inch), si));
    }
    return out;
}
