#include "simulated.h"

#include <math.h>
#include <stdlib.h>

#include "honing.h"

static struct cg_honing honing_of(const struct cg_case *c,
                                  enum cg_stages stages)
{
    const struct cg_finish_case *finish = &c->bore.finish;
    struct cg_honing honing = {
        finish->base_grit,
        stages == CG_STAGES_PLATEAU ? finish->plateau_grit : 0,
        finish->plateau_share, finish->crosshatch_deg};
    return honing;
}

enum cg_status cg_simulated_trace(const struct cg_case *c,
                                  enum cg_stages stages, double cutoff,
                                  unsigned long seed,
                                  struct cg_profile *profile,
                                  struct cg_error *error)
{
    struct cg_honing honing = honing_of(c, stages);
    struct cg_profile made = {NULL, 0, CG_PROFILE_USUAL_SPACING};
    made.points = (size_t)lround(6.0 * cutoff / made.spacing);
    made.height = malloc(made.points * sizeof *made.height);
    if (made.height == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "profile: out of memory");
    enum cg_status status = cg_honing_cut(&honing, made.points, 1, made.spacing,
                                          seed, made.height, error);
    if (status == CG_OK)
        *profile = made;
    else
        free(made.height);
    return status;
}

enum cg_status cg_simulated_core(const struct cg_case *c, unsigned long seed,
                                 struct cg_core *core, bool *bends,
                                 struct cg_error *error)
{
    struct cg_profile trace;
    struct cg_surface *surface;
    enum cg_status status = cg_simulated_trace(
        c, CG_STAGES_PLATEAU, CG_SURFACE_USUAL_CUTOFF, seed, &trace, error);
    if (status != CG_OK)
        return status;
    status = cg_surface_measure(&trace, CG_FILTER_STANDARD,
                                CG_SURFACE_USUAL_CUTOFF, &surface, error);
    free(trace.height);
    if (status != CG_OK)
        return status;
    *core = surface->core;
    *bends = surface->probability.bends;
    cg_surface_free(surface);
    return CG_OK;
}

static enum cg_status make_patch(const struct cg_case *c, enum cg_stages stages,
                                 unsigned long seed, struct cg_patch *patch,
                                 struct cg_error *error)
{
    struct cg_honing honing = honing_of(c, stages);
    size_t points = (size_t)CG_PATCH_SIDE * CG_PATCH_SIDE;
    patch->height = malloc(points * sizeof *patch->height);
    if (patch->height == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "patch: out of memory");
    enum cg_status status =
        cg_honing_cut(&honing, CG_PATCH_SIDE, CG_PATCH_SIDE, CG_PATCH_STEP,
                      seed, patch->height, error);
    if (status != CG_OK)
        return status;
    struct cg_profile all = {patch->height, points, CG_PATCH_STEP};
    return cg_surface_measure(&all, CG_FILTER_NONE,
                              CG_PATCH_SIDE * CG_PATCH_STEP, &patch->surface,
                              error);
}

enum cg_status cg_simulated_patches(const struct cg_case *c, unsigned long seed,
                                    struct cg_patch patch[CG_STAGES],
                                    struct cg_error *error)
{
    enum cg_status status = CG_OK;
    for (int i = 0; i < CG_STAGES && status == CG_OK; i++)
        status = make_patch(c, (enum cg_stages)i, seed, &patch[i], error);
    return status;
}

void cg_simulated_free(struct cg_patch patch[CG_STAGES])
{
    for (int i = 0; i < CG_STAGES; i++) {
        free(patch[i].height);
        cg_surface_free(patch[i].surface);
    }
}
