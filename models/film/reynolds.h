/* Oil film under one ring face: Reynolds' equation for an infinitely wide
 * face, wedge and squeeze, gas at both edges.
 *
 *   d/dx (h^3/(12 eta) dp/dx) = u/2 dh/dx + dh/dt
 *
 * in the ring's frame, x along the bore, the bore moving at u.
 *
 *   barrel  h = h0 + x^2/(2 R)   the parabola of a crowned face
 *   taper   h = h0 + s x         upwards from the lower edge
 *
 * Both have all integrals in closed form.  Reynolds' (Swift and Stieber's)
 * condition bounds the cavity on either side: p is the cavity's, dp/dx = 0.
 * The cavity holds the lower of the two edge gases; where the other one is
 * higher, the film forms again before that edge.  A. Cameron, "The Principles
 * of Lubrication" (1966); B. J. Hamrock, "Fundamentals of Fluid Film
 * Lubrication" (1994).
 *
 * Oil is there in plenty at the leading edge (film.h starves it); left out
 * are the flow around roughness (Patir and Cheng), the ring's twist and the
 * bending of face and bore.
 *
 * Forces are per length of circumference, [N/m].
 */
#ifndef CG_REYNOLDS_H
#define CG_REYNOLDS_H

enum cg_face_shape { CG_FACE_BARREL, CG_FACE_TAPER };

struct cg_face_curve {
    enum cg_face_shape shape;
    double above, below; /* from the point nearest to the bore to the upper and
                            the lower edge [m]; taper: below is 0 */
    double radius;       /* barrel: of the parabola [m] */
    double slope;        /* taper: opening upwards [1] */
};

/* A face of this width [m].  Barrel: it comes nearest to the bore at `peak`
 * (0..1) of its width from the upper edge, and the edge farther from there
 * stands back by `drop` [m].  Taper: the upper edge stands back by `drop`, the
 * lower one is sharp; `peak` is not looked at. */
struct cg_face_curve cg_face_curve_of(enum cg_face_shape shape, double width,
                                      double drop, double peak);

struct cg_face_state {
    double film;      /* h0, at the nearest point [m], > 0 */
    double opening;   /* dh0/dt [m/s] */
    double speed;     /* of the ring, positive down the bore [m/s] */
    double viscosity; /* [Pa s] */
    double pressure_above, pressure_below; /* gas at the edges [Pa] */
};

struct cg_face_film {
    double support;  /* pressure over the face, pushes it off the bore [N/m] */
    double friction; /* on the bore, along the ring's motion [N/m] */
    double inverse;  /* oil over h, over the face: conductance of the film per
                        length and conductivity [1] */
    double rupture, reform; /* the cavity, from the nearest point along the
                               oil's way [m]; equal: no cavity */
};

/* Cannot fail.  film->rupture and film->reform must hold numbers: the search
 * for them begins there, best from an instant ago.  Where the cavity is, oil
 * fills the share h(rupture)/h, at most all: it drags and conducts by that
 * share, the gas in between not at all. */
void cg_reynolds_film(const struct cg_face_curve *face,
                      const struct cg_face_state *state,
                      struct cg_face_film *film);

#endif
