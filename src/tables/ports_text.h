/* Gas ports in words, for the screen and the tables of `seal`. */
#ifndef CG_PORTS_TEXT_H
#define CG_PORTS_TEXT_H

#include <stdbool.h>

#include "case.h"

struct cg_ports_text {
    char text[80];
};

/* "12 crown ports of 1.000 mm", "no gas ports"; in tables metric. */
struct cg_ports_text cg_ports_text(const struct cg_case *c,
                                   enum cg_port_kind kind, bool inch);

#endif
