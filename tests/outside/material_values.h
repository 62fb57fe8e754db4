/* Published values of the metals we ship, for a loop over the material files.
 * `property` is the key of the value curve in configs/materials/, whose unit
 * it carries; expansion is the mean from 20 C.  Where a source states no
 * temperature, 20 C is taken, and 100 C for a mean expansion.  A band is given
 * by its middle and half-width. */
#ifndef CG_MATERIAL_VALUES_H
#define CG_MATERIAL_VALUES_H

struct material_value {
    const char *material, *property;
    double celsius, value;
    double tolerance; /* relative [1] */
    const char *source;
};

#define MV_TE1 "ASME BPVC II-D table TE-1 (2001), group 1 steels, mean"
#define MV_9254 "54SiCr6 data sheet, mfgrobots.com"
#define MV_9254A "SAE 9254 annealed, makeitfrom.com (rounded)"
#define MV_440 "BS EN 10088-1, type 440"
#define MV_AZOM "azom.com, cast irons, article 5563"
#define MV_A48 "makeitfrom.com, ASTM A48 class 20 (cites Angus, 1976)"
#define MV_NODULAR "makeitfrom.com, ductile iron"
#define MV_CGI "compacted iron; from memory"
#define MV_4032 "makeitfrom.com, 4032-T6"
#define MV_48000 "EN 1706:2010, annex, EN AC-48000; from memory"
#define MV_HANDBOOK                                                            \
    "R. van Basshuysen and F. Schaefer, Internal Combustion Engine "           \
    "Handbook (2004); from memory"
#define MV_ALLOYED                                                             \
    "Neumann and Kopp, silicon, 1 % each of Cu, Ni, Mg; from memory"
#define MV_A390 "metalurgia.transformacionpuebla.com, A390"
#define MV_ASM "ASM Metals Handbook vol. 2 (1990); from memory"

#define MV_EXPANSION "expansion_1e6_K"
#define MV_CONDUCTIVITY "conductivity_W_mK"
#define MV_HEAT "heat_capacity_J_kgK"
#define MV_MODULUS "modulus_GPa"

static const struct material_value material_values[] = {
    /* low-alloy steel, against the carbon-steel table: not the same steel;
     * left out: at 260 C the two published tables stand 1.1 % apart */
    {"plain_steel", MV_EXPANSION, 93, 12.06, 0.01, MV_TE1},
    {"plain_steel", MV_EXPANSION, 149, 12.42, 0.01, MV_TE1},
    {"plain_steel", MV_EXPANSION, 204, 12.78, 0.01, MV_TE1},
    {"plain_steel", MV_EXPANSION, 316, 13.32, 0.01, MV_TE1},
    /* chrome-silicon spring steel */
    {"plain_steel", MV_EXPANSION, 20, 11.5, 0.03, MV_9254},
    {"plain_steel", MV_EXPANSION, 100, 12.1, 0.03, MV_9254},
    {"plain_steel", MV_EXPANSION, 200, 12.7, 0.03, MV_9254},
    {"plain_steel", MV_EXPANSION, 300, 13.2, 0.03, MV_9254},
    {"plain_steel", MV_EXPANSION, 400, 13.6, 0.03, MV_9254},
    {"plain_steel", MV_EXPANSION, 200, 13.0, 0.05, MV_9254A},
    {"plain_steel", MV_CONDUCTIVITY, 20, 45.1, 0.03, MV_9254},
    {"plain_steel", MV_CONDUCTIVITY, 100, 45.1, 0.03, MV_9254},
    {"plain_steel", MV_CONDUCTIVITY, 200, 44.1, 0.03, MV_9254},
    {"plain_steel", MV_CONDUCTIVITY, 300, 41.9, 0.03, MV_9254},
    {"plain_steel", MV_CONDUCTIVITY, 400, 39.4, 0.03, MV_9254},
    {"plain_steel", MV_CONDUCTIVITY, 20, 46.0, 0.05, MV_9254A},
    {"plain_steel", MV_HEAT, 20, 461, 0.03, MV_9254},
    {"plain_steel", MV_HEAT, 100, 479, 0.03, MV_9254},
    {"plain_steel", MV_HEAT, 200, 499, 0.03, MV_9254},
    {"plain_steel", MV_HEAT, 300, 517, 0.03, MV_9254},
    {"plain_steel", MV_HEAT, 400, 536, 0.03, MV_9254},
    {"plain_steel", MV_MODULUS, 20, 211, 0.03, MV_9254},
    {"plain_steel", MV_MODULUS, 100, 206.5, 0.03, MV_9254},
    {"plain_steel", MV_MODULUS, 200, 199.5, 0.03, MV_9254},
    {"plain_steel", MV_MODULUS, 300, 192.5, 0.03, MV_9254},
    {"plain_steel", MV_MODULUS, 400, 184, 0.03, MV_9254},
    /* martensitic stainless */
    {"nitrided_stainless", MV_EXPANSION, 100, 10.4, 0.02, MV_440},
    {"nitrided_stainless", MV_EXPANSION, 200, 10.8, 0.02, MV_440},
    {"nitrided_stainless", MV_EXPANSION, 300, 11.2, 0.02, MV_440},
    {"nitrided_stainless", MV_EXPANSION, 400, 11.6, 0.02, MV_440},
    {"nitrided_stainless", MV_MODULUS, 20, 215, 0.02, MV_440},
    {"nitrided_stainless", MV_MODULUS, 100, 212, 0.02, MV_440},
    {"nitrided_stainless", MV_MODULUS, 200, 205, 0.02, MV_440},
    {"nitrided_stainless", MV_MODULUS, 300, 200, 0.02, MV_440},
    {"nitrided_stainless", MV_MODULUS, 400, 190, 0.02, MV_440},
    {"nitrided_stainless", MV_CONDUCTIVITY, 100, 19.5, 0.23,
     "440 types, 15 to 24; from memory"},
    /* grey iron */
    {"grey_iron", MV_EXPANSION, 100, 10.4, 0.05, MV_AZOM},
    {"grey_iron", MV_EXPANSION, 100, 10.5, 0.05, MV_A48},
    {"grey_iron", MV_CONDUCTIVITY, 20, 46.9, 0.05, MV_AZOM},
    {"grey_iron", MV_CONDUCTIVITY, 20, 46, 0.1, MV_A48},
    {"grey_iron", MV_HEAT, 20, 450, 0.05, MV_A48},
    {"grey_iron", MV_MODULUS, 20, 110, 0.18,
     "grey irons, 90 to 130 GPa; common practice, no source"},
    {"grey_iron_ring", MV_EXPANSION, 100, 10.4, 0.05, MV_AZOM},
    {"grey_iron_ring", MV_EXPANSION, 100, 10.5, 0.05, MV_A48},
    {"grey_iron_ring", MV_CONDUCTIVITY, 20, 46.9, 0.05, MV_AZOM},
    {"grey_iron_ring", MV_CONDUCTIVITY, 20, 46, 0.05, MV_A48},
    {"grey_iron_ring", MV_HEAT, 20, 450, 0.05, MV_A48},
    {"grey_iron_ring", MV_MODULUS, 20, 89.6, 0.05, MV_AZOM},
    /* ductile iron */
    {"ductile_iron", MV_EXPANSION, 100, 11.7, 0.05, MV_AZOM},
    {"ductile_iron", MV_EXPANSION, 100, 11, 0.05, MV_NODULAR},
    {"ductile_iron", MV_CONDUCTIVITY, 20, 36.1, 0.05, MV_AZOM},
    {"ductile_iron", MV_HEAT, 20, 490, 0.05, MV_NODULAR},
    {"ductile_iron", MV_MODULUS, 20, 179, 0.05, MV_AZOM},
    {"ductile_iron", MV_MODULUS, 20, 175, 0.0286, MV_NODULAR},
    {"ductile_iron_ring", MV_EXPANSION, 100, 11.7, 0.05, MV_AZOM},
    {"ductile_iron_ring", MV_EXPANSION, 100, 11, 0.05, MV_NODULAR},
    {"ductile_iron_ring", MV_CONDUCTIVITY, 20, 33.5, 0.0746, MV_NODULAR},
    {"ductile_iron_ring", MV_HEAT, 20, 490, 0.05, MV_NODULAR},
    /* compacted graphite iron */
    {"cgi", MV_EXPANSION, 100, 11.25, 0.0223, MV_CGI},
    {"cgi", MV_CONDUCTIVITY, 100, 36.5, 0.0411, MV_CGI},
    {"cgi", MV_MODULUS, 20, 145, 0.0345, MV_CGI},
    /* piston alloys */
    {"4032", MV_EXPANSION, 100, 19, 0.05, MV_4032},
    {"4032", MV_CONDUCTIVITY, 20, 140, 0.05, MV_4032},
    {"4032", MV_HEAT, 20, 900, 0.05, MV_4032},
    {"4032", MV_MODULUS, 20, 73, 0.05, MV_4032},
    {"eutectic", MV_EXPANSION, 100, 20, 0.025, MV_48000},
    {"eutectic", MV_EXPANSION, 200, 21, 0.024, MV_HANDBOOK},
    {"eutectic", MV_CONDUCTIVITY, 20, 145, 0.1034, MV_48000},
    {"eutectic", MV_HEAT, 200, 960, 0.05, MV_ALLOYED},
    {"eutectic", MV_MODULUS, 20, 76.5, 0.0457,
     "336.0 by ASM to AlSi12CuMgNi by a piston handbook; from memory"},
    {"hypereutectic", MV_CONDUCTIVITY, 20, 143, 0.05, MV_HANDBOOK},
    {"hypereutectic", MV_HEAT, 200, 950, 0.05, MV_ALLOYED},
    {"hypereutectic", MV_MODULUS, 20, 83, 0.05, MV_HANDBOOK},
    {"2618", MV_EXPANSION, 100, 22, 0.05, MV_ASM},
    {"2618", MV_CONDUCTIVITY, 20, 153.5, 0.0489, MV_ASM},
    {"2618", MV_HEAT, 20, 875, 0.05, MV_ASM},
    {"2618", MV_MODULUS, 20, 73, 0.0137, MV_ASM},
    /* aluminium blocks */
    {"a390", MV_EXPANSION, 100, 18, 0.05, MV_A390},
    {"a390", MV_CONDUCTIVITY, 20, 134, 0.05, MV_ASM},
    {"a390", MV_MODULUS, 20, 81, 0.05, MV_ASM},
    {"a356", MV_EXPANSION, 100, 21.5, 0.05, MV_ASM},
    {"a356", MV_CONDUCTIVITY, 20, 151, 0.05, MV_ASM},
    {"a356", MV_HEAT, 100, 963, 0.05, MV_ASM},
    {"a356", MV_MODULUS, 20, 72, 0.05, MV_ASM},
    {"a319", MV_EXPANSION, 100, 21.5, 0.05, MV_ASM},
    {"a319", MV_CONDUCTIVITY, 20, 109, 0.05, MV_ASM},
    {"a319", MV_HEAT, 100, 963, 0.05, MV_ASM},
    {"a319", MV_MODULUS, 20, 74, 0.05, MV_ASM},
};

enum {
    MATERIAL_VALUES = (int)(sizeof material_values / sizeof material_values[0])
};

#endif
