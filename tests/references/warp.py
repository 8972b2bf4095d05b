"""Warp as a shape that no page of the kit shows: passing cup, bow, crook, twist and outlines, held against the closed forms."""

from __future__ import annotations

from typing import Any

import numpy as np

from woodlib.movement.glue_up import Outline
from woodlib.movement.shape import cup_m, wedge_map


def passing_curvature_per_m(tilt_percent: Any, thickness_m: Any, coefficient_per_percent: Any) -> Any:
    """Curvature of a board whose second face is damper than its first by ``tilt_percent``; 1/m, broadcasts.

    The tilt is 12 times the first moment of the moisture profile over the thickness (``moisture.diffusion``): the
    straight profile with the same bending effect, since a free board bends until the moment of stress is nil.

    >>> round(float(passing_curvature_per_m(1.0, 0.019, 0.00369)), 3)
    0.194
    """
    return np.multiply(coefficient_per_percent, tilt_percent) / thickness_m


def passing_cup_m(tilt_percent: Any, width_m: Any, thickness_m: Any, coefficient_per_percent: Any) -> Any:
    """Depth of the cup that passes when the moisture has evened out, m; broadcasts.

    >>> round(1000 * float(passing_cup_m(1.0, 0.2, 0.019, 0.00369)), 2)
    0.97
    """
    return arc_depth_m(width_m, passing_curvature_per_m(tilt_percent, thickness_m, coefficient_per_percent))


def cup_over_time_m(
    mean_percent: Any,
    tilt_percent: Any,
    flat_at_percent: float,
    width_m: float,
    thickness_m: float,
    radial_per_percent: float,
    tangential_per_percent: float,
    pith_distance_m: float = np.inf,
    bark_side_first: bool = True,
) -> Any:
    """Cup of a flatsawn board while its moisture changes, m, in the shape of ``mean_percent``.

    The cup of the rings since the board was flat at ``flat_at_percent``, plus the passing cup. With the pith
    infinitely far away (or quartersawn stock) only the passing cup is left; radial_per_percent and
    tangential_per_percent are the movement coefficients, pith_distance_m is from pith to the first face's middle.

    >>> round(1000 * float(cup_over_time_m(7.0, 0.0, 10.0, 0.2, 0.019, 0.0018, 0.00365, pith_distance_m=0.1)), 2)
    0.43
    """
    change = np.subtract(mean_percent, flat_at_percent)
    passing = passing_cup_m(tilt_percent, width_m, thickness_m, tangential_per_percent)
    if np.isinf(pith_distance_m):
        return passing + np.zeros_like(change)
    ring = cup_m(width_m, pith_distance_m, radial_per_percent * change, tangential_per_percent * change)
    return passing + (ring if bark_side_first else -ring)


def strain_at_slope(slope_rad: Any, along_strain: Any, across_strain: Any) -> Any:
    """Strain of the board's length where the grain runs off at an angle: e_L cos^2 + e_X sin^2; broadcasts.

    >>> round(float(strain_at_slope(np.radians(10.0), 0.0, -0.02)), 5)
    -0.0006
    """
    return np.multiply(along_strain, np.cos(slope_rad) ** 2) + np.multiply(across_strain, np.sin(slope_rad) ** 2)


def bow_m(length_m: Any, thickness_m: Any, first_strain: Any, second_strain: Any) -> Any:
    """Depth of the arc along a board whose two faces change length unequally; above zero hollow on the first face.

    Crook is the same with the width for ``thickness_m`` and the two edges for the faces. Unequal length change comes
    from slope of grain, juvenile wood or reaction wood on one side (``strain_at_slope``). Broadcasts.

    >>> round(1000 * float(bow_m(1.2, 0.019, -0.0006, 0.0)), 1)
    5.7
    """
    return arc_depth_m(length_m, np.subtract(second_strain, first_strain) / thickness_m)


def crook_of_turning_grain_m(
    length_m: Any, start_slope_rad: Any, end_slope_rad: Any, along_strain: Any, across_strain: Any
) -> Any:
    """Depth of the crook of a board whose grain turns evenly from one slope to another along it; broadcasts.

    Sloping grain makes the board shear by (e_X - e_L) sin 2a; where the shear changes along the board its centre
    line bends. Parabola for small slopes, depth L (g_end - g_start)/8. Own derivation, compatible and unheld.

    >>> round(1000 * float(crook_of_turning_grain_m(1.2, -0.09, 0.09, 0.0, -0.02)), 2)
    -1.07
    """
    shear = [
        np.subtract(across_strain, along_strain) * np.sin(2.0 * np.asarray(slope))
        for slope in (start_slope_rad, end_slope_rad)
    ]
    return np.multiply(length_m, shear[1] - shear[0]) / 8.0


def twist_rad(
    length_m: Any, pith_distance_m: Any, spiral_slope_rad: Any, along_strain: Any, tangential_strain: Any
) -> Any:
    """Turn of one end of a board against the other, from spiral grain; broadcasts, radians.

    A shell of wood at radius r with grain spiralling at angle a shears by (e_T - e_L) sin 2a, which turns it by that
    over r per metre of length. The small-angle form 2 a s L / r is that of Stevens and Johnston 1960 (from memory);
    worst near the pith.

    >>> round(float(np.degrees(twist_rad(1.2, 0.1, np.radians(3.0), 0.0, -0.02))), 2)
    -1.44
    """
    shear = np.subtract(tangential_strain, along_strain) * np.sin(2.0 * np.asarray(spiral_slope_rad))
    return np.multiply(length_m, shear) / pith_distance_m


def fourth_corner_m(width_m: Any, turn_rad: Any) -> Any:
    """Lift of the fourth corner of a twisted board when three touch, w tan(turn); broadcasts, m.

    >>> round(1000 * float(fourth_corner_m(0.2, np.radians(1.44))), 1)
    5.0
    """
    return np.multiply(width_m, np.tan(turn_rad))


def rectangle_outline(width_m: float, thickness_m: float, points: int = 41) -> tuple[np.ndarray, np.ndarray]:
    """Points around a board's end, from the middle, closed: across (4 points,), height (4 points,).

    >>> across, height = rectangle_outline(0.2, 0.02, points=3)
    >>> len(across), float(across.max()), float(height.min())
    (12, 0.1, -0.01)
    """
    s, one = np.linspace(-1.0, 1.0, points), np.ones(points)
    across = np.concatenate([s, one, -s, -one]) * width_m / 2.0
    return across, np.concatenate([-one, s, one, -s]) * thickness_m / 2.0


def section_outline(
    width_m: float,
    thickness_m: float,
    pith_across_m: float,
    pith_below_m: float,
    radial_strain: float,
    tangential_strain: float,
    curvature_per_m: float = 0.0,
    points: int = 41,
) -> Outline:
    """End of a sawn board after an even change, rings true to the pith, with a passing curvature added.

    pith_across_m: pith from the middle of the board; pith_below_m: pith below the middle of the thickness, above zero
    with the bark side up; below zero with the bark side down.

    >>> outline = section_outline(0.2, 0.02, 0.0, 0.11, -0.0100, -0.0215)
    >>> round(1000 * float(np.ptp(outline.height_m) - 0.02 * (1 - 0.01)), 2)
    0.8
    """
    across, height = rectangle_outline(width_m, thickness_m, points)
    up = 1.0 if pith_below_m >= 0.0 else -1.0
    new_across, new_depth = wedge_map(
        across - pith_across_m, up * height + abs(pith_below_m), radial_strain, tangential_strain
    )
    new_height = up * new_depth + curvature_per_m * across**2 / 2.0
    new_across = new_across - curvature_per_m * across * height
    return Outline(new_across - new_across.mean(), new_height - new_height.mean(), across, height)


def even_outline(
    across_m: np.ndarray, height_m: np.ndarray, radial_strain: float, tangential_strain: float, ring_angle_rad: float
) -> Outline:
    """Any outline after an even change with straight rings: a square becomes a diamond, a round an oval.

    ring_angle_rad: 0 with the rings lying flat along ``across``, 90 degrees with the rings upright.

    >>> turn = np.linspace(0.0, 2.0 * np.pi, 361)
    >>> oval = even_outline(0.0125 * np.cos(turn), 0.0125 * np.sin(turn), -0.0100, -0.0215, 0.0)
    >>> round(1000 * float(np.ptp(oval.across_m)), 2), round(1000 * float(np.ptp(oval.height_m)), 2)
    (24.46, 24.75)
    """
    c, s = np.cos(ring_angle_rad), np.sin(ring_angle_rad)
    along_rings, through_rings = c * across_m + s * height_m, -s * across_m + c * height_m
    grown = (1.0 + tangential_strain) * along_rings, (1.0 + radial_strain) * through_rings
    return Outline(c * grown[0] - s * grown[1], s * grown[0] + c * grown[1], np.asarray(across_m), np.asarray(height_m))


def warped_face(
    length_m: float, width_m: float, cup_m: float = 0.0, bow_m: float = 0.0, twist_m: float = 0.0, points: int = 21
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Height of a board's first face over a grid: along (points,), across (points,), height (points, points), m.

    cup_m, bow_m above zero hollow on the first face; twist_m lift of the fourth corner. The middle is at zero.

    >>> along, across, height = warped_face(1.2, 0.2, cup_m=0.002, twist_m=0.004)
    >>> round(1000 * float(np.ptp(height)), 2)
    3.12
    """
    s = np.linspace(-1.0, 1.0, points)
    x, y = np.meshgrid(s, s, indexing="ij")
    return s * length_m / 2.0, s * width_m / 2.0, cup_m * y**2 + bow_m * x**2 + twist_m / 4.0 * x * y


def arc_depth_m(width_m: Any, curvature_per_m: Any) -> Any:
    """Depth of an arc of given length and curvature, (1 - cos(k w/2))/k; w^2 k/8 while it is shallow; broadcasts.

    >>> round(1000 * float(arc_depth_m(0.2, 0.194)), 2)
    0.97
    """
    quarter = np.multiply(width_m, curvature_per_m) / 4.0
    return np.multiply(width_m, quarter) / 2.0 * np.sinc(quarter / np.pi) ** 2
