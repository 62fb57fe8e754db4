/* Quantities: a value in SI with its kind, and how each kind is shown in either
 * system of units.  Digits, inches and rounding to the safe side are decided
 * here and nowhere else. */
#ifndef CG_QUANTITY_H
#define CG_QUANTITY_H

#include <stdbool.h>

struct cg_text {
    char text[48];
};

/* How a number as it is shown stands to SI: metres, kelvin, pascal ... */
enum cg_kind {
    CG_SHOW_WORDS,         /* no quantity: text */
    CG_SHOW_NUMBER,        /* [1], four digits */
    CG_SHOW_COUNT,         /* [1], whole */
    CG_SHOW_SHARE,         /* [1], shown in % */
    CG_SHOW_WHOLE_SHARE,   /* likewise, whole */
    CG_SHOW_SMALL_SHARE,   /* likewise, two digits that count */
    CG_SHOW_GAP_ASKED,     /* [m], rounded up to 0.01 mm and half a thousandth */
    CG_SHOW_GAP,           /* [m], to 1 um and a tenth of a thousandth */
    CG_SHOW_SMALL_LENGTH,  /* [m], likewise, one unit at a time */
    CG_SHOW_LENGTH,        /* [m] */
    CG_SHOW_FILM,          /* [m], um and uin */
    CG_SHOW_ROUGHNESS,     /* [m], likewise, of a surface */
    CG_SHOW_OIL,           /* volume to an area [m], mm3/cm2, or how deep */
    CG_SHOW_TEMPERATURE,   /* [K], C and F */
    CG_SHOW_KELVIN,        /* a difference [K] */
    CG_SHOW_PRESSURE,      /* [Pa], bar and psi */
    CG_SHOW_PEAK_PRESSURE, /* [Pa], whole bar */
    CG_SHOW_RISE,          /* of pressure [Pa/deg], bar/deg and psi/deg */
    CG_SHOW_STRESS,        /* [Pa], MPa and ksi */
    CG_SHOW_WALL_PRESSURE, /* [Pa], MPa and psi */
    CG_SHOW_BOOST,         /* [Pa], gauge, kPa and psi */
    CG_SHOW_POWER,         /* [W], kW and hp */
    CG_SHOW_SMALL_POWER,   /* [W], three digits that count */
    CG_SHOW_ROUGH_POWER,   /* [W], two digits that count */
    CG_SHOW_FLOW,          /* [kg/s], kg/h and lb/h */
    CG_SHOW_LEAK,          /* [kg/s], g/s and lb/h */
    CG_SHOW_ROUGH_LEAK,    /* [kg/s], two digits that count */
    CG_SHOW_DRAUGHT,       /* [m3/s], L/min and cfm */
    CG_SHOW_DRAUGHT_SHARE, /* [m3/J], of the power: L/min/kW and cfm/hp */
    CG_SHOW_FORCE,         /* [N], N and lbf */
    CG_SHOW_FLUX,          /* [W/m2] */
    CG_SHOW_PEAK_FLUX,     /* likewise, one decimal */
    CG_SHOW_HEAT,          /* [J], kJ and Btu, with its sign */
    CG_SHOW_SPEED,         /* [1/s], rpm */
    CG_SHOW_TIME,          /* [s] */
    CG_SHOW_ANGLE,         /* of the crank [deg] */
    CG_SHOW_SMALL_ANGLE,   /* likewise, to a hundredth */
    CG_KINDS
};

struct cg_quantity {
    enum cg_kind kind;
    double value; /* SI; NaN: not known */
};

struct cg_quantity cg_quantity(enum cg_kind kind, double value);

/* In one system of units: "0.46 mm", "0.0185 in"; "-" for NaN. */
struct cg_text cg_quantity_one(struct cg_quantity quantity, bool inch);

/* As a screen shows it: small lengths in both, "0.46 mm (0.0185 in)", the rest
 * in one. */
struct cg_text cg_quantity_text(struct cg_quantity quantity, bool inch);

/* Without its unit, which stands at the head of a column: "0.46"; and the
 * column's unit, "mm"; "" where there is none. */
struct cg_text cg_quantity_bare(struct cg_quantity quantity, bool inch);
const char *cg_kind_unit(enum cg_kind kind, bool inch);

/* The unit of `value`: "m", "K", ...; "1". */
const char *cg_kind_si(enum cg_kind kind);

/* The number in the unit it is shown in, not rounded. */
double cg_quantity_number(struct cg_quantity quantity, bool inch);

/* The value [SI] as it is shown: rounded up where its kind is, or to the last of
 * its digits. */
double cg_quantity_shown(struct cg_quantity quantity, bool inch);

/* Whether the two systems differ. */
bool cg_kind_converts(enum cg_kind kind);

#endif
