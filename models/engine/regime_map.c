#include "regime_map.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* With these the settled closure between corners is within a micrometre of
 * that of a point solved there (tested). */
const double cg_map_cell[CG_CHANNELS] = {
    [CG_CHANNEL_SPEED] = 0.1,  [CG_CHANNEL_LOAD] = 0.1,
    [CG_CHANNEL_HEAT] = 0.25,  [CG_CHANNEL_COOLANT] = 40.0,
    [CG_CHANNEL_LAMBDA] = 0.1, [CG_CHANNEL_BURN50] = 8.0,
    [CG_CHANNEL_OIL] = 40.0,   [CG_CHANNEL_AIR] = 40.0,
    [CG_CHANNEL_SOAK] = 0.5,   [CG_CHANNEL_WIND] = 0.1,
    [CG_CHANNEL_NITROUS] = 0.25};
const double cg_map_least[CG_CHANNELS] = {
    [CG_CHANNEL_COOLANT] = 8.0, [CG_CHANNEL_OIL] = 8.0};

/* Where the gas side bends, from rich to lean; NaN: nowhere. */
static const double bend[CG_CHANNELS] = {
    [CG_CHANNEL_SPEED] = NAN,  [CG_CHANNEL_LOAD] = NAN,
    [CG_CHANNEL_HEAT] = NAN,   [CG_CHANNEL_COOLANT] = NAN,
    [CG_CHANNEL_LAMBDA] = 1.0, [CG_CHANNEL_BURN50] = NAN,
    [CG_CHANNEL_OIL] = NAN,    [CG_CHANNEL_AIR] = NAN,
    [CG_CHANNEL_SOAK] = NAN,   [CG_CHANNEL_WIND] = NAN,
    [CG_CHANNEL_NITROUS] = NAN};

enum { FIRST_SLOTS = 256 };

static void set_channel(const struct cg_course *course, int k, double widest,
                        struct cg_regime_map *map)
{
    double low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < course->rows; i++) {
        low = fmin(low, course->row[i].of[k]);
        high = fmax(high, course->row[i].of[k]);
    }
    if (bend[k] > low && bend[k] < high) { /* it is to be a corner */
        low = bend[k] - widest * ceil((bend[k] - low) / widest - 1e-9);
        high = bend[k] + widest * ceil((high - bend[k]) / widest - 1e-9);
    }
    bool given = low <= high, moves = high - low > 1e-9 * (1.0 + fabs(high));
    moves = moves && high - low > cg_map_least[k];
    map->low[k] = moves ? low : given ? 0.5 * (low + high) : NAN;
    map->cells[k] = moves ? (int)ceil((high - low) / widest - 1e-9) : 0;
    map->cells[k] = moves && map->cells[k] < 1 ? 1 : map->cells[k];
    map->width[k] = moves ? (high - low) / map->cells[k] : 0.0;
}

static enum cg_status set_slots(size_t slots, struct cg_regime_map *map,
                                struct cg_error *error)
{
    size_t *made = malloc(slots * sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t i = 0; i < slots; i++)
        made[i] = SIZE_MAX;
    free(map->slot);
    map->slot = made;
    map->slots = slots;
    return CG_OK;
}

enum cg_status cg_regime_map_begin(const struct cg_course *course,
                                   double rated_speed, double part,
                                   struct cg_regime_map *map,
                                   struct cg_error *error)
{
    for (int k = 0; k < CG_CHANNELS; k++) {
        double unit = k == CG_CHANNEL_SPEED ? rated_speed : 1.0;
        set_channel(course, k, part * course->fine.cells * cg_map_cell[k] * unit,
                    map);
    }
    map->nodes = 0;
    return set_slots(FIRST_SLOTS, map, error);
}

void cg_regime_map_free(struct cg_regime_map *map)
{
    free(map->key);
    free(map->slot);
    *map = (struct cg_regime_map){.nodes = 0};
}

/* FNV-1a, then on to the next slot while another node is there. */
static size_t slot_of(const struct cg_regime_map *map,
                      const int key[CG_CHANNELS])
{
    uint64_t hash = 14695981039346656037u;
    for (int k = 0; k < CG_CHANNELS; k++)
        hash = (hash ^ (uint64_t)key[k]) * 1099511628211u;
    size_t slot = (size_t)(hash % map->slots);
    while (map->slot[slot] != SIZE_MAX &&
           memcmp(map->key[map->slot[slot]], key, sizeof map->key[0]) != 0)
        slot = (slot + 1) % map->slots;
    return slot;
}

static enum cg_status grow(struct cg_regime_map *map, struct cg_error *error)
{
    if (map->nodes == map->allocated) {
        size_t wanted = 2 * map->allocated + 64;
        void *grown = realloc(map->key, wanted * sizeof *map->key);
        if (grown == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "out of memory");
        map->key = grown;
        map->allocated = wanted;
    }
    if (2 * (map->nodes + 1) < map->slots)
        return CG_OK;
    enum cg_status status = set_slots(2 * map->slots, map, error);
    for (size_t i = 0; i < map->nodes && status == CG_OK; i++)
        map->slot[slot_of(map, map->key[i])] = i;
    return status;
}

static enum cg_status node_at(struct cg_regime_map *map,
                              const int key[CG_CHANNELS], size_t *node,
                              struct cg_error *error)
{
    size_t slot = slot_of(map, key);
    if (map->slot[slot] != SIZE_MAX) {
        *node = map->slot[slot];
        return CG_OK;
    }
    enum cg_status status = grow(map, error);
    if (status != CG_OK)
        return status;
    memcpy(map->key[map->nodes], key, sizeof map->key[0]);
    map->slot[slot_of(map, key)] = map->nodes;
    *node = map->nodes++;
    return CG_OK;
}

/* Where values lie: the cell's lowest corner, and the channels that move with
 * how far they are across, the farthest first. */
struct inside {
    int key[CG_CHANNELS];
    int moves, channel[CG_CHANNELS];
    double across[CG_CHANNELS];
};

static void look(const struct cg_regime_map *map, const double of[CG_CHANNELS],
                 struct inside *in)
{
    in->moves = 0;
    for (int k = 0; k < CG_CHANNELS; k++) {
        in->key[k] = 0;
        if (map->cells[k] == 0)
            continue;
        double at = (of[k] - map->low[k]) / map->width[k];
        in->key[k] = (int)fmin(fmax(floor(at), 0.0), map->cells[k] - 1.0);
        double across = fmin(fmax(at - in->key[k], 0.0), 1.0);
        int i = in->moves++;
        for (; i > 0 && in->across[i - 1] < across; i--) {
            in->across[i] = in->across[i - 1];
            in->channel[i] = in->channel[i - 1];
        }
        in->across[i] = across;
        in->channel[i] = k;
    }
}

enum cg_status cg_regime_map_find(struct cg_regime_map *map,
                                  const double of[CG_CHANNELS],
                                  struct cg_map_place *place,
                                  struct cg_error *error)
{
    const double nothing = 1e-9;
    struct inside in;
    enum cg_status status = CG_OK;
    double rest = 1.0;
    look(map, of, &in);
    place->corners = 0;
    for (int i = 0; i <= in.moves && status == CG_OK; i++) {
        double next = i < in.moves ? in.across[i] : 0.0;
        if (rest - next > nothing) {
            place->weight[place->corners] = rest - next;
            status =
                node_at(map, in.key, &place->node[place->corners++], error);
            rest = next;
        }
        if (i < in.moves)
            in.key[in.channel[i]]++;
    }
    /* What was left out as nothing belongs to the last corner. */
    place->weight[place->corners - 1] += rest;
    return status;
}

void cg_regime_map_node(const struct cg_regime_map *map, size_t node,
                        double of[CG_CHANNELS])
{
    for (int k = 0; k < CG_CHANNELS; k++)
        of[k] = map->low[k] + map->key[node][k] * map->width[k];
}
