#define _GNU_SOURCE /* pthread_getattr_np */

#include "stack_space.h"

#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#ifdef __linux__
#include <pthread.h>
#else
#include <sys/resource.h>
#endif

enum {
    PAGE = 4096,
    DEEP = 640 * 1024, /* the deepest, a sweep with evidence, takes 540 kB */
    WITH_HEAP = 2 * DEEP
};

#ifdef __linux__
bool cg_stack_enough(void)
{
    pthread_attr_t attributes;
    void *end; /* it grows down to here */
    size_t size;
    char here;
    if (pthread_getattr_np(pthread_self(), &attributes) != 0)
        return true;
    bool known = pthread_attr_getstack(&attributes, &end, &size) == 0;
    pthread_attr_destroy(&attributes);
    return !known || (uintptr_t)&here - (uintptr_t)end >= DEEP + PAGE;
}
#else
/* What threads have besides the first is not told here. */
bool cg_stack_enough(void)
{
    struct rlimit stack;
    return getrlimit(RLIMIT_STACK, &stack) != 0 ||
           stack.rlim_cur >= (rlim_t)DEEP + PAGE;
}
#endif

/* A byte of every page, the nearest first. */
static char touch(void)
{
    volatile char space[DEEP];
    for (size_t i = DEEP; i >= PAGE; i -= PAGE)
        space[i - 1] = 0;
    return space[DEEP - 1];
}

enum cg_status cg_stack_make(struct cg_error *error)
{
    char (*volatile go)(void) = touch; /* else its space may become ours */
    void *volatile space = malloc(WITH_HEAP);
    free(space);
    if (space == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (!cg_stack_enough())
        return cg_error_set(error, CG_NO_MEMORY,
                            "out of memory: the stack is limited to less than "
                            "the %d kB it takes; ulimit -s %d gives enough",
                            DEEP / 1024, 2 * DEEP / 1024);
    (void)go();
    return CG_OK;
}
