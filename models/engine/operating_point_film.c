/* The ring films that a point asks for. */
#include <math.h>

#include "oil.h"
#include "operating_point.h"

/* A film that is set is quoted for this oil temperature [K]. */
#define FILM_REFERENCE 413.15

/* A film is carried on by viscosity over this much of oil temperature [K]: by
 * its own slope there, by one between two temperatures, or where none is known.
 * What follows from it stays right (test_spread). */
#define FILM_REACH_OWN 3.0
#define FILM_REACH_BETWEEN 1.0
#define FILM_REACH_BLIND 0.1

/* Oil thins with heat; film follows the square root of viscosity, as in
 * hydrodynamic lubrication at given load and speed (Hamrock, "Fundamentals of
 * Fluid Film Lubrication" (1994), slider bearing). */
static double film_at(const struct cg_oil *oil, double film, double quoted_at,
                      double temperature)
{
    double here = cg_oil_kinematic(oil, temperature);
    double there = cg_oil_kinematic(oil, quoted_at);
    return film * sqrt(here / there);
}

static double carried(const struct cg_oil *oil,
                      const struct cg_film_solved *solved, double temperature)
{
    double root = film_at(oil, 1.0, solved->temperature, temperature);
    return solved->film * (isnan(solved->slope) ? root
                                                : pow(root, solved->slope));
}

static double bore_seen_by(const struct cg_thermal *thermal,
                           const struct cg_ring_map *ring,
                           const double *temperature)
{
    double sum = 0.0, total = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        sum += ring->share[s] *
               temperature[cg_thermal_liner_node(thermal, s, 0)];
        total += ring->share[s];
    }
    return sum / total;
}

/* Of two films solved for not far from each other; NaN where they tell
 * nothing. */
static double slope_between(const struct cg_oil *oil,
                            const struct cg_film_solved *a,
                            const struct cg_film_solved *b)
{
    double apart = fabs(a->temperature - b->temperature);
    if (!(a->temperature > 0.0 && apart > 0.1 && apart < 30.0))
        return NAN;
    double root = film_at(oil, 1.0, a->temperature, b->temperature);
    return log(b->film / a->film) / log(root);
}

/* The film solved anew for `here`, the oil's temperature [K]. */
static enum cg_status solve_film(const struct cg_case *c,
                                 const struct cg_thermal *thermal,
                                 const struct cg_oil *oil,
                                 enum cg_ring_place place, double here,
                                 struct cg_point_workspace *workspace,
                                 struct cg_operating_point *point,
                                 struct cg_error *error)
{
    struct cg_film_solved *solved = &point->film_solved[place];
    const struct cg_film_solved before = *solved;
    solved->temperature = here;
    cg_ring_gas_estimate(place, c->charge.ambient_pressure, point->cylinder,
                         workspace->ring_gas);
    if (c->film_law != CG_FILM_REYNOLDS || place == CG_RING_OIL) {
        double middle = film_at(oil, c->ring[place].film * c->scale.film,
                                FILM_REFERENCE, here);
        solved->film = cg_ring_film_stroke(
            c, place, middle, workspace->ring_gas, workspace->ring_film,
            &solved->slope);
        solved->reach = FILM_REACH_OWN;
        return CG_OK;
    }
    struct cg_film_mean *mean = &point->film_mean[place];
    enum cg_status status = cg_ring_film_solve(
        c, thermal, point->settled, place, point->operating.speed,
        workspace->ring_gas, workspace->ring_film, mean, error);
    solved->film = mean->heat_film * c->scale.film;
    solved->slope = slope_between(oil, &before, solved);
    solved->reach =
        isnan(solved->slope) ? FILM_REACH_BLIND : FILM_REACH_BETWEEN;
    return status;
}

enum cg_status cg_point_set_films(const struct cg_case *c,
                                   const struct cg_thermal *thermal,
                                   struct cg_point_workspace *workspace,
                                   struct cg_operating_point *point,
                                   struct cg_error *error)
{
    const double *temperature = point->settled;
    const struct cg_oil *oil = cg_oil_find(c->cooling.oil_grade);
    if (oil == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "cooling.oil_grade: no grade \"%s\"",
                            c->cooling.oil_grade);
    for (int r = 0; r < CG_RINGS; r++) {
        const struct cg_ring_map *ring = &thermal->ring[r];
        const struct cg_film_solved *solved = &point->film_solved[r];
        double here = 0.5 * (temperature[ring->face] +
                             bore_seen_by(thermal, ring, temperature));
        enum cg_status status = CG_OK;
        if (!(fabs(here - solved->temperature) < solved->reach))
            status = solve_film(c, thermal, oil, (enum cg_ring_place)r, here,
                                workspace, point, error);
        if (status != CG_OK)
            return status;
        point->film[r] = carried(oil, solved, here);
        if (r != CG_RING_OIL)
            point->film_mean[r].heat_film = point->film[r] / c->scale.film;
    }
    return CG_OK;
}
