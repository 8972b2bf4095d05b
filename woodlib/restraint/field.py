"""The plane field: a panel held by cross-grain members glued to one or both of its ends.

Orthotropic plane stress with free strains that do not fit each other, on high-order rectangles whose matrices are
Kronecker products of two lines. Only a quarter (both ends) or a half (one end) of the piece is solved. The answer is
linear in the strain that does not fit, so it is solved once for a unit of it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from ..errors import InputError
from .elements import Condensed, add_glue, banded, condense, numbering, unfold
from .lobatto import Line

_ORDER = 5
_FEW = 200  # unknowns up to which NumPy's dense solver does; loading SciPy's banded one takes longer than hundreds of these
# Where the element borders go: found by trying 150 random panels; the error of the restraint factor stayed below
# 0.4 % and moved little when these were changed by a tenth.
_INNER_WIDTH = 0.70  # of the half width, the rest is the element beside the corner
_NEAR_WIDTHS = 0.55  # depth of the element beside the glue line, in glued widths
_NEAR_DEPTHS = 0.70  # and at most this share of the panel's depth


class PlaneWood(NamedTuple):
    """Orthotropic constants in the plane of the panel: x along the glue line, y away from it."""

    modulus_x_pa: float
    modulus_y_pa: float
    shear_pa: float
    poisson_xy: float

    @property
    def is_stable(self) -> bool:
        """Whether any strain of it stores energy."""
        least = min(self.modulus_x_pa, self.modulus_y_pa, self.shear_pa)
        return least > 0.0 and self.poisson_xy**2 * self.modulus_y_pa < self.modulus_x_pa

    def stiffness(self) -> tuple[float, float, float, float]:
        """Plane-stress stiffnesses Q11, Q22, Q12, Q66, Pa."""
        poisson_yx = self.poisson_xy * self.modulus_y_pa / self.modulus_x_pa
        rest = 1.0 - self.poisson_xy * poisson_yx
        return (
            self.modulus_x_pa / rest,
            self.modulus_y_pa / rest,
            self.poisson_xy * self.modulus_y_pa / rest,
            self.shear_pa,
        )


class HeldPlane(NamedTuple):
    """A panel with a cross-grain strip on one or both ends, seen from above.

    ``width_m`` runs across the panel's grain (the x direction, the strip's own length), ``length_m`` along it,
    ``strip_m`` is the strip's width. ``panel`` and ``strip`` hold constants in the same x and y.
    ``glued_m`` is the glued middle part of the joint; ``glue_shear_m_per_pa`` and ``glue_opening_m_per_pa`` are the
    glue layer's thickness over its shear and tension modulus, 0 for a stiff joint.
    """

    width_m: float
    length_m: float
    strip_m: float
    panel: PlaneWood
    strip: PlaneWood
    thickness_ratio: float = 1.0  # strip over panel
    ends: int = 2
    glued_m: float | None = None
    glue_shear_m_per_pa: float = 0.0
    glue_opening_m_per_pa: float = 0.0
    split_m: float = 0.0  # a crack along the grain at mid-width, starting at the glue line

    @property
    def depth_m(self) -> float:
        """Length of panel that is solved: half of it, or all of it when only one end is held."""
        return self.length_m / 2 if self.ends == 2 else self.length_m

    @property
    def glued_or_width_m(self) -> float:
        """Glued part of the joint, m."""
        return self.width_m if self.glued_m is None else self.glued_m

    @property
    def is_soft(self) -> bool:
        """Whether the glue layer gives."""
        return self.glue_shear_m_per_pa > 0 or self.glue_opening_m_per_pa > 0


class Block(NamedTuple):
    """Displacements of one rectangle at its nodes, per unit of strain that does not fit; shape (x, y), m."""

    across: np.ndarray
    along: np.ndarray


@dataclass(frozen=True)
class PlaneField:
    """The solved plane, per unit drying strain of the panel against the strip (tension positive)."""

    plane: HeldPlane
    x_line: Line
    panel_line: Line
    strip_line: Line
    panel: Block
    strip: Block
    energy_j_per_m: float  # strain energy of the solved part per metre of panel thickness
    unknowns: int


def _grade(breaks: list[float], towards_last: bool, layers: int) -> list[float]:
    """Cut the outermost element again and again, each time leaving 0.3 of it at the corner."""
    for _ in range(layers):
        if towards_last:
            breaks = [*breaks[:-1], breaks[-1] - 0.3 * (breaks[-1] - breaks[-2]), breaks[-1]]
        else:
            breaks = [breaks[0], breaks[0] + 0.3 * (breaks[1] - breaks[0]), *breaks[1:]]
    return breaks


def _stepped(start: float, end: float, step: float) -> list[float]:
    """Borders from start to end; one more, ``step`` after the start, where the rest is much longer than that."""
    return [start, end] if end - start < 1.5 * step else [start, start + step, end]


def plane_lines(plane: HeldPlane, order: int = _ORDER, layers: int = 0) -> tuple[Line, Line, Line, int, int]:
    """Lines across, along the panel and along the strip, with the count of glued and of split elements.

    ``layers`` adds elements at the corner, for convergence studies.
    """
    half, glued, depth = plane.width_m / 2, plane.glued_or_width_m / 2, plane.depth_m
    across = _grade([0.0, _INNER_WIDTH * glued, glued], True, layers)
    if plane.split_m > 0:
        beside = min(plane.split_m, _INNER_WIDTH * glued / 2)
        across = [*_grade([0.0, beside], False, layers), *across[1:]]
    glued_elements = len(across) - 1
    if glued < half:
        across = [*across[:-1], *_grade(_stepped(glued, half, glued), False, layers)]
    near = min(_NEAR_DEPTHS * depth, _NEAR_WIDTHS * 2 * glued)
    along = [depth - place for place in reversed(_stepped(near, depth, 2 * near if glued < half else depth))]
    along = _grade([*along, depth], True, layers)
    split_elements = 0
    if plane.split_m > 0:
        tip = depth - plane.split_m
        far = depth - max(near, min(2 * plane.split_m, (depth + plane.split_m) / 2))
        along = [*_grade([0.0, far, tip], True, layers), *_grade([tip, depth], False, layers)[1:]]
        split_elements = 1 + layers
    strip = _grade(_stepped(0.0, plane.strip_m, 2 * glued), False, layers)
    x_line, panel_line, strip_line = (Line(tuple(breaks), order) for breaks in (across, along, strip))
    return x_line, panel_line, strip_line, glued_elements, split_elements


def solve_plane(plane: HeldPlane, order: int = _ORDER, layers: int = 0) -> PlaneField:
    """Displacements of a held panel per unit drying strain of the panel against the strip.

    Parameters
    ----------
    plane : HeldPlane
        Sizes (m), constants (Pa) and glue.
    order, layers : int
        Polynomial order, and extra elements at the corner; the defaults meet 1 % on the restraint factor.

    Returns
    -------
    PlaneField
        Displacements at the nodes and the strain energy; stresses come from ``field_readings``.

    Raises
    ------
    InputError
        When the constants are not those of a stable material.

    Examples
    --------
    White ash, 450 by 450 mm, 38 mm strips on both ends:

    >>> panel = PlaneWood(1056e6, 13200e6, 0.077 * 13200e6, 0.44 * 0.08)
    >>> strip = PlaneWood(13200e6, 1056e6, 0.077 * 13200e6, 0.44)
    >>> field = solve_plane(HeldPlane(0.45, 0.45, 0.038, panel, strip))
    >>> field.unknowns
    325

    Notes
    -----
    Weak form: integral of (strain - free strain) : Q : (test strain) = 0, symmetry on the middle lines, all other
    edges free. Free strain along y, and any free strain along x that panel and strip share, fits without stress, so
    only the difference along x loads the piece. Valid for uniform moisture, straight grain square to the strip,
    small strains and no buckling; parts of the joint that are not glued may overlap (contact is not modelled).
    """
    if not (plane.panel.is_stable and plane.strip.is_stable):
        raise InputError(
            f"the elastic constants {plane.panel} and {plane.strip} are not those of a stable material: "
            "moduli must be above 0 and Poisson ratios small enough that nu_xy * nu_yx stays below 1."
        )
    x_line, panel_line, strip_line, glued_elements, split_elements = plane_lines(plane, order, layers)
    x, y, strip_y = x_line.count, panel_line.count, strip_line.count
    numbers = numbering(x, y, strip_y, order, glued_elements, split_elements, plane.ends, plane.is_soft)
    parts = _elements(plane, x_line, panel_line, strip_line)
    bands = banded(parts.matrix, numbers)
    if plane.is_soft:
        nodes = glued_elements * order + 1
        add_glue(bands, numbers, x_line.mass_of(glued_elements)[:nodes, :nodes], _glue_stiffness(plane))
    load = np.bincount(numbers.elements.ravel(), parts.load.ravel(), numbers.size + 1)[:-1]
    solution = _solution(bands, load)
    border = np.append(solution, 0.0)[numbers.elements]
    panel, strip = Condensed(*(part[: x * y] for part in parts)), Condensed(*(part[x * y :] for part in parts))
    panel_block = Block(*unfold(border[: x * y], panel, order, x, y))
    strip_block = Block(*unfold(border[x * y :], strip, order, x, strip_y))
    unknowns = numbers.size + parts.back.shape[0] * parts.back.shape[1]
    field = PlaneField(plane, x_line, panel_line, strip_line, panel_block, strip_block, 0.0, unknowns)
    return replace(field, energy_j_per_m=_energy(field))


def _solution(bands: np.ndarray, load: np.ndarray) -> np.ndarray:
    """Unknowns of the banded symmetric system; row j of ``bands`` holds column j from its diagonal down."""
    count, width = bands.shape
    if count > _FEW:
        from scipy.linalg.lapack import dpbsv

        return dpbsv(bands.T, load, lower=1, overwrite_ab=1)[1]
    padded = np.zeros((count, count + width))
    step = padded.strides[1]
    np.lib.stride_tricks.as_strided(padded, bands.shape, (padded.strides[0] + step, step))[...] = bands
    upper = padded[:, :count]
    return np.linalg.solve(upper + np.triu(upper, 1).T, load)


def _elements(plane: HeldPlane, x_line: Line, panel_line: Line, strip_line: Line) -> Condensed:
    """All elements, panel first, x by x."""
    strips = [(panel_line, plane.panel, 1.0, 1.0), (strip_line, plane.strip, plane.thickness_ratio, 0.0)]
    parts: tuple[list[np.ndarray], ...] = ([], [], [], [])
    stiffness, widths, heights, drying = parts
    for line, wood, thickness, shrinks in strips:
        count = x_line.count * line.count
        stiffness.append(np.tile(thickness * np.array(wood.stiffness()), (count, 1)))
        widths.append(np.repeat(x_line.lengths, line.count))
        heights.append(np.tile(line.lengths, x_line.count))
        drying.append(np.full(count, shrinks))
    stiffnesses, all_widths, all_heights, dryings = map(np.concatenate, parts)
    return condense(stiffnesses, all_widths, all_heights, dryings, x_line.order)


def _glue_stiffness(plane: HeldPlane) -> tuple[float, float]:
    """Stiffness of the glue layer in sliding and opening, Pa/m; a direction that does not give is very stiff."""
    stiff = 1e4 * plane.panel.modulus_y_pa / plane.width_m
    sliding, opening = plane.glue_shear_m_per_pa, plane.glue_opening_m_per_pa
    width = min(1.0, plane.thickness_ratio)
    return width * (1.0 / sliding if sliding > 0 else stiff), width * (1.0 / opening if opening > 0 else stiff)


def _energy(field: PlaneField) -> float:
    """Strain energy: that of full restraint less half the work of the load (equilibrium)."""
    q11, _, q12, _ = field.plane.panel.stiffness()
    x, y = field.x_line, field.panel_line
    work = q11 * (x.mixed.sum(axis=1) @ field.panel.across @ y.mass.sum(axis=1))
    work += q12 * (x.mass.sum(axis=1) @ field.panel.along @ y.mixed.sum(axis=1))
    return float(0.5 * q11 * x.breaks[-1] * y.breaks[-1] + 0.5 * work)
