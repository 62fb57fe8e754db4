/* Where the fuel's energy goes at a settled operating point, whole engine. */
#ifndef CG_HEAT_BALANCE_H
#define CG_HEAT_BALANCE_H

#include "exhaust.h"
#include "operating_point.h"

/* Parts that add up to the fuel's heating value, once each. */
#define CG_BALANCE_LIST(X)                                                     \
    X(CG_BALANCE_BRAKE, "brake", "brake work")                                 \
    X(CG_BALANCE_CHARGER, "charger", "belt-driven charger")                    \
    X(CG_BALANCE_FRICTION, "friction", "friction")                             \
    X(CG_BALANCE_PISTON, "piston", "gas to the piston")                        \
    X(CG_BALANCE_HEAD, "head", "gas to the head")                              \
    X(CG_BALANCE_BORE, "bore", "gas to the bore")                              \
    X(CG_BALANCE_CREVICE, "crevice", "gas in top land and groove")             \
    X(CG_BALANCE_PORT, "port", "gas to the exhaust port")                      \
    X(CG_BALANCE_EVAPORATION, "evaporation", "from port walls to the fuel")    \
    X(CG_BALANCE_UNBURNED, "unburned", "fuel, CO and H2 not burned")           \
    X(CG_BALANCE_EXHAUST, "exhaust", "exhaust, as heat")

enum cg_balance_part {
#define CG_BALANCE_NAME(name, key, text) name,
    CG_BALANCE_LIST(CG_BALANCE_NAME)
#undef CG_BALANCE_NAME
        CG_BALANCE_PARTS
};

struct cg_heat_balance {
    double fuel;                   /* heating value [W] */
    double part[CG_BALANCE_PARTS]; /* [W]; evaporation is negative: heat that
                                      the walls give comes back in the charge */
    double coolant;                /* or air; from bore, head and port [W] */
    bool air;                      /* cools, and no coolant */
    double oil;                    /* from piston, bore and friction [W] */
    double valve;                  /* gas at the exhaust valve [K] */
    struct cg_exhaust exhaust;     /* of one cylinder */
};

const char *cg_balance_key(enum cg_balance_part part); /* "brake" */
const char *cg_balance_text(enum cg_balance_part part);

/* Balance at a solved point.  What leaves as heat in the exhaust is over what
 * the charge brought in, and the remainder: test_cycle shows by the gas at the
 * valve that this is the first law.  Of friction, the ring pack and skirt's
 * share goes through the network; the rest heats the oil (common practice, no
 * source).  Sets the network to this point.  Cannot fail. */
struct cg_heat_balance
cg_heat_balance_at(const struct cg_case *c, struct cg_thermal *thermal,
                   const struct cg_operating_point *point);

#endif
