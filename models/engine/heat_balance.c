#include "heat_balance.h"

#include "outside.h"

/* A finned port's wall runs 250 to 300 C (from memory): over air, that much
 * more than one in a jacket over its coolant (exhaust.h) [K]. */
#define PORT_OVER_AIR 150.0

const char *cg_balance_key(enum cg_balance_part part)
{
    static const char *const keys[] = {
#define CG_BALANCE_KEY(name, key, text) key,
        CG_BALANCE_LIST(CG_BALANCE_KEY)
#undef CG_BALANCE_KEY
    };
    return keys[part];
}

const char *cg_balance_text(enum cg_balance_part part)
{
    static const char *const texts[] = {
#define CG_BALANCE_TEXT(name, key, text) text,
        CG_BALANCE_LIST(CG_BALANCE_TEXT)
#undef CG_BALANCE_TEXT
    };
    return texts[part];
}

static void set_exhaust(const struct cg_case *c,
                        const struct cg_operating_point *point,
                        struct cg_heat_balance *balance)
{
    const struct cg_performance *p = &point->performance;
    const struct cg_exhaust_input input = {
        c->engine.bore,
        (p->air_flow + p->fuel_flow + p->nitrous_flow + p->water_flow) /
            c->engine.cylinders,
        p->exhaust_temperature, c->charge.port_factor,
        point->operating.coolant_temperature +
            (cg_air_cooled(c) ? PORT_OVER_AIR : 0.0)};
    balance->valve = p->exhaust_temperature;
    balance->exhaust = cg_exhaust_at(&input);
    balance->part[CG_BALANCE_PORT] =
        balance->exhaust.port_heat * c->engine.cylinders;
}

static void set_parts(const struct cg_case *c,
                      const struct cg_operating_point *point,
                      struct cg_heat_balance *balance)
{
    const struct cg_performance *p = &point->performance;
    double *part = balance->part, rest = p->fuel_power;
    double volume_rate = cg_crank_swept(&point->input.crank) * 0.5 *
                         point->operating.speed * c->engine.cylinders;
    balance->fuel = p->fuel_power;
    part[CG_BALANCE_BRAKE] = p->brake_power;
    part[CG_BALANCE_CHARGER] = p->air_flow * point->charge.belt_work;
    part[CG_BALANCE_FRICTION] = p->fmep * volume_rate;
    part[CG_BALANCE_PISTON] = p->piston_heat;
    part[CG_BALANCE_HEAD] = p->head_heat;
    part[CG_BALANCE_BORE] = p->bore_heat;
    part[CG_BALANCE_CREVICE] = p->crevice_heat;
    part[CG_BALANCE_EVAPORATION] = -p->evaporation_heat;
    part[CG_BALANCE_UNBURNED] = p->unburned_power;
    set_exhaust(c, point, balance);
    for (int i = 0; i < CG_BALANCE_EXHAUST; i++)
        rest -= part[i];
    part[CG_BALANCE_EXHAUST] = rest;
}

struct cg_heat_balance
cg_heat_balance_at(const struct cg_case *c, struct cg_thermal *thermal,
                   const struct cg_operating_point *point)
{
    struct cg_heat_balance balance;
    double side[CG_SIDES], cylinders = c->engine.cylinders;
    set_parts(c, point, &balance);
    balance.air = cg_air_cooled(c);
    cg_point_apply(point, point, 0.0, thermal);
    cg_network_heat_by_side(thermal->network, point->settled, side);
    balance.coolant =
        balance.part[CG_BALANCE_HEAD] + balance.part[CG_BALANCE_PORT] +
        balance.part[CG_BALANCE_EVAPORATION] -
        cylinders * side[cg_air_cooled(c) ? CG_SIDE_AIR : CG_SIDE_COOLANT];
    balance.oil = balance.part[CG_BALANCE_FRICTION] -
                  cylinders * (point->friction + side[CG_SIDE_OIL]);
    return balance;
}
