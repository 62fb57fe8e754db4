/* Room on the stack, taken while it can still be refused in words. */
#ifndef CG_STACK_ROOM_H
#define CG_STACK_ROOM_H

#include <stdbool.h>

/* Makes the stack as deep as any command wants it.  It grows out of the same
 * memory as the heap, and where that is limited (ulimit -v) a stack that cannot
 * grow is a fault.  False: there is no such memory. */
bool cg_stack_room(void);

#endif
