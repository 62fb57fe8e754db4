/* What a lesson shows of an engine: the numbers of the model at the stations
 * of the way from boost to gap, settled at rated speed and full load, at three
 * boosts and over the duty.  The arithmetic by hand is done elsewhere.
 */
#ifndef CG_LESSON_H
#define CG_LESSON_H

#include "answer.h"
#include "case.h"
#include "operating.h"
#include "status.h"

enum { CG_LESSON_BOOSTS = 3, CG_LESSON_INSTANTS = 5 };

/* Top ring and bore wall where the gap is tightest. */
struct cg_lesson_growth {
    double ring_temperature;         /* mean of the ring [K] */
    double wall_temperature;         /* area mean of liner or parent wall [K] */
    double ring_strain, bore_strain; /* by heat, from 20 C [1] */
    double choke; /* what a choke takes of the gap there, over what it takes
                     where the gap is measured; 0: a straight bore [m] */
    double depth, closure; /* [m] */
};

/* One boost. */
struct cg_lesson_boost {
    double boost;                   /* [Pa] */
    struct cg_lesson_growth growth; /* settled at rated speed, full load */
    double crown_flux;              /* there, mean of the cycle [W/m2] */
    double duty_closure, cold_gap;  /* of the answer for the duty [m] */
};

/* An instant of the duty. */
struct cg_lesson_instant {
    double time, speed, load; /* [s] [rev/s] [1] */
    struct cg_lesson_growth growth;
};

/* One cylinder at rated speed and full load; masses and heats a cycle. */
struct cg_lesson_heat {
    struct cg_charge_state charge;
    double air, fuel;             /* [kg] */
    double fuel_energy;           /* [J] */
    double crown_heat, wall_heat; /* into the piston; into all walls [J] */
    double mean_pressure;         /* in the cylinder, over the cycle [Pa] */
    double crown, groove, ring;   /* [K]; ring: its mean */
    double bore;                  /* surface as the ring meets it [K] */
    double film;                  /* that heat crosses [m] */
    double oil_conductivity, ring_conductivity; /* [W/(m K)] */
    double land_clearance; /* of the top land, radial, hot [m] */
};

/* Liner or block. */
struct cg_lesson_layer {
    double temperature; /* area mean [K] */
    double strain;      /* from 20 C, if it were free [1] */
    double modulus;     /* [Pa] */
};

/* Both at the station nearest the tightest place. */
struct cg_lesson_wall {
    bool has_block, open; /* open: a pressed joint has let go */
    struct cg_lesson_layer liner, block;
    double bore_strain; /* of the joined cylinders [1] */
};

struct cg_lesson {
    /* None, half, all of the config's boost.  For an engine without boost its
     * own is the first, and the others are supposed, by a turbine if there is
     * no charger. */
    struct cg_lesson_boost boost[CG_LESSON_BOOSTS];
    size_t own; /* of boost */
    struct cg_lesson_heat heat;
    struct cg_lesson_wall wall;
    /* From the start to the tightest instant in equal steps of time (to the
     * end where it is tightest at the start). */
    struct cg_lesson_instant instant[CG_LESSON_INSTANTS];
    struct cg_answer answer; /* for the duty, at the config's boost */
};

/* Runs the model for a checked case: the whole answer at each boost.  Errors:
 * as cg_answer_find. */
enum cg_status cg_lesson_find(const struct cg_case *c, struct cg_lesson *lesson,
                              struct cg_error *error);

#endif
