"""Layers through the thickness: a batten, cleat or lip on the face, a veneer, or any lay-up.

Thin flat plates, small rotation, stiff glue, places more than about one thickness from the edges. Free strains are
positive when the wood grows; curvature is positive when the first (lower) layer, having grown more, ends up on the
outside of the bend.
"""

from __future__ import annotations


def two_layer_curvature_per_m(lower_thickness_m, upper_thickness_m, lower_pa, upper_pa, free_strain_difference):
    """Curvature of two glued layers that want different lengths, 1/m.

    6 e (1+m)^2 / (h [3 (1+m)^2 + (1 + m n)(m^2 + 1/(m n))]), m = h1/h2, n = E1/E2, h = h1 + h2, e = e1 - e2
    (Timoshenko 1925, from memory; agrees with lamination theory to round-off). All arguments broadcast.

    >>> round(float(two_layer_curvature_per_m(0.5, 0.5, 1.0, 1.0, 1.0)), 12)
    1.5
    """
    m, n = lower_thickness_m / upper_thickness_m, lower_pa / upper_pa
    total = lower_thickness_m + upper_thickness_m
    rest = 3.0 * (1.0 + m) ** 2 + (1.0 + m * n) * (m**2 + 1.0 / (m * n))
    return 6.0 * free_strain_difference * (1.0 + m) ** 2 / (total * rest)


def bow_m(curvature_per_m, span_m):
    """Height of the bow over a span: curvature times span squared over 8, m (shallow arcs).

    >>> round(bow_m(0.1, 0.4), 6)
    0.002
    """
    return curvature_per_m * span_m**2 / 8.0
