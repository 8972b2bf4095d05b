"""Held movement on a blackboard, beyond what the kit says."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np


class PlaneStress(NamedTuple):
    """Stress across the grain, along it, and in shear, Pa."""

    across_pa: np.ndarray
    along_pa: np.ndarray
    shear_pa: np.ndarray


def plane_restraint_stress_pa(stiffness_pa, across_strain, along_strain, shear_strain=0.0, relaxation=1.0):
    """Stress when neither direction may move: -Q e lambda; ``stiffness_pa`` = (Q11, Q22, Q12, Q66), x across.

    With the grain direction free it falls back to ``full_restraint_stress_pa``.

    >>> plane_restraint_stress_pa((2.0, 10.0, 0.0, 1.0), -0.5, 0.0).across_pa
    1.0
    """
    q11, q22, q12, q66 = stiffness_pa
    return PlaneStress(
        -relaxation * (q11 * across_strain + q12 * along_strain),
        -relaxation * (q12 * across_strain + q22 * along_strain),
        -relaxation * q66 * shear_strain,
    )


def peak_tension_pa(restraint, modulus_across_pa, misfit_strain, relaxation=1.0):
    """Tension across the grain at the middle of the glue line, Pa: -R E (e_panel - e_strip) lambda.

    >>> round(float(peak_tension_pa(0.744, 1056e6, -0.00264)) / 1e6, 3)
    2.074
    """
    return -restraint * modulus_across_pa * misfit_strain * relaxation


def free_end_movement_m(width_m, glued_m, misfit_strain):
    """Movement at each edge of the panel past the strip when only the middle ``glued_m`` is glued, m.

    >>> round(1e3 * free_end_movement_m(0.45, 0.10, -0.0132), 2)
    -2.31
    """
    return misfit_strain * (width_m - glued_m) / 2.0


def full_restraint_stress_pa(modulus_across_pa, free_strain, relaxation=1.0):
    """Stress across the grain when nothing may move, Pa: -E e lambda.

    The grain direction stays free. Elastic (relaxation 1) over-states slow seasonal stress.

    >>> round(float(full_restraint_stress_pa(1056e6, -0.0137)) / 1e6, 4)
    14.4672
    """
    return -modulus_across_pa * free_strain * relaxation
