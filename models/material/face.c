#include "face.h"

#include <math.h>
#include <string.h>

bool cg_face_goes_on(const struct cg_face *face,
                     const struct cg_material *material)
{
    for (int i = 0; i < face->bases; i++)
        if (strcmp(face->on[i], material->kind) == 0 ||
            strcmp(face->on[i], material->name) == 0)
            return true;
    return false;
}

double cg_face_resistance(const struct cg_face *face)
{
    return face->thickness > 0.0 ? face->thickness / face->conductivity : 0.0;
}

double cg_face_hardness(const struct cg_face *face,
                        const struct cg_material *material)
{
    return isnan(face->hardness) ? material->hardness : face->hardness;
}

const char *cg_face_hardness_class(double hardness)
{
    if (isnan(hardness))
        return "unknown";
    if (hardness < 350.0)
        return "soft";
    if (hardness < 700.0)
        return "medium";
    return hardness < 1200.0 ? "hard" : "very hard";
}
