#include "crank.h"

#include <math.h>

#include "constants.h"

/* The rod's part is written without the difference of two nearly equal
 * lengths, so that a very long rod gives plain harmonic motion. */
struct rod {
    double s, c;  /* sine and cosine of the crank angle */
    double ratio; /* crank radius over rod length */
    double root;  /* cosine of the rod's angle */
};

static struct rod rod_at(const struct cg_crank *crank, double angle_deg)
{
    double angle = angle_deg * (CG_PI / 180.0);
    struct rod rod = {sin(angle), cos(angle), 0.5 * crank->stroke / crank->rod,
                      0.0};
    rod.root = sqrt(1.0 - rod.ratio * rod.ratio * rod.s * rod.s);
    return rod;
}

void cg_crank_motion(const struct cg_crank *crank, double angle_deg,
                     double *depth, double *rate)
{
    struct rod rod = rod_at(crank, angle_deg);
    double radius = 0.5 * crank->stroke;
    *depth = radius *
             (1.0 - rod.c + rod.ratio * rod.s * rod.s / (1.0 + rod.root));
    *rate = radius * rod.s * (1.0 + rod.ratio * rod.c / rod.root);
}

double cg_crank_depth(const struct cg_crank *crank, double angle_deg)
{
    double depth, rate;
    cg_crank_motion(crank, angle_deg, &depth, &rate);
    return depth;
}

double cg_crank_depth_rate(const struct cg_crank *crank, double angle_deg)
{
    double depth, rate;
    cg_crank_motion(crank, angle_deg, &depth, &rate);
    return rate;
}

double cg_crank_depth_second(const struct cg_crank *crank, double angle_deg)
{
    struct rod rod = rod_at(crank, angle_deg);
    double bend = rod.ratio * rod.s * rod.c / rod.root;
    return 0.5 * crank->stroke *
           (rod.c + (rod.ratio * (rod.c * rod.c - rod.s * rod.s) +
                     rod.ratio * bend * bend) / rod.root);
}

double cg_crank_swept(const struct cg_crank *crank)
{
    return 0.25 * CG_PI * crank->bore * crank->bore * crank->stroke;
}

double cg_crank_clearance(const struct cg_crank *crank)
{
    return cg_crank_swept(crank) / (crank->compression_ratio - 1.0);
}

double cg_crank_volume(const struct cg_crank *crank, double angle_deg)
{
    return cg_crank_clearance(crank) + 0.25 * CG_PI * crank->bore *
                                           crank->bore *
                                           cg_crank_depth(crank, angle_deg);
}

double cg_crank_mean_speed(const struct cg_crank *crank, double speed)
{
    return 2.0 * crank->stroke * speed;
}
