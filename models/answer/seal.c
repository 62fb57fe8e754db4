#include "seal.h"

#include <math.h>

#include "constants.h"

enum { CENTRE = (CG_PACK_NODES - 1) / 2 };

/* Ratio of heat capacities of the hot gas in the cylinder: 1.25 to 1.35
 * (Heywood 1988, ch. 4, from memory). */
#define HOT_GAMMA 1.30

/* Crank angle at which the rising pressure of a region passes `level`, by
 * straight lines; NaN if it never does. */
static double crossing(const struct cg_pack_record *record, size_t region,
                       double level)
{
    for (size_t i = 1; i < CG_PACK_NODES; i++) {
        double a = record[i - 1].pressure[region],
               b = record[i].pressure[region];
        if (a < level && b >= level)
            return cg_pack_angle(i - 1) + (level - a) / (b - a);
    }
    return NAN;
}

static size_t node_of(double angle_deg)
{
    return (size_t)lround(angle_deg) + CENTRE;
}

static void read_pressures(const struct cg_seal *seal,
                           struct cg_seal_answer *answer)
{
    const struct cg_pack_record *record = seal->record;
    size_t peak = node_of(seal->peak_deg);
    double most = record[peak].pressure[CG_PACK_CYLINDER];
    double lag = crossing(record, CG_PACK_GROOVE_TOP, 0.5 * most) -
                 crossing(record, CG_PACK_CYLINDER, 0.5 * most);
    /* A groove that never comes to half the peak is a whole cycle late. */
    answer->groove_lag_deg = isnan(lag) ? 720.0 : lag;
    answer->groove_peak = record[peak].pressure[CG_PACK_GROOVE_TOP] / most;
    answer->land_peak = 0.0;
    answer->face_load = 0.0;
    answer->face_load_least = INFINITY;
    for (size_t i = 1; i < CG_PACK_NODES; i++) {
        answer->land_peak =
            fmax(answer->land_peak, record[i].pressure[CG_PACK_LAND]);
        answer->face_load += record[i].load[0] / (CG_PACK_NODES - 1);
        answer->face_load_least =
            fmin(answer->face_load_least, record[i].load[0]);
    }
}

/* Mass in a volume of the pack, at a record. */
static double held(const struct cg_seal *seal,
                   const struct cg_pack_record *record, size_t volume)
{
    return record->pressure[volume + 1] * cg_pack_capacity(&seal->pack, volume);
}

/* Net out of the cylinder since the node before [kg]. */
static double out_of_cylinder(const struct cg_pack_record *record)
{
    double sum = 0.0;
    for (size_t f = 0; f < CG_PACK_FLOWS; f++)
        if (cg_pack_from[f] == CG_PACK_CYLINDER)
            sum += record->flow[f];
    return sum;
}

static void read_crevices(const struct cg_seal *seal,
                          struct cg_seal_answer *answer)
{
    const struct cg_ring_pack *pack = &seal->pack;
    const struct cg_pack_record *record = seal->record;
    double land = seal->top_land_volume / (pack->gas.gas_constant *
                                           pack->temperature[CG_PACK_CYLINDER]);
    size_t peak = node_of(seal->peak_deg);
    size_t open = node_of(seal->exhaust_open_deg);
    double top = record[peak].pressure[CG_PACK_CYLINDER] * land;
    double back = top - record[open].pressure[CG_PACK_CYLINDER] * land;
    for (size_t i = peak + 1; i <= open; i++)
        back -= out_of_cylinder(&record[i]);
    double sum =
        top + held(seal, &record[peak], 0) + held(seal, &record[peak], 1);
    answer->crevice_share = sum / seal->charge_mass;
    answer->crevice_late = fmax(back, 0.0) / seal->charge_mass;
}

static void read_work(const struct cg_seal *seal, struct cg_seal_answer *answer)
{
    double net = 0.0, most = 0.0, work = 0.0;
    size_t open = node_of(seal->exhaust_open_deg);
    for (size_t i = 1; i <= open; i++) {
        if (seal->work_left[i - 1] == 0.0)
            continue;
        double out = out_of_cylinder(&seal->record[i]);
        double share = out > 0.0 ? 1.0
                                 : seal->pack.temperature[CG_PACK_CYLINDER] /
                                       seal->cylinder_temperature[i];
        work += HOT_GAMMA * share * out / seal->trapped_mass * 0.5 *
                (seal->work_left[i - 1] + seal->work_left[i]);
        net += out;
        most = fmax(most, net);
    }
    answer->work_lost = work;
    answer->leaked_share = most / seal->trapped_mass;
}

enum cg_status cg_seal_solve(struct cg_seal *seal, double top, double second,
                             struct cg_seal_answer *answer,
                             struct cg_error *error)
{
    const struct cg_ring_pack *pack = &seal->pack;
    struct cg_pack_state state;
    cg_seal_gaps(seal, top, second);
    enum cg_status status =
        cg_pack_settle(pack, &cg_pack_control_usual, false, &state,
                       &answer->settled, seal->record, error);
    if (status != CG_OK)
        return status;
    const struct cg_pack_cycle *cycle = &answer->settled.cycle;
    double rate = 0.5 * pack->speed * seal->c->engine.cylinders;
    answer->gap[0] = top;
    answer->gap[1] = second;
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        answer->hot_gap[k] = pack->node[CENTRE].gap[k];
    answer->blow_by = cycle->to_crankcase * rate;
    answer->blow_by_share = cycle->to_crankcase / seal->charge_mass;
    answer->blow_by_volume = answer->blow_by * pack->gas.gas_constant *
                             pack->temperature[CG_PACK_CRANKCASE] /
                             pack->crankcase_pressure;
    size_t gap = CG_PACK_FLOW(0, CG_WAY_GAP);
    answer->reverse_share = cycle->forward[gap] > 0.0
                                ? cycle->back[gap] / cycle->forward[gap]
                                : 0.0;
    read_pressures(seal, answer);
    read_crevices(seal, answer);
    read_work(seal, answer);
    return CG_OK;
}

double cg_seal_power(const struct cg_seal *seal,
                     const struct cg_seal_answer *answer)
{
    return answer->work_lost * 0.5 * seal->pack.speed *
           seal->c->engine.cylinders;
}
