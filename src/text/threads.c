#include "threads.h"

#ifdef _OPENMP
#include <omp.h>
#include <pthread.h>
#include <sys/resource.h>

#include "stack_space.h"

/* Of a limited address space each thread is to have so much [bytes]: its
 * stack, its heap and its work, without the others coming short. */
#define ROOM ((rlim_t)96 << 20)

enum { MOST_THREADS = 256 };

static void *wait_for(void *gate)
{
    pthread_mutex_lock(gate);
    pthread_mutex_unlock(gate);
    return NULL;
}

/* How many threads there can be at once, up to `wanted`: OpenMP itself ends
 * the program with status 1 where one cannot be had. */
static int possible(int wanted)
{
    pthread_t thread[MOST_THREADS];
    pthread_mutex_t gate = PTHREAD_MUTEX_INITIALIZER;
    int made = 0;
    pthread_mutex_lock(&gate);
    while (made + 1 < wanted && made < MOST_THREADS &&
           pthread_create(&thread[made], NULL, wait_for, &gate) == 0)
        made++;
    pthread_mutex_unlock(&gate);
    for (int i = 0; i < made; i++)
        pthread_join(thread[i], NULL);
    return made + 1;
}

/* One where the stacks that OpenMP gives its threads are too small to work on
 * (OMP_STACKSIZE, ulimit -s): ours has been looked at. */
static int with_stack(int threads)
{
    int small = 0;
#pragma omp parallel num_threads(threads) reduction(+ : small)
    small += omp_get_thread_num() > 0 && !cg_stack_enough();
    return small > 0 ? 1 : threads;
}

int cg_threads(int wanted)
{
    struct rlimit space;
    int threads = wanted > 0 ? wanted : omp_get_max_threads();
    if (getrlimit(RLIMIT_AS, &space) == 0 && space.rlim_cur != RLIM_INFINITY &&
        space.rlim_cur / ROOM < (rlim_t)threads)
        threads = space.rlim_cur > ROOM ? (int)(space.rlim_cur / ROOM) : 1;
    return with_stack(possible(threads));
}

int cg_thread(void)
{
    return omp_get_thread_num();
}
#else
int cg_threads(int wanted)
{
    (void)wanted;
    return 1;
}

int cg_thread(void)
{
    return 0;
}
#endif
