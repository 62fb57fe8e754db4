/* Words of screens and pages that are no reports yet; goes with the last of
 * them. */
#ifndef CG_FIND_NOTES_H
#define CG_FIND_NOTES_H

#include <stdbool.h>

#include "answer.h"
#include "say_common.h"

#endif
