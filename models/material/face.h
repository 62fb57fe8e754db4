/* The running face of a ring: the base metal itself, or a coat on it.
 *
 * Values come from configs/materials/ring_faces.cfg, which marks where each
 * limit is from.  A limit is a band: below it the trade fits the face without a
 * thought, above it nobody does.
 */
#ifndef CG_FACE_H
#define CG_FACE_H

#include <stdbool.h>

#include "material.h"

enum { CG_FACE_BASES = 8, CG_FACE_TEXT = 96 };

struct cg_face {
    char name[CG_NAME_LENGTH];
    char on[CG_FACE_BASES][CG_NAME_LENGTH]; /* kinds or names of materials */
    int bases;
    struct cg_band temperature;   /* of the face [K] */
    struct cg_band peak_pressure; /* of the cylinder [Pa] */
    struct cg_band peak_rise;     /* of the cylinder's pressure [Pa/deg] */
    double hardness;              /* Vickers [HV]; NaN: that of the base */
    double thickness;             /* of the coat; 0: none on top [m] */
    double conductivity;          /* of the coat [W/(m K)] */
    char failure[CG_FACE_TEXT];   /* how it fails, in a few words */
};

/* Whether the face is made on that ring material: its name or its kind stands
 * in `on`.  Cannot fail. */
bool cg_face_goes_on(const struct cg_face *face,
                     const struct cg_material *material);

/* Thermal resistance of the coat, thickness over conductivity [m2 K/W]; 0
 * without one.  It stands in series with the oil film: the heat leaves the
 * ring through both.  Cannot fail. */
double cg_face_resistance(const struct cg_face *face);

/* Hardness of a face on a material [HV]; NaN where neither is given. */
double cg_face_hardness(const struct cg_face *face,
                        const struct cg_material *material);

/* Wear-hardness class of a Vickers hardness: "soft" below 350 HV, "medium"
 * below 700, "hard" below 1200, "very hard" above, "unknown" for NaN (common
 * practice, no source).  Never NULL. */
const char *cg_face_hardness_class(double hardness);

#endif
