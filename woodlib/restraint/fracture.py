"""Splits and opening joints by energy: what a crack would release, and what the wood asks for it."""

from __future__ import annotations

import numpy as np

from .assumptions import assumption
from .field import PlaneWood


def fracture_energy_j_per_m2(toughness_pa_sqrt_m, lengthwise_pa, across_pa, poisson_along_across, shear_pa):
    """Energy that a split along the grain costs, from the resistance K_Ic, J/m2.

    G = K^2 sqrt(a11 a22/2) sqrt( sqrt(a22/a11) + (2 a12 + a66)/(2 a11) ), plane stress, crack along the grain
    (Sih, Paris & Irwin 1965, from memory). All arguments broadcast. 1000 J/m2 = 1 N/mm.

    >>> round(float(fracture_energy_j_per_m2(0.41e6, 13200e6, 1056e6, 0.44, 1016.4e6)))
    99
    """
    a11, a22, a66 = 1.0 / lengthwise_pa, 1.0 / across_pa, 1.0 / shear_pa
    a12 = -poisson_along_across / lengthwise_pa
    shape = np.sqrt(a22 / a11) + (2.0 * a12 + a66) / (2.0 * a11)
    return toughness_pa_sqrt_m**2 * np.sqrt(a11 * a22 / 2.0) * np.sqrt(shape)


def split_cost_j_m2(panel: PlaneWood) -> tuple[float, float]:
    """Energy that a split along the grain of a panel costs, for brittle and for tough wood, J/m2."""
    tough = assumption("toughness")
    poisson = panel.poisson_xy * panel.modulus_y_pa / panel.modulus_x_pa
    low, high = (
        float(fracture_energy_j_per_m2(k, panel.modulus_y_pa, panel.modulus_x_pa, poisson, panel.shear_pa))
        for k in (tough.low, tough.high)
    )
    return low, high
