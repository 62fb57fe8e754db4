/* Room on the stack, looked for while it can still be refused in words. */
#ifndef CG_STACK_SPACE_H
#define CG_STACK_SPACE_H

#include <stdbool.h>

#include "status.h"

/* Whether the calling thread's stack is deep enough for any command; true where
 * the system does not tell. */
bool cg_stack_enough(void);

/* Makes the stack as deep as any command wants it.  It grows out of the same
 * memory as the heap, and where that is limited (ulimit -v) a stack that cannot
 * grow is a fault.  CG_NO_MEMORY: there is no such memory, or the stack itself
 * is limited (ulimit -s). */
enum cg_status cg_stack_make(struct cg_error *error);

#endif
