/* The constants as calibrated on facts from outside: defaults of the
 * settings, and each law by itself.  Written by tests/calibration
 * (calibrate FACTS --write FILE), which says what from; not by hand. */
#ifndef CG_CALIBRATED_H
#define CG_CALIBRATED_H

#define CG_CALIBRATED_COMBUSTION_HEAT_FACTOR 1
#define CG_CALIBRATED_HEAT_FACTOR_PCT 20
#define CG_CALIBRATED_RINGS_TOP_FLANK_W_M2K 4500
#define CG_CALIBRATED_RINGS_SECOND_FLANK_W_M2K 4500
#define CG_CALIBRATED_RINGS_OIL_FLANK_W_M2K 4500
#define CG_CALIBRATED_FLANK_PCT 75
#define CG_CALIBRATED_RINGS_TOP_FILM_UM 2
#define CG_CALIBRATED_RINGS_SECOND_FILM_UM 3
#define CG_CALIBRATED_RINGS_OIL_FILM_UM 2
#define CG_CALIBRATED_PISTON_SKIRT_FILM_UM 32
#define CG_CALIBRATED_FILM_PCT 30
#define CG_CALIBRATED_PISTON_SPLASH_W_M2K 500
#define CG_CALIBRATED_PISTON_JET_W_M2K 2100
#define CG_CALIBRATED_UNDERCROWN_PCT 50
#define CG_CALIBRATED_COOLING_COOLANT_FILM_W_M2K 8000
#define CG_CALIBRATED_COOLANT_FILM_PCT 25
#define CG_CALIBRATED_PISTON_FRICTION_PCT 15
#define CG_CALIBRATED_FRICTION_PCT 40
#define CG_CALIBRATED_ENGINE_PCT 0

/* Inputs, in the order of the rows below. */
#define CG_CALIBRATED_INPUTS \
    "heat_factor", "flank", "film", "undercrown", "coolant_film", "friction"

enum { CG_CALIBRATED = 6 };

/* Law of gas heat and of film, weight; ln of each constant over the
 * default, its spread (of the ln), correlations. */
#define CG_CALIBRATED_LAWS \
    {"woschni", CG_FILM_CONSTANT, 1.000, \
     {0.000, 0.000, 0.000, 0.000, 0.000, 0.000}, \
     {0.200, 0.750, 0.300, 0.500, 0.250, 0.400}, \
     {{1.00, 0.00, 0.00, 0.00, 0.00, 0.00}, \
      {0.00, 1.00, 0.00, 0.00, 0.00, 0.00}, \
      {0.00, 0.00, 1.00, 0.00, 0.00, 0.00}, \
      {0.00, 0.00, 0.00, 1.00, 0.00, 0.00}, \
      {0.00, 0.00, 0.00, 0.00, 1.00, 0.00}, \
      {0.00, 0.00, 0.00, 0.00, 0.00, 1.00}}}

#endif
