/* The ring films on the screen. */
#ifndef CG_REPORT_FILM_H
#define CG_REPORT_FILM_H

#include <stdbool.h>

#include "answer.h"

/* Which law made the films at rated speed and full load, what came out, and
 * where it holds no more. */
void cg_report_film(const struct cg_case *c, const struct cg_answer *answer,
                    bool inch);

#endif
