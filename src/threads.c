#include "threads.h"

#ifdef _OPENMP
#include <omp.h>
#endif

int cg_threads(int wanted)
{
#ifdef _OPENMP
    return wanted > 0 ? wanted : omp_get_max_threads();
#else
    (void)wanted;
    return 1;
#endif
}

int cg_thread(void)
{
#ifdef _OPENMP
    return omp_get_thread_num();
#else
    return 0;
#endif
}
