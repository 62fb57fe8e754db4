/* Operating points of a course with many rows: not one a row, but the corners
 * of a grid over what its channels ran through, those alone that the course
 * comes by, and straight lines between them.
 *
 * A place inside a cell lies in one of the simplexes that the order of its
 * coordinates cuts the cell into (H. W. Kuhn, "Some combinatorial lemmas in
 * topology", IBM J. Res. Dev. 4 (1960)): it has one corner more than there are
 * channels that move, and values are continuous from cell to cell.  What a grid
 * leaves out shrinks with the square of its cells.
 */
#ifndef CG_REGIME_MAP_H
#define CG_REGIME_MAP_H

#include "course.h"
#include "status.h"

enum { CG_MAP_CORNERS = CG_CHANNELS + 1 };

/* A place between corners; the weights sum to 1. */
struct cg_map_place {
    size_t corners;
    size_t node[CG_MAP_CORNERS];
    double weight[CG_MAP_CORNERS];
};

struct cg_regime_map {
    double low[CG_CHANNELS];   /* of what does not move, the middle */
    double width[CG_CHANNELS]; /* of a cell */
    int cells[CG_CHANNELS];    /* 0: the channel does not move */
    size_t nodes, allocated;
    int (*key)[CG_CHANNELS]; /* [nodes] */
    size_t *slot, slots;     /* where to find them; SIZE_MAX: empty */
};

/* The widest cells, by channel: speed over the rated one.  Coolant and oil
 * reach the bodies as they are, and the gas side by its walls alone: what moves
 * by less than `cg_map_least` is one to the map. */
extern const double cg_map_cell[CG_CHANNELS];
extern const double cg_map_least[CG_CHANNELS];

/* A map without nodes over what the course ran through; `part` [1] times the
 * widest cells of the course (cg_course_fine).  Free it also after a failure: CG_NO_MEMORY. */
enum cg_status cg_regime_map_begin(const struct cg_course *course,
                                   double rated_speed, double part,
                                   struct cg_regime_map *map,
                                   struct cg_error *error);
void cg_regime_map_free(struct cg_regime_map *map);

/* The place of values inside the map; its corners are added where they are
 * new.  CG_NO_MEMORY. */
enum cg_status cg_regime_map_find(struct cg_regime_map *map,
                                  const double of[CG_CHANNELS],
                                  struct cg_map_place *place,
                                  struct cg_error *error);

/* The values at a node.  Cannot fail. */
void cg_regime_map_node(const struct cg_regime_map *map, size_t node,
                        double of[CG_CHANNELS]);

#endif
