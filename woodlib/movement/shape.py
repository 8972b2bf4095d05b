"""Change of shape in closed form: cup, diamond, oval, and the opening of a mitre.

Strains are positive when the wood grows. Even moisture, concentric rings, pith outside the board, nothing held.
The stress-free map about the pith (own derivation, compatible and without shear): a point at radius r and angle
theta goes to ((1 + e_R) r, theta (1 + e_T)/(1 + e_R)).
"""

from __future__ import annotations

import numpy as np


def wedge_map(across_m, depth_m, radial_strain, tangential_strain):
    """Where a point of the end grain goes: (across, depth) in metres from the pith, before and after.

    ``across_m`` along the board's width, ``depth_m`` square to it, away from the pith; all arguments broadcast.

    >>> [round(float(x) * 1000, 2) for x in wedge_map(0.1, 0.1, -0.0100, -0.0215)]
    [98.09, 99.9]
    """
    radius = np.hypot(across_m, depth_m)
    angle = np.arctan2(across_m, depth_m) * (1.0 + tangential_strain) / (1.0 + radial_strain)
    return (1.0 + radial_strain) * radius * np.sin(angle), (1.0 + radial_strain) * radius * np.cos(angle)


def wedge_width_change_m(left_m, right_m, depth_m, radial_strain, tangential_strain):
    """Change of the straight width of a board between its edges, exact for concentric rings.

    ``left_m``, ``right_m`` edges measured across from the pith, ``depth_m`` from the pith to the line measured (the
    middle of the thickness). Metres; all arguments broadcast.

    >>> round(0.2e3 + 1e3 * float(wedge_width_change_m(-0.1, 0.1, 0.1, -0.0100, -0.0215)), 2)
    196.19
    """
    x0, z0 = wedge_map(left_m, depth_m, radial_strain, tangential_strain)
    x1, z1 = wedge_map(right_m, depth_m, radial_strain, tangential_strain)
    return np.hypot(x1 - x0, z1 - z0) - (right_m - left_m)


def cup_m(width_m, pith_distance_m, radial_strain, tangential_strain):
    """Depth of cup of a flatsawn board with the pith under its middle, exact for concentric rings.

    c = (1 + e_R) [ sqrt(x^2 + R^2) cos(k atan(x/R)) - R ], x half the width, R from pith to face,
    k = (1 + e_T)/(1 + e_R). Positive when the edges move away from the pith: the bark side goes hollow, as in drying.

    >>> round(1e3 * float(cup_m(0.2, 0.1, -0.0100, -0.0215)), 3)
    0.899
    """
    half, stretch = 0.5 * width_m, (1.0 + tangential_strain) / (1.0 + radial_strain)
    edge = np.hypot(half, pith_distance_m) * np.cos(stretch * np.arctan2(half, pith_distance_m))
    return (1.0 + radial_strain) * (edge - pith_distance_m)


def cup_small_angle_m(width_m, pith_distance_m, radial_strain, tangential_strain):
    """Depth of cup for a board narrow against its distance from the pith: w^2 (e_R - e_T) / (4 R).

    Too large for wide boards: 28 % over the exact form at w = 2 R.

    >>> round(1e3 * float(cup_small_angle_m(0.2, 0.1, -0.0100, -0.0215)), 3)
    1.15
    """
    return width_m**2 * (radial_strain - tangential_strain) / (4.0 * pith_distance_m)
