#include "seal_tradeoff.h"

#include <math.h>

#include "answer.h"
#include "case_check.h"
#include "seal.h"

int cg_seal_tradeoff_boosts(const struct cg_case *c, double boost[3])
{
    static const double part[3] = {0.5, 1.0, 1.5};
    int count = 0;
    if (!(c->charge.boost > 0.0)) {
        boost[0] = 0.0;
        return 1;
    }
    for (int i = 0; i < 3; i++) {
        struct cg_case at = *c;
        struct cg_case_problem problem[CG_CASE_PROBLEMS];
        at.charge.boost = part[i] * c->charge.boost;
        if (at.charge.boost <= CG_TRADEOFF_MOST &&
            cg_case_check(&at, problem) == 0)
            boost[count++] = at.charge.boost;
    }
    return count;
}

static void set_point(struct cg_seal *seal, const struct cg_answer *answer,
                      double minimum_hot_gap, double ratio,
                      struct cg_tradeoff_point *point)
{
    struct cg_seal_answer leak;
    double open = point->gap - answer->extremes.closure;
    point->chance_less = cg_normals_above(&answer->laws, open - minimum_hot_gap);
    point->chance_touch = cg_normals_above(&answer->laws, open);
    point->blow_by = point->blow_by_share = NAN;
    if (cg_seal_solve(seal, point->gap, ratio * point->gap, &leak, NULL) ==
        CG_OK) {
        point->blow_by = leak.blow_by;
        point->blow_by_share = leak.blow_by_share;
    }
}

enum cg_status cg_seal_tradeoff(const struct cg_case *c, double least,
                                double most, double ratio,
                                struct cg_tradeoff *tradeoff,
                                struct cg_error *error)
{
    struct cg_case at = *c;
    struct cg_duty_run *run = NULL;
    struct cg_seal *seal = NULL;
    struct cg_answer answer;
    at.charge.boost = tradeoff->boost;
    enum cg_status status = cg_duty_run_create(&at, &run, error);
    if (status == CG_OK)
        status = cg_answer_find(&at, run, 0.0, NULL, NULL, &answer, error);
    if (status == CG_OK)
        status = cg_seal_create(&at, run, run->full_load, &seal, error);
    for (int i = 0; i < CG_TRADEOFF_POINTS && status == CG_OK; i++) {
        tradeoff->point[i].gap =
            least + (most - least) * i / (CG_TRADEOFF_POINTS - 1);
        set_point(seal, &answer, c->margin.residual, ratio,
                  &tradeoff->point[i]);
    }
    if (status == CG_OK) {
        tradeoff->safe_gap = answer.top.cold_gap;
        tradeoff->file_to = answer.file_to_top.file_to;
    }
    cg_seal_free(seal);
    cg_duty_run_free(run);
    return status;
}
