/* What a build card holds, and its table of keys. */
#ifndef CG_CARD_TABLE_H
#define CG_CARD_TABLE_H

#include "builds.h"
#include "finish_order.h"
#include "fitting.h"
#include "key_value.h"
#include "table_of.h"

struct cg_card {
    const struct cg_build *build;
    struct cg_fit_asked asked[CG_FIT_RINGS];
    struct cg_finish_order order;
    const struct cg_builds *builds; /* NULL: there was no build before */
};

/* The card's own keys, beside those of summary.dat: lengths mm, of the finish
 * um, volumes to an area mm3/cm2. */
struct cg_key_values cg_card_keys(const struct cg_card *card);

/* card.dat: the keys of summary.dat and these. */
enum cg_status cg_card_table_write(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_card *card,
                                   struct cg_error *error);

#endif
