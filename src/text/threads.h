/* How many threads work side by side. */
#ifndef CG_THREADS_H
#define CG_THREADS_H

/* `wanted`, or all cores when it is 0; fewer where memory is limited (ulimit -v) or
 * so many cannot be had; 1 where they would have too little stack or OpenMP is
 * not built in. */
int cg_threads(int wanted);

/* The number of the calling thread among those at work, from 0. */
int cg_thread(void);

#endif
