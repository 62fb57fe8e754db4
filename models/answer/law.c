#include "law.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "input_law.h"
#include "uncertain.h"

static const struct cg_law laws[] = {CG_CALIBRATED_LAWS};

const struct cg_law *cg_laws(size_t *count)
{
    *count = sizeof laws / sizeof laws[0];
    return laws;
}

size_t cg_law_input(size_t constant)
{
    static const char *const names[CG_CALIBRATED] = {CG_CALIBRATED_INPUTS};
    size_t count, row = 0;
    const struct cg_uncertain *all = cg_uncertains(&count);
    while (row < count && strcmp(all[row].name, names[constant]) != 0)
        row++;
    assert(row < count);
    return row;
}

const char *const *cg_law_settings(size_t constant)
{
    static const char *const paths[CG_CALIBRATED][CG_CALIBRATED_SETTINGS] = {
        CG_CALIBRATED_PATHS};
    return paths[constant];
}

static const struct cg_law *law_named(const struct cg_case *c)
{
    for (size_t i = 0; i < sizeof laws / sizeof laws[0]; i++)
        if (laws[i].film_law == c->film_law &&
            strcmp(laws[i].heat_transfer, c->combustion.heat_transfer) == 0)
            return &laws[i];
    return NULL;
}

const struct cg_law *cg_law_of(const struct cg_case *c)
{
    return c->uncertainty.other_laws ? law_named(c) : NULL;
}

static bool has_correlations_of(const struct cg_law *law,
                                const struct cg_case *c)
{
    for (size_t i = 0; i < CG_CALIBRATED; i++)
        for (size_t j = 0; j < i; j++)
            if (c->correlation[cg_law_input(i)][cg_law_input(j)] !=
                law->correlation[i][j])
                return false;
    return true;
}

static void correlate(const struct cg_law *law, struct cg_case *c)
{
    for (size_t i = 0; i < CG_CALIBRATED; i++)
        for (size_t j = 0; j < i; j++)
            cg_input_correlate(c, cg_law_input(i), cg_law_input(j),
                               law->correlation[i][j]);
}

void cg_law_correlate(struct cg_case *c)
{
    const struct cg_law *law = law_named(c);
    if (law != NULL)
        correlate(law, c);
}

static void take_value(const struct cg_law *from, const struct cg_law *to,
                       size_t constant, struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *row =
        &cg_uncertains(&count)[cg_law_input(constant)];
    double ratio = exp(to->ln_value[constant] - from->ln_value[constant]);
    for (int i = 0; i < CG_UNCERTAIN_FIELDS && row->field[i] != 0; i++)
        *(double *)((char *)c + row->field[i]) *= ratio;
}

static void take_spread(const struct cg_law *from, const struct cg_law *to,
                        size_t constant, struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *row =
        &cg_uncertains(&count)[cg_law_input(constant)];
    *(double *)((char *)c + row->spread) *=
        to->spread[constant] / from->spread[constant];
}

void cg_law_default_value(size_t constant, struct cg_case *c)
{
    const struct cg_law *law = law_named(c);
    if (law != NULL)
        take_value(&laws[0], law, constant, c);
}

void cg_law_default_spread(size_t constant, struct cg_case *c)
{
    const struct cg_law *law = law_named(c);
    if (law != NULL)
        take_spread(&laws[0], law, constant, c);
}

void cg_law_take(const struct cg_law *from, const struct cg_law *to,
                 struct cg_case *c)
{
    if (has_correlations_of(from, c))
        correlate(to, c);
    for (size_t k = 0; k < CG_CALIBRATED; k++) {
        take_value(from, to, k, c);
        take_spread(from, to, k, c);
    }
    strncpy(c->combustion.heat_transfer, to->heat_transfer, CG_NAME_LENGTH - 1);
    c->film_law = to->film_law;
}
