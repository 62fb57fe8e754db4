/* Gas-side heat transfer correlations, one descriptor each.  A new one is a
 * new function and a new row in heat_transfer.c. */
#ifndef CG_HEAT_TRANSFER_H
#define CG_HEAT_TRANSFER_H

#include <stdbool.h>
#include <stddef.h>

struct cg_gas_side {       /* state the correlations read, SI */
    double pressure;       /* [Pa] */
    double temperature;    /* bulk gas [K] */
    double wall_temperature; /* [K] */
    double volume;         /* instantaneous cylinder volume [m3] */
    double bore;           /* [m] */
    double piston_speed;   /* mean [m/s] */
    double swept_volume;   /* [m3] */
    double reference_temperature, reference_pressure, reference_volume;
                           /* state at the start of compression */
    double motored_pressure; /* at the same crank angle [Pa] */
    double gas_constant;   /* [J/(kg K)] */
    bool gas_exchange;     /* a valve is open */
    bool burning;          /* from the start of combustion to valve opening */
    bool sooting;          /* fuel burns as it is injected: its flame shines */
};

struct cg_heat_transfer {
    const char *name, *doc, *source;
    /* Coefficient [W/(m2 K)], radiation included as an equivalent. */
    double (*coefficient)(const struct cg_gas_side *state);
};

const struct cg_heat_transfer *cg_heat_transfers(size_t *count);
/* The correlation of that name, or NULL. */
const struct cg_heat_transfer *cg_heat_transfer_find(const char *name);

/* Woschni's gas velocity w [m/s], for tests and teaching. */
double cg_woschni_velocity(const struct cg_gas_side *state);

#endif
