/* Slider-crank kinematics.  Crank angle is in degrees, 0 at firing top dead
 * centre; a four-stroke cycle runs from -360 to 360.
 * J. B. Heywood, "Internal Combustion Engine Fundamentals" (1988), ch. 2.
 */
#ifndef CG_CRANK_H
#define CG_CRANK_H

struct cg_crank {
    double bore, stroke, rod;  /* [m]; rod is centre to centre */
    double compression_ratio;  /* [1], > 1 */
};

/* Distance of the piston below its top dead centre [m]. */
double cg_crank_depth(const struct cg_crank *crank, double angle_deg);

/* d(depth)/d(angle) [m/rad]. */
double cg_crank_depth_rate(const struct cg_crank *crank, double angle_deg);

/* Both at once, for the price of one. */
void cg_crank_motion(const struct cg_crank *crank, double angle_deg,
                     double *depth, double *rate);

/* d2(depth)/d(angle)2 [m/rad2]. */
double cg_crank_depth_second(const struct cg_crank *crank, double angle_deg);

/* Swept volume of one cylinder, clearance volume, volume at an angle [m3]. */
double cg_crank_swept(const struct cg_crank *crank);
double cg_crank_clearance(const struct cg_crank *crank);
double cg_crank_volume(const struct cg_crank *crank, double angle_deg);

/* Mean piston speed [m/s] at `speed` [rev/s]. */
double cg_crank_mean_speed(const struct cg_crank *crank, double speed);

#endif
