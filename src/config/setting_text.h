/* Settings as text: for the template and the manual page. */
#ifndef CG_SETTING_TEXT_H
#define CG_SETTING_TEXT_H

#include <stddef.h>

#include "setting.h"

/* The unit it is shown in: the table's own, or with `inch` its like among
 * inch, thou, psi and Fahrenheit, where there is one. */
const struct cg_unit *cg_setting_unit(const struct cg_setting *setting,
                                      bool inch);

/* The case's value as a config writes it, in the unit shown.  A length that is
 * not given (cold_gap) is shown as 0.005 of the bore. */
void cg_setting_value_text(const struct cg_setting *setting,
                           const struct cg_case *c, bool inch, char *text,
                           size_t size);

/* What is allowed: band with unit, words, or names. */
void cg_setting_band_text(const struct cg_setting *setting, bool inch,
                          char *text, size_t size);

/* What holds where the setting is left out: "default 0.085 bore". */
void cg_setting_default_text(const struct cg_setting *setting, bool inch,
                             char *text, size_t size);

#endif
