/* A solid material: what the heat and growth models need to know of a metal.
 *
 * Values come from the material files (configs/materials/), which name their
 * sources; this module only looks them up.  All temperatures are in kelvin.
 */
#ifndef CG_MATERIAL_H
#define CG_MATERIAL_H

enum { CG_CURVE_POINTS = 10, CG_NAME_LENGTH = 48, CG_KIND_LENGTH = 24 };

/* A limit or a figure that is known only between two values. */
struct cg_band {
    double low, high;
};

/* A property against temperature: straight lines between the points, held at
 * the end values outside them.  points >= 1, temperature strictly rising. */
struct cg_curve {
    int points;
    double temperature[CG_CURVE_POINTS]; /* [K] */
    double value[CG_CURVE_POINTS];       /* the property's SI unit */
};

struct cg_material {
    char name[CG_NAME_LENGTH];
    double density;                /* [kg/m3] */
    double poisson;                /* Poisson's ratio [1] */
    struct cg_curve expansion;     /* mean coefficient from 20 C to T [1/K] */
    struct cg_curve conductivity;  /* [W/(m K)] */
    struct cg_curve heat_capacity; /* [J/(kg K)] */
    struct cg_curve modulus;       /* Young's modulus [Pa] */
    double hot_limit;              /* mean temperature above which the trade
                                      warns of softening or relaxation [K] */

    /* Of rings: */
    char kind[CG_KIND_LENGTH];     /* which faces it takes: "iron", "steel",
                                      "nitriding_steel" or "other" */
    double hot_limit_high;         /* where the warning is certain [K] */
    double hardness;               /* Vickers [HV]; NaN: not given */
    /* Of pistons: cold skirt clearance over bore by the trade [1]; NaN. */
    struct cg_band skirt_per_bore;
};

/* The property at temperature [K].  Cannot fail. */
double cg_curve_at(const struct cg_curve *curve, double temperature);

/* Free thermal strain from 20 C to `temperature` [1]:
 * strain = expansion(T) (T - 293.15 K), `expansion` being the mean coefficient
 * (the definition used by EN 10088-1 and ASME II-D tables).  Cannot fail. */
double cg_material_strain(const struct cg_material *material,
                          double temperature);

#endif
