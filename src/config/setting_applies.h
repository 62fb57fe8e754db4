/* Which settings an engine has. */
#ifndef CG_SETTING_APPLIES_H
#define CG_SETTING_APPLIES_H

#include <stdbool.h>

#include "case.h"
#include "setting.h"

/* Whether a setting is of this kind of engine: not of the other ignition, nor
 * of what does not cool it.  Cannot fail. */
bool cg_setting_applies(const struct cg_setting *setting,
                        const struct cg_case *c);

/* Its two parts, each by the list of who refuses them. */
bool cg_ignition_has(const struct cg_setting *setting, const struct cg_case *c);
bool cg_cooling_has(const struct cg_setting *setting, const struct cg_case *c);

#endif
