/* The facts that the constants are calibrated on and checked against, as read
 * from facts.cfg: what was seen, on which build, how surely, from where. */
#ifndef CG_FACTS_H
#define CG_FACTS_H

#include <stdbool.h>
#include <stddef.h>

#include <libconfig.h>

enum { FACTS = 64, CONSTANTS = 16, METALS = 8, SETS = 16, SETTINGS = 4 };

enum fact_sees {
    SEES_ENDS,       /* closure [m], below the gap */
    SEES_CROWN,      /* [C] */
    SEES_GROOVE,     /* [C] */
    SEES_LINER,      /* at `depth` [C] */
    SEES_ABOVE_COOLANT, /* liner at `depth` over coolant [K] */
    SEES_RING_PLACE, /* ln of (groove - ring) / (ring - bore) [1] */
    SEES_WALLS,      /* what coolant and oil carry off, of the fuel [%] */
    SEES_BRAKE,      /* of the fuel [%] */
    SEES_FLUX_EXPONENT
};

struct fact {
    const char *name, *kind, *grade, *source;
    bool held;
    enum fact_sees sees;
    bool one_sided;       /* y above `value`; of ends, below it */
    double value, spread; /* one standard deviation, the source's own */
    double depth;         /* [m] */
    double power;         /* stock rating [W]; 0: full load */
    double load, change_load; /* change_load 0: none */
    bool per_bmep, constant_bmep;
    const char *build[SETS], *change[SETS];
    size_t builds, changes;
};

struct constant {
    const char *input, *source; /* row of cg_uncertains */
    double low, high;
    const char *setting[SETTINGS]; /* "key=value": in the middle of the band */
    size_t settings;
    double middle, spread;      /* sqrt(low high), ln(high / low) / 4 */
};

struct facts {
    config_t config; /* owns the texts */
    size_t facts;
    struct fact fact[FACTS];
    size_t constants;
    struct constant constant[CONSTANTS];
    const char *metal[METALS];
    size_t metals;
    double port_spread; /* of the fuel [%] */
    double scatter_middle, scatter_spread; /* engine to engine [1], of its ln */
    double least_weight;
};

/* Says what is wrong on stderr and ends with status 2 if the file cannot be
 * read, a key is missing, or a name is unknown. */
void facts_read(const char *path, struct facts *facts);
void facts_free(struct facts *facts);

/* Of a fact without a change: NULL texts. */
bool fact_changes(const struct fact *fact);

#endif
