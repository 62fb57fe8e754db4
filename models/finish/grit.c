#include "grit.h"

#include <math.h>
#include <stddef.h>

struct class {
    int grit;
    double grain; /* [um] */
};

static const struct class classes[] = {
    {80, 185.0}, {100, 129.0}, {120, 109.0}, {150, 82.0},  {180, 69.0},
    {220, 58.0}, {240, 44.5},  {280, 36.5},  {320, 29.2},  {400, 17.3},
    {500, 12.8}, {600, 9.3},   {800, 6.5},   {1000, 4.5},  {1200, 3.0},
};

enum { CLASSES = sizeof classes / sizeof classes[0] };

double cg_grit_grain(double grit)
{
    size_t i = 1;
    while (i < CLASSES - 1 && grit > classes[i].grit)
        i++;
    const struct class *a = &classes[i - 1], *b = &classes[i];
    double part = log(grit / a->grit) / log((double)b->grit / a->grit);
    return 1e-6 * a->grain * pow(b->grain / a->grain, part);
}

int cg_grit_at_least(double grain)
{
    for (size_t i = CLASSES; i-- > 0;)
        if (classes[i].grain * 1e-6 >= grain * (1.0 - 1e-9))
            return classes[i].grit;
    return CG_GRIT_COARSEST;
}

int cg_grit_at_most(double grain)
{
    for (size_t i = 0; i < CLASSES; i++)
        if (classes[i].grain * 1e-6 <= grain * (1.0 + 1e-9))
            return classes[i].grit;
    return CG_GRIT_FINEST;
}
