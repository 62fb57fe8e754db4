/* One charger, or two in a row with or without a cooler between: what they make
 * of the air.
 *
 * Each is the textbook's stage (J. B. Heywood 1988, eq. 6.42): isentropic, over
 * its efficiency,
 *   T2 = T1 (1 + (ratio^((g-1)/g) - 1)/efficiency)
 * and the cooler between takes `between` of what the first put in, down to the
 * air outside, without a loss of pressure.  The first makes ratio^split of the
 * whole pressure ratio, the second the rest: the shares do not change with the
 * boost, as two that are matched to each other roughly do.
 */
#ifndef CG_CHARGER_ROW_H
#define CG_CHARGER_ROW_H

enum { CG_CHARGERS = 2 };

struct cg_charger_row {
    int chargers;                   /* 1 or 2 */
    double efficiency[CG_CHARGERS]; /* isentropic [1] */
    double split;   /* of the logarithm of the pressure ratio, the first's; not
                       read of one alone [0..1] */
    double between; /* effectiveness of the cooler; likewise [0..1] */
};

struct cg_charged {
    double rise;              /* behind the last, over the air outside [K] */
    double work[CG_CHARGERS]; /* of each, per mass of air [J/kg] */
    double pressure[CG_CHARGERS]; /* that each adds, over the ambient [1] */
};

/* Air of `ambient` [K], pressed to `ratio` [1 and more] times the pressure
 * outside.  Cannot fail. */
struct cg_charged cg_charger_row(const struct cg_charger_row *row,
                                 double ambient, double ratio);

#endif
