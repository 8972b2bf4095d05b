"""What to read from the plane field, and what never to read.

Stress at the corner of the glue line has no limit as the mesh is refined, so no point value near it is reported: only
averages over the board's thickness, the weakest-link (Weibull) stress of the whole panel, and differences of energy.
All stresses here are per unit drying strain that does not fit; multiply by that strain.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .field import PlaneField

_GAUSS = 8  # points per element and direction; 12 change the effective stress by less than 0.05 %


def across_stress_pa(field: PlaneField, x_m, y_m) -> np.ndarray:
    """Stress across the panel's grain on a grid of places, Pa per unit strain; shape (x, y).

    ``x_m`` from mid-width and ``y_m`` from mid-length (from the free end when one end is held), in the solved part.

    >>> from woodlib.restraint.field import HeldPlane, PlaneWood, solve_plane
    >>> ash = PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), PlaneWood(13200e6, 1056e6, 1016.4e6, 0.44)
    >>> field = solve_plane(HeldPlane(0.45, 0.45, 0.038, *ash))
    >>> stress = 0.00264 * across_stress_pa(field, np.array([0.0]), np.array([0.0, 0.2, 0.225]))
    >>> [round(float(s) / 1e6, 2) for s in stress[0]]
    [0.7, 1.82, 2.07]
    """
    return _panel_stress(field, field.x_line.at(np.asarray(x_m)), field.panel_line.at(np.asarray(y_m)))


def _panel_stress(field: PlaneField, across, along) -> np.ndarray:
    """Stress across the grain, from values and slopes of the two lines' functions."""
    q11, _, q12, _ = field.plane.panel.stiffness()
    (x_value, x_slope), (y_value, y_slope) = across, along
    u, v = field.panel
    stretch_x = x_slope @ u @ y_value.T + 1.0  # the panel wants to shrink by 1 and is measured against that
    return q11 * stretch_x + q12 * (x_value @ v @ y_slope.T)


def restraint_factor_of(field: PlaneField) -> float:
    """Restraint factor from the field: tension at the middle of the glue line over full restraint."""
    line = field.panel_line
    stress = across_stress_pa(field, np.zeros(1), np.array([line.breaks[-1]]))
    return float(stress[0, 0]) / field.plane.panel.modulus_x_pa


def effective_stress_pa(field: PlaneField, thickness_m: float, reference_volume_m3: float, exponent: float) -> float:
    """Weakest-link (Weibull) stress of the whole panel, Pa per unit strain.

    ((1/V0) integral max(s, 0)^k dV)^(1/k): the even stress in the reference volume that would crack as often.

    Parameters: panel thickness (m), reference volume (m3), exponent k. Independent of the mesh because a weak
    singularity can be integrated (size effect of ISO 13910 / EN 1995: k = 5).

    >>> from woodlib.restraint.field import HeldPlane, PlaneWood, solve_plane
    >>> ash = PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), PlaneWood(13200e6, 1056e6, 1016.4e6, 0.44)
    >>> field = solve_plane(HeldPlane(0.45, 0.45, 0.038, *ash))
    >>> quarter = 0.00264 * effective_stress_pa(field, 0.001, 4e-9, 5)  # of one quarter, in MPa mm^(2/5)
    >>> round(float(quarter) / 1e6, 2)
    11.46
    """
    x_value, x_slope, x_weight = field.x_line.gauss(_GAUSS)
    y_value, y_slope, y_weight = field.panel_line.gauss(_GAUSS)
    stress = _panel_stress(field, (x_value, x_slope), (y_value, y_slope))
    scale = field.plane.panel.modulus_x_pa
    parts = 4.0 if field.plane.ends == 2 else 2.0
    volume = parts * thickness_m * float(x_weight @ np.maximum(stress / scale, 0.0) ** exponent @ y_weight)
    return scale * (volume / reference_volume_m3) ** (1.0 / exponent)


@dataclass(frozen=True)
class EdgeAverage:
    """Mean stress on the glue line over a stated length at the end of the glue, Pa per unit strain.

    Shear holds the panel's edge outwards on drying; opening is positive when it pulls the joint apart.
    """

    shear_pa: float
    opening_pa: float
    length_m: float


def edge_average(field: PlaneField, length_m: float) -> EdgeAverage:
    """Mean shear and opening stress over the last ``length_m`` of the glue line.

    From the balance of forces on the piece of strip beside it, so it settles with the mesh where point values do not.
    """
    plane, line = field.plane, field.strip_line
    place = plane.glued_or_width_m / 2 - length_m
    x_value, x_slope = field.x_line.at(np.array([place]))
    y_value, y_slope, weight = line.gauss(_GAUSS)
    q11, _, q12, q66 = plane.strip.stiffness()
    u, v = field.strip
    stretch_x, stretch_y = x_slope @ u @ y_value.T, x_value @ v @ y_slope.T
    shear = x_value @ u @ y_slope.T + x_slope @ v @ y_value.T
    share = plane.thickness_ratio / min(1.0, plane.thickness_ratio)  # force per area of glue, not of strip
    pull = share * float(((q11 * stretch_x + q12 * stretch_y) @ weight)[0])
    across = share * q66 * float((shear @ weight)[0])
    return EdgeAverage(-pull / length_m, -across / length_m, length_m)


@dataclass(frozen=True)
class FieldPicture:
    """A sampled field for drawing; the solved part only, mirror it for the rest.

    ``x_m``, ``y_m`` panel grid, ``strip_y_m`` strip grid (y goes on from the panel). Displacements (m) and stress (Pa)
    have shape (x, y) and are true to scale: exaggerate when drawing.
    """

    x_m: np.ndarray
    y_m: np.ndarray
    strip_y_m: np.ndarray
    panel_across_m: np.ndarray
    panel_along_m: np.ndarray
    strip_across_m: np.ndarray
    strip_along_m: np.ndarray
    stress_pa: np.ndarray
    ends: int


def field_picture(
    field: PlaneField,
    misfit_strain: float,
    shared_strain: float = 0.0,
    panel_along_strain: float = 0.0,
    strip_across_strain: float = 0.0,
    stress_scale: float = 1.0,
    columns: int = 25,
    rows: int = 33,
    strip_rows: int = 7,
) -> FieldPicture:
    """Displacement and cross-grain stress on an even grid.

    Parameters: ``misfit_strain`` free strain of the panel across its grain less that of the strip along its own;
    ``shared_strain`` the strip's own; ``panel_along_strain``, ``strip_across_strain`` the other two free strains, which
    move points but stress nothing; ``stress_scale`` multiplies the stress (relaxation).
    """
    plane = field.plane
    x = np.linspace(0.0, plane.width_m / 2, columns)
    y = np.linspace(0.0, plane.depth_m, rows)
    z = np.linspace(0.0, plane.strip_m, strip_rows)
    across, along, strip = field.x_line.at(x), field.panel_line.at(y), field.strip_line.at(z)
    panel_u, panel_v = (across[0] @ part @ along[0].T for part in field.panel)
    strip_u, strip_v = (across[0] @ part @ strip[0].T for part in field.strip)
    shared = shared_strain * x[:, None]
    pushed = panel_along_strain * plane.depth_m
    return FieldPicture(
        x,
        y,
        plane.depth_m + z,
        shared - misfit_strain * panel_u,
        panel_along_strain * y - misfit_strain * panel_v,
        shared - misfit_strain * strip_u,
        pushed + strip_across_strain * z - misfit_strain * strip_v,
        -misfit_strain * stress_scale * _panel_stress(field, across, along),
        plane.ends,
    )
