#include "peaks.h"

#include <math.h>

/* Where a peak goes: in place of one that is near and lower, else among the
 * others; nowhere where a near one is higher, or all are. */
static void keep(const struct cg_peak *found, struct cg_peaks *peaks)
{
    struct cg_peak *peak = peaks->peak;
    int i = 0, near = peaks->count;
    while (i < peaks->count && peak[i].closure >= found->closure) {
        if (fabs(peak[i].time - found->time) < CG_PEAKS_APART)
            return;
        i++;
    }
    for (int k = peaks->count; k-- > i;)
        if (fabs(peak[k].time - found->time) < CG_PEAKS_APART)
            near = k;
    if (i == CG_PEAKS)
        return;
    /* Those kept stand apart and this one is the latest, so that one at most is
     * near: it goes. */
    int last = near < CG_PEAKS ? near : CG_PEAKS - 1;
    peaks->count += near == peaks->count && peaks->count < CG_PEAKS;
    for (int k = last; k > i; k--)
        peak[k] = peak[k - 1];
    peak[i] = *found;
}

void cg_peaks_see(const struct cg_peak *now, struct cg_peaks *peaks)
{
    struct cg_peak *last = peaks->last;
    if (peaks->seen >= 1 && last[0].closure > now->closure &&
        (peaks->seen < 2 || last[0].closure >= last[1].closure))
        keep(&last[0], peaks);
    last[1] = last[0];
    last[0] = *now;
    peaks->seen += peaks->seen < 2;
}

void cg_peaks_end(struct cg_peaks *peaks)
{
    const struct cg_peak *last = peaks->last;
    if (peaks->seen == 1 ||
        (peaks->seen == 2 && last[0].closure >= last[1].closure))
        keep(&last[0], peaks);
}
