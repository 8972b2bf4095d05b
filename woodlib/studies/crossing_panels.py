"""The grip of a border on a panel's end, made smooth in three sizes, and the shapes that panel and stress take.

The plane field is solved once for each place of a small grid of panel width, border width and border thickness. Two
springs share the glue line, so one over the grip is a line in one over the border's thickness; the other numbers are
nearly so. A page works that out by itself: only polynomials in the two widths go into its table. Places in the panel
count in panel widths from the glue line, because that is how far a border reaches.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache, reduce
from operator import add

import numpy as np

from ..restraint.assumptions import assumption
from ..restraint.field import HeldPlane, PlaneField, solve_plane
from ..restraint.field_readings import across_stress_pa, edge_average, effective_stress_pa, restraint_factor_of
from ..restraint.held import held_panel
from ..words.decided import Decided, Sliding, in_sight, smaller
from .crossing_numbers import (
    BORDER_THICKNESSES_M,
    BORDERS_M,
    LENGTH_M,
    RINGS_DEG,
    THICKNESS_M,
    WIDTHS_M,
    cut_wood,
    places,
    scaled,
)

# The half of the panel that is drawn: borders between rows of cells, in panel widths from the glue line, closer where
# the stress changes faster; before the first stands mid-length. And how many cells half the width has.
ROWS = np.array([0.55, 0.36, 0.22, 0.12, 0.05, 0.0])
HALF_COLUMNS = 5
SHAPES = 4  # patterns that are mixed into every picture

_NODES = (5, 6, 3)
# Pairs of orders in the two widths, by their sum; high orders in both together carry next to nothing.
_PAIRS = np.array(sorted(itertools.product(range(_NODES[0]), range(_NODES[1])), key=sum))
_PAIRS = _PAIRS[_PAIRS.sum(axis=1) <= max(_NODES[:2]) - 1]
_FAR_APART = (("white oak", "flatsawn"), ("black cherry", "quartersawn"))  # the others lie between these
_SEEN = 0.006  # of the tension, or of what the border keeps the end from doing
# What is found for a panel: the orders, in both widths together, of its parts that stay the same, grow with the border's
# thickness, and grow with one over it; None for no such part.
_PARTS = {
    "softness": (5, 3, None),
    "spread": (4, None, 3),
    "shear": (4, 3, 3),
    "opening": (4, 3, 3),
    **{f"shape {number}": (3, None, 2) for number in range(SHAPES)},
}


@dataclass(frozen=True)
class Panel:
    """What the sizes decide. Stresses and displacements are per unit of strain that does not fit.

    ``restraint`` with its range; ``spread`` weakest-link stress over peak stress; ``shear``, ``opening`` at the end of
    the glue line over the peak tension; ``shapes`` how much of each of :func:`patterns` there is.
    """

    restraint: Decided
    restraint_low: Decided
    restraint_high: Decided
    spread: Decided
    shear: Decided
    opening: Decided
    shapes: tuple[Decided, ...]


@dataclass(frozen=True)
class Patterns:
    """Shapes that every wood's are mixed from, the same for all, so that a page needs them once.

    ``stress`` across the grain at the middle of each cell, over the tension at the middle of the glue line, shape
    (SHAPES, half columns, rows); ``across``, ``along`` how far the border keeps a place out from where the free panel
    would have it, over what it keeps the end of the glue line from doing, shape (SHAPES, columns, rows): the rows after
    mid-length, and at last the outer edge of the border.
    """

    stress: np.ndarray
    across: np.ndarray
    along: np.ndarray


@dataclass(frozen=True, eq=False)
class HeldWood:
    """One wood, cut one way, glued across its own grain."""

    coefficients: np.ndarray  # (products of orders, parts)
    softer: float  # softness over the expected one, where the estimated constants hold least and most
    stiffer: float

    def panel(self, width_m: float, border_m: float, border_thickness_m: float) -> Panel:
        """The smooth numbers of one panel."""
        values = iter(_products(width_m, border_m) @ self.coefficients)
        ratio = in_sight(border_thickness_m / THICKNESS_M)
        inverse = Decided("/", 1.0, ratio)
        found = {name: _summed(orders, values, ratio, inverse) for name, orders in _PARTS.items()}
        soft, least = found["softness"] * inverse, smaller(ratio, 1.0)
        restraint, low, high = (Decided("/", 1.0, soft * factor + 1.0) for factor in (1.0, self.softer, self.stiffer))
        shapes = tuple(found[f"shape {number}"] for number in range(SHAPES))
        return Panel(restraint, low, high, found["spread"], found["shear"] / least, found["opening"] / least, shapes)


def _summed(orders, values: Iterator[float], ratio: Decided, inverse: Decided) -> Decided:
    total = in_sight(next(values))
    for order, factor in zip(orders[1:], (ratio, inverse), strict=True):
        if order is not None:
            total = total + factor * next(values)
    return total


def _products(width_m: Sliding, border_m: Sliding) -> Sliding:
    """Chebyshev products of the two widths, shape (..., pairs)."""
    first, second = (
        _polynomials(2.0 * (value - low) / (high - low) - 1.0, count)
        for value, (low, high), count in zip((width_m, border_m), (WIDTHS_M, BORDERS_M), _NODES, strict=False)
    )
    return np.stack([first[one] * second[other] for one, other in _PAIRS.tolist()], axis=-1)


def _polynomials(x: Sliding, count: int) -> list[Sliding]:
    """Chebyshev polynomials at a place, lowest first."""
    found = [1.0 + 0.0 * x, x]
    while len(found) < count:
        found.append(2.0 * x * found[-1] - found[-2])
    return found


@lru_cache(maxsize=64)
def held_wood(species: str, rings: str) -> HeldWood:
    """All that is worked out once for a wood and a cut: about a tenth of a second."""
    sizes, numbers, shapes = _panels(species, rings)
    flat = np.concatenate([getattr(patterns(), name).reshape(SHAPES, -1) for name in ("stress", "across", "along")], 1)
    amounts = np.linalg.lstsq(flat.T, shapes.T, rcond=None)[0].T
    columns: list[np.ndarray] = []
    for values, orders in zip(np.concatenate([numbers, amounts], 1).T, _PARTS.values(), strict=True):
        columns += _fitted(sizes, values, orders)
    return HeldWood(np.column_stack(columns), *_softness_range(species, rings))


def _fitted(sizes: np.ndarray, values: np.ndarray, orders: tuple[int | None, ...]) -> list[np.ndarray]:
    """Coefficients of the products, for each part that there is, by least squares; higher orders are 0."""
    products, ratio = _products(sizes[:, 0], sizes[:, 1]), sizes[:, 2] / THICKNESS_M
    factors = (np.ones_like(ratio), ratio, 1.0 / ratio)
    used = [(factor, order) for factor, order in zip(factors, orders, strict=True) if order is not None]
    counts = [int((_PAIRS.sum(axis=1) <= order).sum()) for _, order in used]
    design = [factor[:, None] * products[:, :count] for (factor, _), count in zip(used, counts, strict=True)]
    fit = np.linalg.lstsq(np.concatenate(design, axis=1), values, rcond=None)[0]
    return [np.pad(part, (0, len(_PAIRS) - part.size)) for part in np.split(fit, np.cumsum(counts)[:-1])]


@cache
def patterns() -> Patterns:
    """The shapes, from two woods that differ as much as any."""
    found = np.concatenate([_panels(*wood)[2] for wood in _FAR_APART])
    main = np.round(np.linalg.svd(found, full_matrices=False)[2][:SHAPES], 4)
    # Parts too small to be seen cost a page as much as large ones.
    main[np.abs(found @ main.T).max(axis=0)[:, None] * np.abs(main) < _SEEN] = 0.0
    cells, held = HALF_COLUMNS * ROWS.size, HALF_COLUMNS * (ROWS.size + 1)
    stress, across, along = np.split(main, [cells, cells + held], axis=1)
    return Patterns(
        stress.reshape(SHAPES, HALF_COLUMNS, -1),
        across.reshape(SHAPES, HALF_COLUMNS, -1),
        along.reshape(SHAPES, HALF_COLUMNS + 1, -1),
    )


def mixed(amounts: tuple[Decided, ...], pattern: np.ndarray) -> Decided | float:
    """The patterns at one place, shape (SHAPES,), mixed by their amounts; parts that are nothing are left out."""
    parts = [amount * part for amount, part in zip(amounts, pattern.tolist(), strict=True) if part]
    return reduce(add, parts) if parts else 0.0


@lru_cache(maxsize=64)
def _panels(species: str, rings: str) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Sizes, numbers and shapes at the grid, each of shape (panels, ...)."""
    ends = (WIDTHS_M, BORDERS_M, BORDER_THICKNESSES_M)
    grids = np.meshgrid(*(scaled(places(count), end) for count, end in zip(_NODES, ends, strict=True)), indexing="ij")
    sizes = np.column_stack([grid.ravel() for grid in grids])
    found = [_panel(species, rings, *row) for row in sizes.tolist()]
    numbers, shapes = (np.array([panel[part] for panel in found]) for part in range(2))
    return sizes, numbers, shapes


def _panel(species: str, rings: str, width_m: float, border_m: float, border_thickness_m: float):
    """Numbers (in the order of ``_PARTS``) and shapes of one panel, per unit strain."""
    wood, angle = cut_wood(species, rings).elastic, np.radians(RINGS_DEG[rings])
    ratio = border_thickness_m / THICKNESS_M
    field = solve_plane(HeldPlane(width_m, LENGTH_M, border_m, wood.panel(angle), wood.strip(angle), ratio))
    restraint = restraint_factor_of(field)
    peak = restraint * field.plane.panel.modulus_x_pa
    volume, exponent = assumption("reference_volume").middle, assumption("size_exponent").middle
    spread = effective_stress_pa(field, THICKNESS_M, volume, exponent) / peak
    edge, least = edge_average(field, THICKNESS_M), min(1.0, ratio)
    numbers = ((1.0 / restraint - 1.0) * ratio, spread, edge.shear_pa * least / peak, edge.opening_pa * least / peak)
    return numbers, _shapes(field, restraint)


def _shapes(field: PlaneField, restraint: float) -> np.ndarray:
    """Stress and displacement in the order of :class:`Patterns`, in one row."""
    plane = field.plane
    half, line = plane.width_m / 2, plane.depth_m - ROWS * plane.width_m
    cells = np.concatenate([[0.0], line])
    middles = (np.arange(HALF_COLUMNS) + 0.5) / HALF_COLUMNS * half
    stress = across_stress_pa(field, middles, (cells[1:] + cells[:-1]) / 2) / (restraint * plane.panel.modulus_x_pa)
    x = np.arange(HALF_COLUMNS + 1) / HALF_COLUMNS * half
    across, along = field.x_line.at(x)[0], field.panel_line.at(line)[0]
    outer = field.strip_line.at(np.array([plane.strip_m]))[0]
    moved = [
        np.concatenate([across @ panel @ along.T, across @ strip @ outer.T], axis=1) / (restraint * half)
        for panel, strip in zip(field.panel, field.strip, strict=True)
    ]
    kept_out = (moved[0] + x[:, None] / (restraint * half))[1:]
    return np.concatenate([stress.ravel(), kept_out.ravel(), moved[1].ravel()])


def _softness_range(species: str, rings: str) -> tuple[float, float]:
    """Softness over the expected one where the estimated constants hold least and most, for a panel in the middle."""
    width, border = (float(np.mean(ends)) for ends in (WIDTHS_M, BORDERS_M))
    angle = RINGS_DEG[rings]
    held = held_panel(
        species,
        width_m=width,
        length_m=LENGTH_M,
        thickness_m=THICKNESS_M,
        strip_width_m=border,
        ring_angle_deg=angle,
        strip_ring_angle_deg=angle,
        glue_up_mc_percent=9.0,
        year_mc_percent=(12.0, 6.0),
    ).restraint
    middle, low, high = (1.0 / share - 1.0 for share in (held.number, held.low, held.high))
    return low / middle, high / middle
