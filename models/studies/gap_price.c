#include "gap_price.h"

#include <math.h>

#include "seal.h"

/* What all prices are against. */
struct base {
    double gap[CG_FIT_RINGS]; /* asked for [m] */
    double blow_by, volume;   /* one cylinder; NaN: not settled */
};

/* One cylinder's blow-by for a pair of gaps; a pack that does not settle is no
 * failure here. */
static enum cg_status solve(struct cg_seal *seal, const double *gap,
                            double *blow_by, double *volume,
                            struct cg_error *error)
{
    struct cg_seal_answer answer;
    double cylinders = seal->c->engine.cylinders;
    enum cg_status status = cg_seal_solve(seal, gap[0], gap[1], &answer, error);
    *blow_by = *volume = NAN;
    if (status == CG_NUMERICAL)
        return CG_OK;
    if (status != CG_OK)
        return status;
    *blow_by = answer.blow_by / cylinders;
    *volume = answer.blow_by_volume / cylinders;
    return CG_OK;
}

static enum cg_status price(struct cg_seal *seal, const struct base *base,
                            const struct cg_fit *fit, int ring,
                            struct cg_gap_price *price, struct cg_error *error)
{
    double gap[CG_FIT_RINGS] = {base->gap[0], base->gap[1]};
    gap[ring] += fit->gap - fit->asked;
    enum cg_status status =
        solve(seal, gap, &price->blow_by, &price->volume, error);
    price->blow_by -= base->blow_by;
    price->volume -= base->volume;
    return status;
}

static enum cg_status price_all(struct cg_seal *seal,
                                const struct cg_fitting *fitting,
                                struct cg_gap_prices *prices,
                                struct cg_error *error)
{
    struct base base;
    for (int k = 0; k < CG_FIT_RINGS; k++)
        base.gap[k] = fmax(cg_fit_need(&fitting->asked[k], 1.0),
                           fitting->asked[k].at_least);
    enum cg_status status =
        solve(seal, base.gap, &base.blow_by, &base.volume, error);
    prices->asked = base.blow_by;
    for (int i = 0; i < fitting->cylinders && status == CG_OK; i++)
        for (int k = 0; k < CG_FIT_RINGS && status == CG_OK; k++) {
            const struct cg_fit *fit = &fitting->cylinder[i].ring[k];
            if (fit->state == CG_FIT_TOO_WIDE)
                status = price(seal, &base, fit, k, &prices->ring[i][k], error);
        }
    return status;
}

enum cg_status cg_gap_prices_find(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  const struct cg_fitting *fitting,
                                  struct cg_gap_prices *prices,
                                  struct cg_error *error)
{
    struct cg_seal *seal = NULL;
    prices->asked = NAN;
    for (int i = 0; i < CG_FIT_CYLINDERS; i++)
        for (int k = 0; k < CG_FIT_RINGS; k++)
            prices->ring[i][k] = (struct cg_gap_price){NAN, NAN};
    if (fitting->count[CG_FIT_TOO_WIDE] == 0)
        return CG_OK;
    enum cg_status status =
        cg_seal_create(c, run, run->full_load, &seal, error);
    if (status == CG_OK)
        status = price_all(seal, fitting, prices, error);
    cg_seal_free(seal);
    return status;
}
