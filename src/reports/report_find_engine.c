#include "brought.h"
#include "report_find_parts.h"
#include "say_common.h"

static const char *seat_text(enum cg_seat seat)
{
    static const char *const text[] = {[CG_SEAT_PARENT] =
                                           "bore cut in the block",
                                       [CG_SEAT_CAST_IN] = "liner cast in",
                                       [CG_SEAT_PRESSED] = "liner pressed in",
                                       [CG_SEAT_WET] = "wet liner"};
    return text[seat];
}

static const char *start_text(int start)
{
    static const char *const text[] = {"cold", "settled at cruise",
                                       "settled at its first instant"};
    return text[start];
}

static void tell_parts(struct cg_report *report, const struct cg_case *c)
{
    bool let_in =
        c->bore.seat == CG_SEAT_CAST_IN || c->bore.seat == CG_SEAT_PRESSED;
    bool faced = c->ring_face[CG_RING_TOP].thickness > 0.0;
    cg_report_words(report, "top_ring", "Top ring", "%s%s%s",
                    c->ring[CG_RING_TOP].material, faced ? ", " : "",
                    faced ? c->ring_face[CG_RING_TOP].name : "");
    cg_report_words(report, "piston", "Piston", "%s%s%s", c->piston.alloy,
                    c->piston.oil_jet ? " with oil jet" : "",
                    c->piston.gallery ? " with oil gallery" : "");
    cg_report_words(report, "block", "Bore wall", "%s%s%s (%s)",
                    c->bore.material, let_in ? " in " : "",
                    let_in ? c->bore.block_material : "",
                    seat_text((enum cg_seat)c->bore.seat));
    cg_say_cooling(report, c);
}

void cg_report_find_engine(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer)
{
    cg_report_section(report, "Engine and duty");
    cg_say_size(report, c);
    cg_report_row(report, "ratio", "Compression ratio",
                  cg_quantity(CG_SHOW_NUMBER, c->engine.compression_ratio));
    cg_report_row(report, "speed", "Rated speed",
                  cg_quantity(CG_SHOW_SPEED, c->engine.speed));
    cg_report_row(report, "boost", "Boost",
                  cg_quantity(CG_SHOW_BOOST, c->charge.boost));
    cg_report_words(report, "fuel", "Fuel", "%s, lambda %.3g", c->fuel.name,
                    c->fuel.lambda);
    if (cg_duty_nitrous(&c->duty) > 0.0) {
        cg_report_row(report, "nitrous", "Nitrous, in the duty",
                      cg_quantity(CG_SHOW_FLOW,
                                  cg_duty_nitrous(&c->duty) *
                                      cg_brought_nitrous(c)));
        if (c->nitrous.power > 0.0)
            cg_report_remark(report, "by rule for %s",
                             cg_quantity_one(cg_quantity(CG_SHOW_POWER,
                                                         c->nitrous.power),
                                             cg_report_inch(report))
                                 .text);
    }
    tell_parts(report, c);
    cg_report_words(report, "duty", "Duty", "%s, %.4g s, starting %s",
                    c->duty.name, answer->duration, start_text(c->duty.start));
}
