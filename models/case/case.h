/* The case: everything a builder can say about one engine, its duty and the
 * margin wanted.  A plain value: copy it, change a number, run it again.
 * What each field means, its band and its default stand in setting_table.c, the
 * one table that the config reader, the template and the help all read.
 */
#ifndef CG_CASE_H
#define CG_CASE_H

#include <stdbool.h>
#include <stddef.h>

#include "course.h"
#include "cylinder.h"
#include "face.h"
#include "material.h"

/* At most: segments that a duty holds itself (longer ones are courses), duties of
 * an answer, stations along the bore, uncertain inputs, runs without contact. */
enum { CG_SEGMENTS = 64, CG_DUTIES = 8, CG_STATIONS = 600, CG_INPUTS = 32,
       CG_CLEAR_RUNS = 32 };

/* Of a text that lists names, blanks between them. */
enum { CG_WORDS_LENGTH = 256 };

enum cg_ring_place { CG_RING_TOP, CG_RING_SECOND, CG_RING_OIL, CG_RINGS };

/* The oil film between a compression ring and the bore. */
enum cg_film_law {
    CG_FILM_CONSTANT, /* as set for mid-stroke: stroke_film.h */
    CG_FILM_REYNOLDS  /* from speed, load and viscosity: film.h */
};

enum cg_start {
    CG_START_COLD,   /* everything at ambient temperature */
    CG_START_CRUISE, /* settled at duty.cruise_* */
    CG_START_SETTLED /* settled at the duty's first instant */
};

enum cg_drive_kind {
    CG_CHARGER_NONE,
    CG_CHARGER_TURBINE, /* costs exhaust back pressure */
    CG_CHARGER_BELT     /* costs crankshaft power */
};

enum cg_ignition {
    CG_IGNITION_SPARK,
    CG_IGNITION_COMPRESSION /* injected fuel fires by itself */
};

struct cg_engine_case {
    char name[CG_NAME_LENGTH]; /* free text; "": none */
    double bore, stroke, rod;  /* [m] */
    double compression_ratio;  /* [1] */
    int cylinders;
    double speed;              /* rated [rev/s] */
};

struct cg_charge_case {
    double boost;                 /* gauge, at load 1 [Pa] */
    double ambient_temperature;   /* [K] */
    double ambient_pressure;      /* [Pa] */
    double closed_throttle;       /* manifold, load 0 [Pa] absolute */
    double compressor_efficiency; /* isentropic [1] */
    double cooler_effectiveness;  /* [1], 0: no cooler */
    double boost_time;            /* in which boost builds [s]; 0: at once */
    double cooler_soak;           /* share of what it takes that a cooler keeps
                                     when it has soaked [1] */
    double soak_time;             /* in which it soaks and recovers [s] */
    double intake_heating;        /* rise from cooler to valve [K] */
    double evaporation;           /* share of latent heat taken from the charge
                                     before the valve */
    double wall_evaporation;      /* share of the rest taken from port walls */
    double port_factor;           /* exhaust port's heat over a pipe's [1] */
    double volumetric_efficiency; /* against manifold density [1] */
    int charger;                  /* enum cg_drive_kind */
    double exhaust_base;          /* exhaust over ambient, no turbine [Pa] */
    double turbine_ratio;         /* turbine back pressure over boost [1] */
    int second_charger;           /* behind the first: enum cg_drive_kind */
    double split;                 /* of the logarithm of the pressure ratio,
                                     what the first of two makes [1] */
    double second_efficiency;     /* isentropic [1] */
    double between_effectiveness; /* of a cooler between them, 0: none [1] */
};

struct cg_fuel_case {
    char name[CG_NAME_LENGTH];
    double lambda; /* [1] */
    double octane; /* [1] */
};

enum cg_nitrous_state { CG_NITROUS_LIQUID, CG_NITROUS_GAS };

/* Oxygen brought along, on where a duty's segment says so. */
struct cg_nitrous_case {
    double flow;   /* whole engine, fully on [kg/s]; 0: none */
    double power;  /* or the brake power asked for, by rule [W]; 0: none */
    int state;     /* at the nozzle: enum cg_nitrous_state */
    double bottle; /* temperature it comes at [K] */
    double lambda; /* of its oxygen and the fuel matched to it [1]; NaN: as the
                      engine's at that load */
};

/* Water and alcohol sprayed into the charge. */
struct cg_spray_case {
    double flow;      /* whole engine, rated speed and full load [kg/s] */
    double alcohol;   /* share of it by mass, methanol; the rest is water [1] */
    double from_load; /* it begins there, and rises straight to load 1 [1] */
    double before;    /* share that evaporates before the valve [1] */
    double closed;    /* and after the intake has closed; the rest as it enters
                         the cylinder [1] */
};

struct cg_combustion_case {
    int ignition;                /* enum cg_ignition */
    double injection_deg;        /* compression: begins, after TDC */
    double ignition_delay;       /* compression: multiplies it [1] */
    char heat_transfer[CG_NAME_LENGTH];
    double heat_factor;          /* [1] */
    double burn50_deg;           /* where knock allows it, after TDC */
    double retard_deg_per_100kPa;/* later burn per 100 kPa of boost; NaN: as
                                    late as knock makes it */
    double knock_delay;          /* multiplies the ignition delay [1] */
    double burn_duration_deg;    /* 10-90 % */
    double efficiency;           /* share of the charge that burns [1] */
    double chamber_area;         /* head's face over bore area [1] */
    double crevice_heat;         /* share of what gas in the crevices can give
                                    their walls that it gives [1] */
    double crevice_in_law;       /* share of that heat that the correlation
                                    holds [1] */
};

struct cg_piston_case {
    char alloy[CG_NAME_LENGTH];
    double crown_thickness, wall_thickness, top_land, second_land, third_land;
    double skirt_length, skirt_thickness; /* [m] */
    double skirt_share;          /* of the circumference that bears [1] */
    double land_clearance;       /* top land, diametral, cold [m] */
    double skirt_clearance;      /* diametral, cold [m] */
    bool skirt_taken;            /* not given: cg_case_choose_skirt chose it */
    double second_land_clearance, third_land_clearance; /* the same [m] */
    bool oil_jet;
    double splash_coefficient;   /* underside without jet [W/(m2 K)] */
    double jet_coefficient;      /* underside with jet [W/(m2 K)] */
    bool gallery;                /* behind the top ring, oil shaken in it */
    double gallery_coefficient;  /* on its walls [W/(m2 K)] */
    double friction_share;       /* of all friction, in ring pack and skirt */
    double skirt_film;           /* oil thickness [m] */
};

struct cg_ring_case {
    char material[CG_NAME_LENGTH];
    char face[CG_NAME_LENGTH]; /* top ring only: its coat */
    double width;            /* axial [m] */
    double depth;            /* radial [m] */
    double cold_gap;         /* [m]; NaN: not given */
    double maker_minimum;    /* cold gap, by the ring's maker [m]; NaN: none */
    double flank_coefficient;/* groove to ring, mean over a cycle [W/(m2 K)] */
    double film;             /* oil between face and bore in mid-stroke [m] */
    double pressure;         /* on the bore by its own tension [Pa] */
    int face_shape;          /* enum cg_face_shape; oil ring: not used */
    double face_drop;        /* far edge behind the nearest point [m] */
    double face_peak;        /* barrel: that point, of the width from above */
    double roughness;        /* rms, face and bore together [m] */
    double side_clearance;   /* in the groove, cold [m] */
    double back_clearance;   /* radial, behind the ring, cold [m] */
    double keystone_deg;     /* top ring: angle between its flanks */
    double service;          /* top ring: time at the duty's hottest over which
                                tension is lost [s] */
};

/* How the bore is honed, and what its finish is measured against. */
struct cg_finish_case {
    int base_grit, plateau_grit; /* stones' grit classes */
    double plateau_share;        /* of the area, cut by the plateau stage */
    double crosshatch_deg;       /* between the two ways of the grooves */
    double reference_oil;        /* held by a proven finish [m3/m2] */
    double reference_fuel;       /* a cycle, in its engine [m3/m2] */
    double fuel_exponent;        /* of fuel, in the oil needed [1] */
};

enum cg_port_kind {
    CG_PORTS_NONE,
    CG_PORTS_CROWN,  /* drilled from the crown to the back of the groove */
    CG_PORTS_LAND,   /* slots from the top land along the upper flank */
    CG_PORTS_THROUGH /* drilled through the ring, face to back */
};

/* What the gas past the rings needs beyond the parts themselves. */
struct cg_seal_case {
    int ports;            /* into the top groove: enum cg_port_kind */
    int port_count;
    double port_diameter; /* a slot: of the hole of its section [m] */
    double crankcase;     /* pressure over ambient [Pa] */
    double discharge;     /* coefficient of gaps and ports [1] */
    double face_friction; /* coefficient of a ring on the bore [1] */
    double flank_leak;    /* height left under a seated flank [m] */
    double seated_to_deg; /* the top ring is to stay seated this long after
                             firing top dead centre */
};

/* Where the maker's gap is measured. */
enum cg_gap_place {
    CG_GAP_IN_SKIRT, /* below the choke, where the barrel is straight */
    CG_GAP_IN_CHOKE  /* in the narrow top */
};

/* A barrel ground narrower at the top: choke.h. */
struct cg_choke_case {
    double narrower;  /* diametral, cold; 0: a straight bore [m] */
    double length;    /* from the deck to where the barrel is straight [m] */
    int gap_measured; /* enum cg_gap_place */
};

struct cg_bore_case {
    char material[CG_NAME_LENGTH];
    int seat;                      /* enum cg_seat */
    char block_material[CG_NAME_LENGTH];
    double wall_thickness;         /* liner, or parent wall [m] */
    double block_thickness;        /* around a liner [m] */
    bool block_taken;              /* not given: cg_case_complete chose it */
    double interference;           /* diametral, pressed seat [m] */
    double joint_coefficient;      /* liner to block in contact [W/(m2 K)] */
    double open_joint_coefficient; /* pressed joint that has opened */
    double jacket_top;             /* deck to coolant [m] */
    double jacket_length;          /* of coolant contact [m] */
    struct cg_choke_case choke;
    struct cg_finish_case finish;
};

enum cg_medium { CG_MEDIUM_COOLANT, CG_MEDIUM_AIR };

enum cg_air_drive {
    CG_AIR_STREAM, /* past the engine, whatever it turns */
    CG_AIR_FAN     /* in proportion to the engine's speed */
};

/* Cooling by air: outside.h. */
struct cg_air_case {
    double rise;              /* at the fins, over the air outside [K] */
    double speed;             /* between the fins; a fan's at rated speed [m/s] */
    int drive;                /* enum cg_air_drive */
    double fins;              /* bore's own area behind the fins [W/(m2 K)] */
    double deck, lower, head; /* bore above and below them; gas face of the
                                 head [W/(m2 K)] */
    double top, length;       /* deck to the first fin, first to last [m] */
};

struct cg_cooling_case {
    int medium;                  /* enum cg_medium; the coolant's own fields
                                    hold for CG_MEDIUM_COOLANT alone */
    struct cg_air_case air;
    double coolant_temperature;  /* [K] */
    double coolant_coefficient;  /* [W/(m2 K)] */
    double coolant_pressure;     /* absolute, for the boiling flag [Pa] */
    double coolant_glycol;       /* share by volume [1] */
    double oil_temperature;      /* [K] */
    char oil_grade[CG_NAME_LENGTH];
    double bore_splash;          /* oil mist on the bore below the piston */
    double deck_coefficient;     /* bore above the jacket */
    double dry_coefficient;      /* bore below the jacket */
    double head_coefficient;     /* head gas face to coolant */
};

/* Gas heat under knock over that without: 2.2 at the moment and 1.15 over the
 * cycle in one simulation of a boosted engine, read of at second hand.  No
 * measured factor is known here; a small knock is 1.1. */
#define CG_KNOCK_HEAT_LEAST 1.1
#define CG_KNOCK_HEAT_MOST 2.2

/* A segment of a duty: speed and load run in straight lines from the values
 * at its start to those at its end. */
struct cg_segment {
    double seconds;
    double speed, speed_end; /* [rev/s] */
    double load, load_end;   /* 0 closed throttle .. 1 boost target */
    double heat_factor;      /* extra gas heat, e.g. lean [1] */
    double coolant_temperature; /* [K]; NaN: as cooling.coolant */
    double knock_heat;       /* gas heat under knock, over that without: who
                                declares knock says it; 0: no knock [1] */
    double air;              /* cooling air over cooling.air_speed; 0: as much
                                as that [1] */
    double nitrous;          /* share of its flow that is on [1] */
};

/* Extra gas heat of a segment, with that of declared knock [1]. */
static inline double cg_segment_heat(const struct cg_segment *segment)
{
    double knock = segment->knock_heat;
    return segment->heat_factor * (knock > 0.0 ? knock : 1.0);
}

struct cg_duty_case {
    char name[CG_NAME_LENGTH];
    int start;                  /* enum cg_start */
    double cruise_speed, cruise_load; /* [rev/s], [1] */
    int segments;
    struct cg_segment segment[CG_SEGMENTS];
    const struct cg_course *course; /* in place of segments; not owned, or
                                       NULL */
    struct cg_course_left left;     /* of that course */
};

/* Of a duty: its length [s], slowest speed [rev/s], the most knock heat
 * declared in it (0: none) and the most of the nitrous that is on in it [1].
 * Cannot fail. */
double cg_duty_seconds(const struct cg_duty_case *duty);
double cg_duty_slowest(const struct cg_duty_case *duty);
double cg_duty_knock_heat(const struct cg_duty_case *duty);
double cg_duty_nitrous(const struct cg_duty_case *duty);

/* What the engine must survive besides the duty asked for. */
struct cg_survive_case {
    int duties;
    bool named; /* margin.duties was given, and not as it is by default: their
                   limits are verdicts, not notes (duty_limits.h) */
    struct cg_duty_case duty[CG_DUTIES - 1];
};

struct cg_margin_case {
    char duties[CG_WORDS_LENGTH]; /* names of shipped duties to survive too */
    double residual;    /* hot gap that must remain [m] */
    double risk;        /* accepted chance of less than that [1] */
    double filing_step; /* [m] */
    double second_factor; /* second ring gap over top ring gap, for now [1] */
    double wide_factor; /* too wide: above this many times what is asked [1] */
    double skirt_expansion; /* one standard deviation of the piston's, for the
                               skirt alone, relative [1] */
    double skirt_pressure; /* mean, of a skirt without clearance [Pa] */
};

/* One standard deviation of each uncertain input. */
struct cg_uncertainty_case {
    double heat_factor, flank, film, undercrown, jet, coolant_film; /* relative */
    double ring_expansion, bore_expansion;                     /* relative */
    double piston_conductivity, ring_conductivity;             /* relative */
    double block_wall;                                         /* relative */
    double boost;                                              /* relative */
    double coolant_temperature, oil_temperature, charge_temperature; /* [K] */
    double burn50_deg, retard_deg_per_100kPa;
    double octane, knock_delay;                                /* [1], relative */
    double crevice;                                            /* relative */
    double friction;                                           /* relative */
    double cylinder_charge, cylinder_mixture;                  /* relative */
    double cylinder_coolant;                                   /* [K] */
    double fins, cylinder_fins;                                /* relative */
    double engine;                                 /* relative, of closure */
    double bore_size, gap_measure;                             /* [m] */
    bool other_laws; /* of gas heat and film: law.h */
};

struct cg_solver_case {
    double crank_step_deg;
    bool rough_cycles;  /* of a moved case: not a setting */
    int stations, liner_cells, block_cells;
    int crown_cells, skirt_cells, ring_cells;
    double tolerance;   /* per step [K] */
    double table_step;  /* of history.dat [s] */
};

/* Multipliers of what the uncertain inputs scale and that no other field
 * carries; all 1 in a nominal case. */
struct cg_scale_case {
    double ring_expansion, bore_expansion, piston_conductivity;
    double ring_conductivity, film, flank;
    double lambda; /* of a course's own mixture */
};

/* What uncertain inputs add where a duty gives its own; all 0 in a nominal
 * case. */
struct cg_moved_case {
    double coolant, oil, air; /* [K] */
    double burn50_deg;
};

/* A run without contact. */
struct cg_clear_run {
    double gap;     /* cold [m] */
    double closure; /* by the model as it was taught [m] */
    size_t entry;   /* of the evidence */
};

/* What the top ring's ends showed in this very engine (evidence.h); all 0: not
 * seen.  Not a setting. */
struct cg_ends_case {
    double touched; /* the widest cold gap that touched [m] */
    double beyond;  /* the most that a gap which touched is wider than the
                       closure by the model in its run [m] */
    size_t clear_runs;
    struct cg_clear_run clear[CG_CLEAR_RUNS];
};

struct cg_case {
    struct cg_engine_case engine;
    struct cg_charge_case charge;
    struct cg_fuel_case fuel;
    struct cg_nitrous_case nitrous;
    struct cg_spray_case spray;
    struct cg_combustion_case combustion;
    struct cg_piston_case piston;
    struct cg_ring_case ring[CG_RINGS];
    int film_law;            /* enum cg_film_law */
    double oil_supply;       /* on the bore ahead of a ring, Reynolds law [m] */
    struct cg_seal_case seal;
    struct cg_bore_case bore;
    struct cg_cooling_case cooling;
    struct cg_duty_case duty;
    struct cg_survive_case survive; /* no setting: margin.duties names them */
    struct cg_margin_case margin;
    struct cg_uncertainty_case uncertainty;
    struct cg_solver_case solver;
    struct cg_scale_case scale;
    struct cg_moved_case moved;
    /* Between uncertain inputs, rows of uncertain.c, off the diagonal; zero:
     * independent (input_law.h). */
    double correlation[CG_INPUTS][CG_INPUTS];
    struct cg_ends_case ends;

    /* Looked up by the names above before the case is run. */
    struct cg_material piston_material, ring_material[CG_RINGS];
    struct cg_material bore_material, block_material;
    struct cg_face ring_face[CG_RINGS]; /* thickness 0: no coat */

    struct cg_course *courses; /* all that the duties point to, owned by the
                                  case that was read, or NULL */
};

/* Frees the courses of a case that was read; its copies then point nowhere. */
void cg_case_free(struct cg_case *c);

#endif
