"""Tight and round holes in closed form."""

from __future__ import annotations

import numpy as np


def movement_between_m(spacing_m, free_strain):
    """How far the wood between two fasteners wants to move, m; broadcasts.

    >>> round(1e3 * movement_between_m(0.128, -0.0183), 2)
    -2.34
    """
    return spacing_m * free_strain


def tight_holes_strain(free_strain, metal_stiffness_n_per_m=np.inf, wood_stiffness_n_per_m=0.0):
    """Strain held back between two tight holes in metal: all of it when the metal is stiff against the wood.

    R = K/(K + k) of two springs in series; a single line of screws holds only until the wood crushes at them.

    >>> tight_holes_strain(-0.0183)
    0.0183
    """
    share = 1.0 / (1.0 + wood_stiffness_n_per_m / metal_stiffness_n_per_m)
    return -share * free_strain


def round_hole_diameter_m(screw_m, distance_m, swelling_strain, shrinkage_strain):
    """Smallest round hole for a screw that starts in its middle: twice the larger travel and the screw, m.

    Before any allowance for fitting. Broadcasts.

    >>> round(1e3 * float(round_hole_diameter_m(0.004, 0.2, 0.004, -0.008)), 2)
    7.2
    """
    travel = distance_m * np.maximum(np.abs(swelling_strain), np.abs(shrinkage_strain))
    return screw_m + 2.0 * travel
