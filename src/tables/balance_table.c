#include "balance_table.h"

#include "constants.h"
#include "table.h"

static void row(struct cg_table *table, const char *where, double power,
                const struct cg_heat_balance *balance)
{
    cg_table_line(table, "%s %.7g %.7g", where, power / 1e3,
                  power / balance->fuel * 1e2);
}

enum cg_status cg_balance_table_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_heat_balance *balance,
                                      struct cg_error *error)
{
    struct cg_table_head head = {
        "The fuel's energy at rated speed, full load, whole engine", of,
        "where  power_kW  share_of_fuel_pct",
        "share: of the fuel's heating value; all rows but the last two add up "
        "to it; to_coolant and to_oil: what carries heat off"};
    if (balance->air)
        head.remarks =
            "share: of the fuel's heating value; all rows but the last "
            "two add up to it; to_air and to_oil: what carries heat "
            "off";
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "heat_balance.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table,
                  "gas at the valve %.0f C, probe in the collector about "
                  "%.0f C",
                  balance->valve - CG_ZERO_CELSIUS,
                  balance->exhaust.reading - CG_ZERO_CELSIUS);
    for (int i = 0; i < CG_BALANCE_PARTS; i++)
        row(table, cg_balance_key((enum cg_balance_part)i), balance->part[i],
            balance);
    row(table, balance->air ? "to_air" : "to_coolant", balance->coolant,
        balance);
    row(table, "to_oil", balance->oil, balance);
    return cg_table_close(table, CG_OK, error);
}
