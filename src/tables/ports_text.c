#include "ports_text.h"
#include "constants.h"

#include <stdio.h>

struct cg_ports_text cg_ports_text(const struct cg_case *c,
                                   enum cg_port_kind kind, bool inch)
{
    static const char *const what[] = {"", "crown ports of %.3g %s",
                                       "land slots of %.3g %s",
                                       "ports of %.3g %s through the ring"};
    struct cg_ports_text out = {"no gas ports"};
    char each[64];
    if (kind == CG_PORTS_NONE)
        return out;
    snprintf(each, sizeof each, what[kind],
             c->seal.port_diameter / (inch ? CG_INCH : 1e-3),
             inch ? "in" : "mm");
    snprintf(out.text, sizeof out.text, "%d %s", c->seal.port_count, each);
    return out;
}
