/* The tightest instants of a run: the highest of its local maxima that stand
 * apart in time. */
#ifndef CG_PEAKS_H
#define CG_PEAKS_H

enum { CG_PEAKS = 4 };

/* Nearer in time they are one: what a shift of gears takes (common practice, no
 * source) [s]. */
#define CG_PEAKS_APART 3.0

struct cg_peak {
    double time, closure; /* [s] [m] */
    double speed, load;   /* then [rev/s] [1] */
};

struct cg_peaks {
    int count;
    struct cg_peak peak[CG_PEAKS]; /* the tightest first */
    int seen;                      /* instants, up to two */
    struct cg_peak last[2];        /* the two before, the later first */
};

/* Instants in order; the end of the run is told by cg_peaks_end.  Cannot
 * fail. */
void cg_peaks_see(const struct cg_peak *now, struct cg_peaks *peaks);
void cg_peaks_end(struct cg_peaks *peaks);

#endif
