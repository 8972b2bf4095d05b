"""Lines of high-order elements: nodes, mass and stiffness in one direction.

A rectangle's matrices are products of its two lines' matrices, so a plane field needs nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, cached_property
from typing import NamedTuple

import numpy as np
from numpy.polynomial import legendre


class Reference(NamedTuple):
    """One element of length 2: its nodes, and its matrices by exact quadrature."""

    nodes: np.ndarray
    to_modes: np.ndarray  # Legendre coefficients of each nodal function
    mass: np.ndarray
    stiffness: np.ndarray
    mixed: np.ndarray  # integral of (function i)' times function j


@cache
def _differentiate(order: int) -> np.ndarray:
    """Legendre coefficients of the derivative, from those of a function."""
    rows = [np.pad(legendre.legder(row), (0, order + 1))[: order + 1] for row in np.eye(order + 1)]
    return np.stack(rows, axis=1)


@cache
def reference_element(order: int) -> Reference:
    """Lobatto element of one polynomial order.

    Parameters
    ----------
    order : int
        Polynomial order, 1 or more.

    Returns
    -------
    Reference
        Nodes in [-1, 1] and the matrices of a length-2 element.

    Examples
    --------
    >>> reference_element(2).nodes.tolist()
    [-1.0, 0.0, 1.0]
    >>> round(float(reference_element(5).mass.sum()), 12)
    2.0

    Notes
    -----
    Nodes are the zeros of (1 - x^2) P_n'(x); Gauss quadrature with n + 1 points integrates the products exactly.
    Lobatto nodes keep the interpolation well conditioned (Karniadakis & Sherwin, Spectral/hp Element Methods, 2005,
    from memory).
    """
    highest = np.eye(order + 1)[order]
    # The zeros are real; newer NumPy hands them out as complex numbers all the same.
    nodes = np.concatenate([[-1.0], np.real(legendre.legroots(legendre.legder(highest))), [1.0]]) + 0.0
    to_modes = np.linalg.inv(legendre.legvander(nodes, order))
    points, weights = legendre.leggauss(order + 1)
    value = legendre.legvander(points, order) @ to_modes
    slope = legendre.legvander(points, order) @ _differentiate(order) @ to_modes
    return Reference(
        nodes, to_modes, (value.T * weights) @ value, (slope.T * weights) @ slope, (slope.T * weights) @ value
    )


def _scatter(element_matrix: np.ndarray, count: int, order: int) -> np.ndarray:
    """Place one element's matrix at each of ``count`` places along a line: shape (count, n, n)."""
    placed = np.zeros((count, count * order + 1, count * order + 1))
    for index in range(count):
        here = slice(index * order, index * order + order + 1)
        placed[index, here, here] = element_matrix
    return placed


@cache
def _templates(count: int, order: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    element = reference_element(order)
    return (
        _scatter(element.mass, count, order),
        _scatter(element.stiffness, count, order),
        _scatter(element.mixed, count, order).sum(axis=0),
    )


@cache
def _gauss_templates(count: int, order: int, points_per_element: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    element = reference_element(order)
    points, weights = legendre.leggauss(points_per_element)
    value = np.zeros((count, points_per_element, count * order + 1))
    slope = np.zeros_like(value)
    for index in range(count):
        here = slice(index * order, index * order + order + 1)
        value[index, :, here] = legendre.legvander(points, order) @ element.to_modes
        slope[index, :, here] = legendre.legvander(points, order) @ _differentiate(order) @ element.to_modes
    return value.reshape(-1, count * order + 1), slope.reshape(-1, count * order + 1), np.tile(weights, count)


@dataclass(frozen=True)
class Line:
    """A line cut into elements at ``breaks`` (m, rising), each of polynomial ``order``."""

    breaks: tuple[float, ...]
    order: int

    @cached_property
    def lengths(self) -> np.ndarray:
        """Element lengths, m."""
        return np.diff(self.breaks)

    @property
    def count(self) -> int:
        """Number of elements."""
        return len(self.breaks) - 1

    @property
    def size(self) -> int:
        """Number of nodes."""
        return self.count * self.order + 1

    @cached_property
    def nodes(self) -> np.ndarray:
        """Node positions, m."""
        inner = reference_element(self.order).nodes[1:]
        middles = np.add(self.breaks[:-1], self.lengths / 2)
        placed = middles[:, None] + self.lengths[:, None] / 2 * inner
        return np.concatenate([[self.breaks[0]], placed.ravel()])

    @cached_property
    def mass(self) -> np.ndarray:
        """Integrals of function i times function j, m."""
        return self.mass_of(self.count)

    def mass_of(self, elements: int) -> np.ndarray:
        """The same, over the first ``elements`` elements only."""
        return np.tensordot(self.lengths[:elements] / 2, _templates(self.count, self.order)[0][:elements], 1)

    @cached_property
    def stiffness(self) -> np.ndarray:
        """Integrals of (function i)' times (function j)', 1/m."""
        return np.tensordot(2 / self.lengths, _templates(self.count, self.order)[1], 1)

    @property
    def mixed(self) -> np.ndarray:
        """Integrals of (function i)' times function j."""
        return _templates(self.count, self.order)[2]

    def gauss(self, points_per_element: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Values, slopes (1/m) and weights (m) at Gauss points, element by element."""
        value, slope, weight = _gauss_templates(self.count, self.order, points_per_element)
        half = np.repeat(self.lengths / 2, points_per_element)
        return value, slope / half[:, None], weight * half

    def at(self, positions_m: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Values and slopes (1/m) of every nodal function at any positions; shape (positions, nodes).

        >>> line = Line((0.0, 1.0, 3.0), 4)
        >>> value, slope = line.at(np.array([0.5, 2.5]))
        >>> (value @ line.nodes**3).round(12).tolist(), (slope @ line.nodes**3).round(9).tolist()
        ([0.125, 15.625], [0.75, 18.75])
        """
        positions = np.asarray(positions_m, float)
        element = np.clip(np.searchsorted(self.breaks, positions, side="right") - 1, 0, self.count - 1)
        half = self.lengths[element] / 2
        local = (positions - np.asarray(self.breaks)[element]) / half - 1.0
        to_modes = reference_element(self.order).to_modes
        columns = element[:, None] * self.order + np.arange(self.order + 1)
        value = np.zeros((positions.size, self.size))
        slope = np.zeros_like(value)
        modes = legendre.legvander(local, self.order)
        np.put_along_axis(value, columns, modes @ to_modes, axis=1)
        table = modes @ (_differentiate(self.order) @ to_modes)
        np.put_along_axis(slope, columns, table / half[:, None], axis=1)
        return value, slope
