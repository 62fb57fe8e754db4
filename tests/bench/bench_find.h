/* What a whole find costs, and its samples. */
#ifndef CG_BENCH_FIND_H
#define CG_BENCH_FIND_H

/* Prints the CPU time of whole finds, in this process and as the program. */
void bench_find(void);

/* Prints what samples take on one and two threads. */
void bench_samples(void);

#endif
