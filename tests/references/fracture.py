"""Splits and opening joints by energy, from the plane field."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from woodlib.restraint.field import HeldPlane, PlaneWood, solve_plane
from woodlib.restraint.fracture import fracture_energy_j_per_m2


def critical_check_depth_m(toughness_pa_sqrt_m, tension_pa, edge_factor=1.12):
    """Depth of an end check from which it runs on by itself: (1/pi) (K_Ic/(1.12 s))^2, m.

    For a check in evenly stressed wood, shorter than the stressed zone is deep.

    >>> [round(1e3 * float(critical_check_depth_m(k, 2.3e6))) for k in (0.41e6, 0.50e6)]
    [8, 12]
    """
    return (toughness_pa_sqrt_m / (edge_factor * tension_pa)) ** 2 / np.pi


def averaging_length_m(toughness_pa_sqrt_m, strength_pa):
    """Length over which stress has to be averaged before it can be held against a strength: (2/pi)(K/f)^2, m.

    >>> round(1e3 * float(averaging_length_m(0.45e6, 6.48e6)), 1)
    3.1
    """
    return 2.0 / np.pi * (toughness_pa_sqrt_m / strength_pa) ** 2


@dataclass(frozen=True)
class EnergyRelease:
    """Energy a crack releases per area it grows, J/m2, for a misfit strain of 1 (grows with its square)."""

    per_unit_strain_j_per_m2: float
    length_m: float
    step_m: float

    def at(self, misfit_strain, elastic_share=1.0):
        """Energy release at a misfit strain, J/m2; ``elastic_share`` is the part of the stress not relaxed."""
        return self.per_unit_strain_j_per_m2 * (misfit_strain * elastic_share) ** 2


def corner_opening(plane: HeldPlane, length_m: float, step_m: float | None = None, order: int = 5, layers: int = 2):
    """Energy released as the glue opens inwards from its ends, once open over ``length_m``.

    The difference of the strain energies of two glued lengths (released nodes), never from the stress at the corner.
    The area that opens is counted on the thinner of panel and strip.

    >>> ash = PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), PlaneWood(13200e6, 1056e6, 1016.4e6, 0.44)
    >>> release = corner_opening(HeldPlane(0.45, 0.45, 0.038, *ash), 0.011)
    >>> round(float(release.at(0.0132)), -2)
    2500.0
    """
    step = length_m / 2 if step_m is None else step_m
    glued = plane.glued_or_width_m
    energies = [
        solve_plane(plane._replace(glued_m=glued - 2 * (length_m + part)), order, layers).energy_j_per_m
        for part in (-step / 2, step / 2)
    ]
    return EnergyRelease((energies[0] - energies[1]) / step / min(1.0, plane.thickness_ratio), length_m, step)


def split_opening(plane: HeldPlane, length_m: float, step_m: float | None = None, order: int = 5, layers: int = 2):
    """Energy released as a split at mid-width grows along the grain from the glue line, once ``length_m`` long.

    The strip bridges the mouth of the split. Two ends, two splits: each quarter of the piece has half of one.
    """
    step = length_m / 2 if step_m is None else step_m
    energies = [
        solve_plane(plane._replace(split_m=length_m + part), order, layers).energy_j_per_m
        for part in (-step / 2, step / 2)
    ]
    return EnergyRelease(2.0 * (energies[0] - energies[1]) / step, length_m, step)


def panel_fracture_energy(wood: PlaneWood, toughness_pa_sqrt_m: float) -> float:
    """``fracture_energy_j_per_m2`` for the constants of a panel.

    >>> round(panel_fracture_energy(PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), 0.52e6))
    159
    """
    along_across = wood.poisson_xy * wood.modulus_y_pa / wood.modulus_x_pa
    return float(
        fracture_energy_j_per_m2(toughness_pa_sqrt_m, wood.modulus_y_pa, wood.modulus_x_pa, along_across, wood.shear_pa)
    )
