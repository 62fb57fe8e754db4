/* Reads a measured roughness profile from a file.
 *
 * Text: one height a line, or a position and a height, parted by blanks, tabs,
 * semicolons or commas.  Heights in um and positions in mm unless a comment
 * line says otherwise; comments begin with #, and two of them mean something:
 *
 *     # units: um um          of position and height; # units: um of one column
 *     # spacing: 0.5 um       between the points of one column
 *
 * A file whose first line names ISO 5436 is read as that standard's SMD text
 * (profile_smd.c).
 */
#ifndef CG_PROFILE_FILE_H
#define CG_PROFILE_FILE_H

#include <stdbool.h>

#include "profile.h"

enum { CG_PROFILE_MOST = 4000000 }; /* points of one file */

struct cg_profile_ask {
    double spacing;     /* of one column [m]; 0: not given */
    double cutoff;      /* [m]; tells whether positions can be meant in mm */
    bool filtered;      /* a filter follows, so that the spacing matters */
};

struct cg_profile_note {
    bool smd;           /* ISO 5436-2 text */
    bool guessed_um;    /* positions taken in um, since as mm they lie too far
                           apart to measure roughness with */
    bool usual_spacing; /* one column without spacing and no filter to follow:
                           CG_PROFILE_USUAL_SPACING taken */
};

/* The caller frees profile->height.  One line that names file, line, what is
 * wrong and what is allowed: CG_FILE, CG_BAD_INPUT, CG_NO_MEMORY. */
enum cg_status cg_profile_file_read(const char *path,
                                    const struct cg_profile_ask *ask,
                                    struct cg_profile *profile,
                                    struct cg_profile_note *note,
                                    struct cg_error *error);

#endif
