#include "stack_room.h"

#include <stddef.h>
#include <stdlib.h>

enum {
    PAGE = 4096,
    DEEP = 256 * 1024, /* the deepest, a sweep, takes some 230 kB */
    WITH_HEAP = 2 * DEEP
};

/* A byte of every page, the nearest first. */
static char touch(void)
{
    volatile char room[DEEP];
    for (size_t i = DEEP; i >= PAGE; i -= PAGE)
        room[i - 1] = 0;
    return room[DEEP - 1];
}

bool cg_stack_room(void)
{
    void *volatile room = malloc(WITH_HEAP);
    if (room == NULL)
        return false;
    free(room);
    return touch() == 0;
}
