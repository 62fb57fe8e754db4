/* Settings as text: for the template and for help. */
#ifndef CG_SETTING_TEXT_H
#define CG_SETTING_TEXT_H

#include <stddef.h>

#include "setting.h"

/* The case's value as a config writes it, in the unit shown first.  A length
 * that is not given (cold_gap) is shown as 0.005 of the bore. */
void cg_setting_value_text(const struct cg_setting *setting,
                           const struct cg_case *c, char *text, size_t size);

/* What is allowed: band with unit, words, or names. */
void cg_setting_band_text(const struct cg_setting *setting, char *text,
                          size_t size);

/* What holds where the setting is left out: "default 0.085 bore". */
void cg_setting_default_text(const struct cg_setting *setting, char *text,
                             size_t size);

#endif
