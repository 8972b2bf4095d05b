"""The plane field: a panel held by cross-grain members glued to one or both of its ends.

Orthotropic plane stress with free strains that do not fit each other, on high-order rectangles whose matrices are
Kronecker products of two lines. Only a quarter (both ends) or a half (one end) of the piece is solved. The answer is
linear in the strain that does not fit, so it is solved once for a unit of it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from scipy.linalg.lapack import dpbsv

from ..errors import InputError
from .lobatto import Line

_ORDER = 5
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
        across = [*across[:-1], *_grade([glued, half], False, layers)]
    near = min(_NEAR_DEPTHS * depth, _NEAR_WIDTHS * 2 * glued)
    along = _grade([0.0, depth - near, depth], True, layers)
    split_elements = 0
    if plane.split_m > 0:
        tip = depth - plane.split_m
        far = depth - max(near, min(2 * plane.split_m, (depth + plane.split_m) / 2))
        along = [*_grade([0.0, far, tip], True, layers), *_grade([tip, depth], False, layers)[1:]]
        split_elements = 1 + layers
    strip = _grade([0.0, plane.strip_m], False, layers)
    lines = (Line(tuple(breaks), order) for breaks in (across, along, strip))
    return (*lines, glued_elements, split_elements)


class Numbering(NamedTuple):
    """Which unknown each displacement is (the last number stands for 'held at zero'), and where matrices go."""

    panel: np.ndarray  # (2, x, y): across, along
    strip: np.ndarray
    count: int
    band: int  # entries below the diagonal
    panel_places: tuple[np.ndarray, np.ndarray]  # positions in the block's matrix, and in the banded one
    strip_places: tuple[np.ndarray, np.ndarray]


def _share_element(count: int, order: int) -> np.ndarray:
    """Which nodes of a line lie in a common element."""
    nodes = np.arange(count * order + 1)
    first, last = np.maximum(nodes - 1, 0) // order, np.minimum(nodes // order, count - 1)
    return (first[:, None] <= last) & (first <= last[:, None])


def _lower_pairs(numbers: np.ndarray, count: int, x_shared: np.ndarray, y_shared: np.ndarray):
    """Entries of a block's matrix that can be other than zero, on and below the diagonal, and their unknowns."""
    flat = numbers.ravel()
    shared = np.tile(np.kron(x_shared, y_shared), (2, 2)).astype(bool)
    row, column = np.nonzero(shared & (flat[:, None] < count) & (flat < count) & (flat[:, None] >= flat))
    return row * flat.size + column, flat[row], flat[column]


@lru_cache(maxsize=64)
def _numbering(
    x: int, y: int, strip_y: int, order: int, glued: int, split: int, ends: int, soft: bool
) -> Numbering:
    """Number the unknowns line by line along y, for ``x``, ``y`` and ``strip_y`` elements.

    Symmetry holds nodes at zero, the nodes of ``glued`` elements are shared, those of ``split`` elements released.
    """
    shape, strip_shape = (y * order + 1, x * order + 1, 2), (strip_y * order + 1, x * order + 1, 2)
    panel = np.arange(np.prod(shape)).reshape(shape).transpose(2, 1, 0).copy()
    strip = np.arange(np.prod(strip_shape)).reshape(strip_shape).transpose(2, 1, 0) + panel.size
    panel[0, 0, : panel.shape[2] - split * order] = -1  # mid-width stays on its line, except where it is split
    if ends == 2:
        panel[1, :, 0] = -1
    else:
        panel[1, 0, 0] = -1  # only stops the whole piece from drifting; it carries no force
    strip[0, 0, :] = -1
    if split:
        panel[0, 0, -1] = -1  # the uncracked strip bridges the crack's mouth
    if not soft:
        strip[:, : glued * order + 1, 0] = panel[:, : glued * order + 1, -1]
    names, compact = np.unique(np.concatenate([[-1], panel.ravel(), strip.ravel()]), return_inverse=True)
    count = names.size - 1
    compact = np.where(compact == 0, count, compact - 1)[1:]
    panel, strip = compact[: panel.size].reshape(panel.shape), compact[panel.size :].reshape(strip.shape)
    x_shared = _share_element(x, order)
    pairs = [
        _lower_pairs(numbers, count, x_shared, _share_element(elements, order))
        for numbers, elements in ((panel, y), (strip, strip_y))
    ]
    band = max(int((row - column).max()) for _, row, column in pairs)
    if soft:
        band = max(band, int(strip[0, -1, 0] - panel[0, 1, -1]) + 2)
    places = [(inside, column * (band + 1) + row - column) for inside, row, column in pairs]
    return Numbering(panel, strip, count, band, *places)


def _product(across: np.ndarray, along: np.ndarray) -> np.ndarray:
    """Kronecker product; three times quicker than np.kron at this size."""
    size = across.shape[0] * along.shape[0]
    return (across[:, None, :, None] * along[None, :, None, :]).reshape(size, size)


def _rectangle(x_line: Line, y_line: Line, wood: PlaneWood, thickness: float) -> np.ndarray:
    """Stiffness matrix of one rectangle: both displacements at all of its nodes."""
    q11, q22, q12, q66 = (thickness * value for value in wood.stiffness())
    size = x_line.size * y_line.size
    matrix = np.empty((2 * size, 2 * size))
    mass_y, stiffness_y, mixed_y = y_line.mass, y_line.stiffness, y_line.mixed
    matrix[:size, :size] = _product(x_line.stiffness, q11 * mass_y)
    matrix[:size, :size] += _product(x_line.mass, q66 * stiffness_y)
    matrix[size:, size:] = _product(x_line.mass, q22 * stiffness_y)
    matrix[size:, size:] += _product(x_line.stiffness, q66 * mass_y)
    coupling = _product(x_line.mixed, q12 * mixed_y.T)
    coupling += _product(x_line.mixed.T, q66 * mixed_y)
    matrix[:size, size:] = coupling
    matrix[size:, :size] = coupling.T
    return matrix


def _add_glue(bands: np.ndarray, plane: HeldPlane, x_line: Line, elements: int, numbers: Numbering) -> None:
    """Couple panel and strip through a layer that gives, over the glued elements."""
    area = x_line.mass_of(elements) * min(1.0, plane.thickness_ratio)
    count = elements * x_line.order + 1
    stiff = 1e4 * plane.panel.modulus_y_pa / plane.width_m  # stands for 'does not give' in one direction only
    for direction, compliance in enumerate((plane.glue_shear_m_per_pa, plane.glue_opening_m_per_pa)):
        spring = area[:count, :count] * (1 / compliance if compliance > 0 else stiff)
        sides = np.concatenate([numbers.panel[direction, :count, -1], numbers.strip[direction, :count, 0]])
        coupled = np.kron([[1.0, -1.0], [-1.0, 1.0]], spring)
        row, column = np.nonzero((sides[:, None] < numbers.count) & (sides[:, None] >= sides))
        bands[sides[column], sides[row] - sides[column]] += coupled[row, column]


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
    x_line, panel_line, strip_line, glued_elements, split_elements = plane_lines(plane, order, layers)
    numbers = _numbering(
        x_line.count, panel_line.count, strip_line.count, order, glued_elements, split_elements, plane.ends, plane.is_soft
    )
    bands = np.zeros((numbers.count, numbers.band + 1))  # row j holds column j of the matrix from its diagonal down
    whole = bands.reshape(-1)
    for line, wood, thickness, (inside, outside) in (
        (panel_line, plane.panel, 1.0, numbers.panel_places),
        (strip_line, plane.strip, plane.thickness_ratio, numbers.strip_places),
    ):
        whole[outside] += _rectangle(x_line, line, wood, thickness).reshape(-1)[inside]
    if plane.is_soft:
        _add_glue(bands, plane, x_line, glued_elements, numbers)
    load = _drying_load(plane, x_line, panel_line, numbers)
    _, solution, trouble = dpbsv(bands.T, load, lower=1, overwrite_ab=1)
    if trouble:
        raise InputError(
            f"the elastic constants {plane.panel} and {plane.strip} are not those of a stable material: "
            "moduli must be above 0 and Poisson ratios small enough that nu_xy * nu_yx stays below 1."
        )
    spread = np.append(solution, 0.0)
    energy = 0.5 * plane.panel.stiffness()[0] * plane.width_m / 2 * plane.depth_m - 0.5 * float(solution @ load)
    return PlaneField(
        plane, x_line, panel_line, strip_line, Block(*spread[numbers.panel]), Block(*spread[numbers.strip]),
        energy, numbers.count,
    )  # fmt: skip


def _drying_load(plane: HeldPlane, x_line: Line, panel_line: Line, numbers: Numbering) -> np.ndarray:
    """Forces of a free strain -1 of the panel across its grain."""
    q11, _, q12, _ = plane.panel.stiffness()
    mass = [line.mass.sum(axis=1) for line in (x_line, panel_line)]
    mixed = [line.mixed.sum(axis=1) for line in (x_line, panel_line)]
    forces = np.stack([np.outer(mixed[0], -q11 * mass[1]), np.outer(mass[0], -q12 * mixed[1])])
    load = np.zeros(numbers.count + 1)
    load[numbers.panel.ravel()] = forces.ravel()
    return load[:-1]
