"""Layers through the thickness by lamination theory, and the shear at their edge: the reference for two layers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from woodlib.restraint.closed_forms import working_depth_m
from woodlib.restraint.layers import bow_m, two_layer_curvature_per_m


class Ply(NamedTuple):
    """One layer: thickness (m), moduli along and across its grain and in shear (Pa), Poisson ratio (along, across),

    angle of its grain to the x direction (rad), free strains along and across its grain.
    """

    thickness_m: float
    along_pa: float
    across_pa: float
    shear_pa: float
    poisson: float
    angle_rad: float = 0.0
    along_strain: float = 0.0
    across_strain: float = 0.0


@dataclass(frozen=True)
class LaidUp:
    """A free plate of layers: strains at mid-thickness, curvatures (1/m), stresses at both faces of each layer (Pa).

    Components x, y, shear; ``stress_pa`` has shape (layer, face, component), faces from low to high.
    """

    strain: np.ndarray
    curvature_per_m: np.ndarray
    stress_pa: np.ndarray


def _rotated(ply: Ply) -> tuple[np.ndarray, np.ndarray]:
    """Stiffness and free strain of one layer in plate axes (engineering shear)."""
    c, s = np.cos(ply.angle_rad), np.sin(ply.angle_rad)
    rest = 1.0 - ply.poisson**2 * ply.across_pa / ply.along_pa
    q12 = ply.poisson * ply.across_pa / rest
    stiffness = np.array([[ply.along_pa / rest, q12, 0], [q12, ply.across_pa / rest, 0], [0, 0, ply.shear_pa]])
    to_ply = np.array([[c * c, s * s, c * s], [s * s, c * c, -c * s], [-2 * c * s, 2 * c * s, c * c - s * s]])
    free = np.linalg.solve(to_ply, np.array([ply.along_strain, ply.across_strain, 0.0]))
    return to_ply.T @ stiffness @ to_ply, free


def lay_up(plies: Sequence[Ply]) -> LaidUp:
    """Strain, bend and stress of a free plate glued from any layers (classical lamination theory).

    >>> ply = Ply(0.003, 13e9, 1e9, 1e9, 0.4, 0.0, 0.0, 0.01)
    >>> plate = lay_up([ply, ply._replace(angle_rad=np.pi / 2), ply])
    >>> bool(np.abs(plate.curvature_per_m).max() < 1e-12)  # a balanced lay-up stays flat
    True
    """
    heights = np.concatenate([[0.0], np.cumsum([ply.thickness_m for ply in plies])])
    heights = heights - heights[-1] / 2
    system, load = np.zeros((6, 6)), np.zeros(6)
    rotated = [_rotated(ply) for ply in plies]
    for (stiffness, free), low, high in zip(rotated, heights[:-1], heights[1:], strict=True):
        moments = [(high**power - low**power) / power for power in (1, 2, 3)]
        system += np.kron([[moments[0], moments[1]], [moments[1], moments[2]]], stiffness)
        load += np.kron(moments[:2], stiffness @ free)
    answer = np.linalg.solve(system, load)
    strain, curvature = answer[:3], answer[3:]
    stress = [
        [stiffness @ (strain + z * curvature - free) for z in (low, high)]
        for (stiffness, free), low, high in zip(rotated, heights[:-1], heights[1:], strict=True)
    ]
    return LaidUp(strain, -curvature, np.array(stress))


def core_tension_pa(core_pa, core_thickness_m, faces_pa, faces_thickness_m, misfit_strain):
    """Tension in the core of a balanced three-layer board, Pa; ``faces_thickness_m`` both faces together.

    -E_c e (E_f h_f)/(E_f h_f + E_c h_c): two springs that share one length. All arguments broadcast.

    >>> round(float(core_tension_pa(1e9, 0.012, 13e9, 0.006, -0.01)) / 1e6, 2)
    8.67
    """
    hold = faces_pa * faces_thickness_m
    return -core_pa * misfit_strain * hold / (hold + core_pa * core_thickness_m)


class EdgeShear(NamedTuple):
    """Shear at the end of a glued layer (Pa), the length over which force builds up (m), force in the middle (N/m)."""

    peak_shear_pa: np.ndarray
    transfer_length_m: np.ndarray
    middle_force_n_per_m: np.ndarray


def edge_shear(
    lower_m,
    upper_m,
    lower_pa,
    upper_pa,
    lower_shear_pa,
    upper_shear_pa,
    free_strain_difference,
    length_m,
    glue_m=0.0,
    glue_shear_pa=1.0,
    held_flat=False,
):
    """Shear at the edge of a layer glued to another: an average over one layer thickness, no more.

    Axial compliance l, shear compliance k = h1/(3 G1) + h2/(3 G2) + h_g/G_g, q = sqrt(l/k); peak (e/(k q)) tanh(q c),
    c half the length (Volkersen and Suhir, coefficients 1/3 from memory). The true shear at the very edge is 0 and its
    neighbourhood singular. Use the rolling-shear modulus for a layer loaded across its grain. All arguments broadcast.
    """
    total = lower_m + upper_m
    bending = 0.0 if held_flat else total**2 / 4.0 / ((lower_pa * lower_m**3 + upper_pa * upper_m**3) / 12.0)
    axial = 1.0 / (lower_pa * lower_m) + 1.0 / (upper_pa * upper_m) + bending
    shear = lower_m / (3.0 * lower_shear_pa) + upper_m / (3.0 * upper_shear_pa) + glue_m / glue_shear_pa
    q, half = np.sqrt(axial / shear), length_m / 2.0
    peak = np.abs(free_strain_difference) / (shear * q) * np.tanh(q * half)
    force = np.abs(free_strain_difference) / axial * (1.0 - 1.0 / np.cosh(np.minimum(q * half, 700.0)))
    return EdgeShear(peak, 3.0 / q, force)


class FaceBatten(NamedTuple):
    """Bend across a panel with a batten glued to its face: curvature (1/m), bow (m), width of panel that works (m)."""

    curvature_per_m: float
    bow_m: float
    working_width_m: float


def face_batten(
    panel_width_m,
    panel_thickness_m,
    panel_length_m,
    batten_width_m,
    batten_thickness_m,
    panel_pa,
    panel_shear_pa,
    batten_pa,
    misfit_strain,
):
    """How a batten glued across a panel's face bends it when the panel wants to move by ``misfit_strain``.

    The batten is narrower than the panel is long, so each layer counts with its width: the batten's own, and the
    panel's as far as shear reaches on both sides. Positive curvature: the panel, having grown, is on the outside.

    >>> bend = face_batten(0.45, 0.02, 1.0, 0.06, 0.02, 1056e6, 1016e6, 13200e6, -0.01)
    >>> round(1e3 * float(bend.bow_m), 1)
    -9.1
    """
    side = np.maximum(panel_length_m - batten_width_m, 0.0) / 2.0
    reach = working_depth_m(panel_width_m, panel_pa, panel_shear_pa, side)
    working = np.minimum(batten_width_m + 2.0 * reach, panel_length_m)
    curvature = two_layer_curvature_per_m(
        panel_thickness_m, batten_thickness_m, panel_pa * working, batten_pa * batten_width_m, misfit_strain
    )
    return FaceBatten(curvature, bow_m(curvature, panel_width_m), working)
