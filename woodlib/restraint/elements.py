"""Elements of the plane field: their matrices, their inner unknowns eliminated, and where the rest goes.

A rectangle's matrix is a sum of six Kronecker products of line matrices, each with one number for sizes and stiffness.
Unknowns inside an element touch no other element, so they are eliminated there; only those on element borders are left
to one small banded system.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import NamedTuple

import numpy as np

from .lobatto import reference_element


class Templates(NamedTuple):
    """Six element matrices and two load vectors of one order, unknowns sorted: inside first, then on the border."""

    matrices: np.ndarray  # (6, n, n)
    loads: np.ndarray  # (2, n)
    inner: int  # how many unknowns lie inside
    order: np.ndarray  # sorted place -> place in (direction, x, y)


@cache
def templates(order: int) -> Templates:
    """Element matrices of one polynomial order, to be multiplied by (in turn) q11 a, q22/a, q66/a, q66 a, q12, q66.

    a is the element's height over its width.
    """
    line, nodes = reference_element(order), (order + 1) ** 2
    stretch, slide = np.kron(line.stiffness, line.mass), np.kron(line.mass, line.stiffness)
    zero, mixed = np.zeros((nodes, nodes)), np.kron(line.mixed, line.mixed.T)
    swapped = np.kron(line.mixed.T, line.mixed)
    blocks = [
        [[stretch, zero], [zero, zero]],
        [[zero, zero], [zero, slide]],
        [[slide, zero], [zero, zero]],
        [[zero, zero], [zero, stretch]],
        [[zero, mixed], [mixed.T, zero]],
        [[zero, swapped], [swapped.T, zero]],
    ]
    whole, ends = line.mass.sum(axis=1), line.mixed.sum(axis=1)
    none = np.zeros(nodes)
    loads = [np.concatenate([np.kron(ends, whole), none]), np.concatenate([none, np.kron(whole, ends)])]
    inside = np.zeros(order + 1, bool)
    inside[1:-1] = True
    inside = np.tile(np.kron(inside, inside), 2).astype(bool)
    sorting = np.concatenate([np.flatnonzero(inside), np.flatnonzero(~inside)])
    matrices = np.array([np.block(block) for block in blocks])[:, sorting][:, :, sorting]
    return Templates(matrices, np.array(loads)[:, sorting], int(inside.sum()), sorting)


class Condensed(NamedTuple):
    """Elements with their inner unknowns eliminated: border matrix, border load, and what gives the inner ones back."""

    matrix: np.ndarray  # (elements, border, border)
    load: np.ndarray  # (elements, border)
    back: np.ndarray  # (elements, inner, border + 1)


def condense(
    stiffness: np.ndarray, widths_m: np.ndarray, heights_m: np.ndarray, drying: np.ndarray, order: int
) -> Condensed:
    """Matrices and loads of all elements at once.

    ``stiffness`` (elements, 4) Q11, Q22, Q12, Q66 times thickness; sizes (elements,); ``drying`` (elements,) 1 where
    the free strain is -1 along x, else 0.
    """
    plan = templates(order)
    q11, q22, q12, q66 = stiffness.T
    slender = heights_m / widths_m
    factors = np.stack([q11 * slender, q22 / slender, q66 / slender, q66 * slender, q12, q66], axis=1)
    size = plan.matrices.shape[1]
    matrix = (factors @ plan.matrices.reshape(6, -1)).reshape(-1, size, size)
    load = np.stack([-drying * q11 * heights_m / 2, -drying * q12 * widths_m / 2], axis=1) @ plan.loads
    n = plan.inner
    sides = np.concatenate([matrix[:, :n, n:], load[:, :n, None]], axis=2)
    back = np.linalg.solve(matrix[:, :n, :n], sides)
    reduced = matrix[:, n:, :n] @ back
    return Condensed(matrix[:, n:, n:] - reduced[..., :-1], load[:, n:] - reduced[..., -1], back)


class Numbering(NamedTuple):
    """Which unknown each border displacement is (the last number stands for 'held at zero'), and where entries go."""

    elements: np.ndarray  # (elements, border) numbers
    glue_panel: np.ndarray  # (2, x) numbers along the glue line, panel side
    glue_strip: np.ndarray
    size: int  # how many unknowns
    band: int  # entries below the diagonal
    inside: np.ndarray  # positions in the elements' border matrices
    outside: np.ndarray  # and in the banded matrix


def _element_numbers(nodes: np.ndarray, order: int) -> np.ndarray:
    """Numbers of every element's unknowns, sorted as the templates are; ``nodes`` (2, x, y)."""
    plan = templates(order)
    found = [
        nodes[:, i * order : (i + 1) * order + 1, j * order : (j + 1) * order + 1].ravel()[plan.order]
        for i in range((nodes.shape[1] - 1) // order)
        for j in range((nodes.shape[2] - 1) // order)
    ]
    return np.array(found)


@lru_cache(maxsize=64)
def numbering(x: int, y: int, strip_y: int, order: int, glued: int, split: int, ends: int, soft: bool) -> Numbering:
    """Number the unknowns on element borders line by line along y, for ``x``, ``y`` and ``strip_y`` elements.

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
    inner = templates(order).inner
    elements = np.concatenate([_element_numbers(nodes, order)[:, inner:] for nodes in (panel, strip)])
    names = np.unique(elements[elements >= 0])
    count = names.size

    def compact(numbers: np.ndarray) -> np.ndarray:
        return np.where(numbers < 0, count, np.searchsorted(names, numbers))

    elements = compact(elements)
    glue_panel, glue_strip = compact(panel[:, : glued * order + 1, -1]), compact(strip[:, : glued * order + 1, 0])
    row, column = elements[:, :, None], elements[:, None, :]
    used = (row < count) & (column <= row)
    below = np.where(used, row - column, 0)
    band = int(max(below.max(), (glue_strip - glue_panel).max() if soft else 0, glue_panel[1, -1] - glue_panel[0, 0]))
    outside = (column * (band + 1) + below)[used]
    return Numbering(elements, glue_panel, glue_strip, count, band, np.flatnonzero(used), outside)


def banded(matrix: np.ndarray, numbers: Numbering) -> np.ndarray:
    """Sum of all element matrices; row j holds column j from its diagonal down."""
    places = numbers.size * (numbers.band + 1)
    summed = np.bincount(numbers.outside, matrix.reshape(-1)[numbers.inside], places)
    return summed.reshape(numbers.size, numbers.band + 1)


def add_glue(bands: np.ndarray, numbers: Numbering, area: np.ndarray, stiffness_pa_per_m: tuple[float, float]) -> None:
    """Couple panel and strip through a layer that gives; ``area`` is the mass matrix of the glued nodes."""
    for direction, stiffness in enumerate(stiffness_pa_per_m):
        sides = np.concatenate([numbers.glue_panel[direction], numbers.glue_strip[direction]])
        coupled = np.kron([[1.0, -1.0], [-1.0, 1.0]], stiffness * area)
        row, column = np.nonzero((sides[:, None] < numbers.size) & (sides[:, None] >= sides))
        bands[sides[column], sides[row] - sides[column]] += coupled[row, column]


def unfold(border: np.ndarray, condensed: Condensed, order: int, x: int, y: int) -> np.ndarray:
    """Displacements (2, x nodes, y nodes) of one rectangle of x by y elements from those on its elements' borders."""
    plan = templates(order)
    inner = condensed.back[..., -1] - (condensed.back[..., :-1] @ border[..., None])[..., 0]
    local = np.empty((x * y, plan.order.size))
    local[:, plan.order] = np.concatenate([inner, border], axis=1)
    local = local.reshape(x, y, 2, order + 1, order + 1)
    whole = np.empty((2, x * order + 1, y * order + 1))
    for i in range(x):
        for j in range(y):
            whole[:, i * order : (i + 1) * order + 1, j * order : (j + 1) * order + 1] = local[i, j]
    return whole
