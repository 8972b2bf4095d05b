"""How firmly a way holds, and whether the stress model warns, over widths and airs that slide.

Both come from solvers that are too dear for every move of a slider, so they are asked at a few points and carried by
a polynomial: the one place where a number of a way is fitted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..restraint.measures import WORRYING_CHANCE
from ..restraint.normal import normal_score
from ..words.decided import Sliding
from .held import Held, plane_field
from .piece import Allowances, Piece
from .way import Way

Spans = tuple[tuple[float, float], ...]

SHARE_ORDERS, SCORE_ORDERS = (6,), (8, 8)
_TINY = 1e-12


@dataclass(frozen=True)
class Fitted:
    """A smooth function of numbers, each within its span, as a series of Chebyshev polynomials; by value."""

    spans: Spans
    terms: tuple[tuple[tuple[int, ...], float], ...]

    def __call__(self, *at: Sliding) -> Sliding:
        places = [2.0 * (x - low) / (high - low) - 1.0 for x, (low, high) in zip(at, self.spans, strict=True)]
        most = [max((orders[k] for orders, _ in self.terms), default=0) for k in range(len(places))]
        powers = [_polynomials(place, order) for place, order in zip(places, most, strict=True)]
        total: Sliding = 0.0
        for orders, coefficient in self.terms:
            term: Sliding = coefficient
            for of, order in zip(powers, orders, strict=True):
                term = term * of[order] if order else term
            total = total + term
        return total


def fitted(
    function: Callable[..., np.ndarray], spans: Spans, own: Sequence[float], value: float, orders: tuple[int, ...]
) -> Fitted:
    """A function of as many arrays as there are ``spans``, moved so that it has ``value`` at ``own``.

    >>> fitted(lambda x: x * x, ((0.0, 2.0),), (1.5,), 2.25, (4,))(0.5)
    0.25
    """
    axes = [np.cos(np.pi * (np.arange(count) + 0.5) / count) for count in orders]
    points = [low + (high - low) * 0.5 * (axis + 1.0) for axis, (low, high) in zip(axes, spans, strict=True)]
    table = function(*(grid.ravel() for grid in np.meshgrid(*points, indexing="ij"))).reshape(orders)
    for place, axis in enumerate(axes):
        fit = 2.0 / len(axis) * np.cos(np.outer(np.arange(len(axis)), np.arccos(axis)))
        fit[0] /= 2.0
        table = np.moveaxis(np.tensordot(fit, table, (1, place)), 0, place)
    table = np.round(table, 12)
    first = Fitted(spans, _terms(table))
    table[(0,) * len(orders)] += value - first(*own)
    return Fitted(spans, _terms(table))


def _terms(table: np.ndarray) -> tuple[tuple[tuple[int, ...], float], ...]:
    return tuple((place, float(value)) for place, value in np.ndenumerate(table) if abs(value) > _TINY)


def _polynomials(place: Sliding, order: int) -> list[Sliding]:
    """The first Chebyshev polynomials at a place from -1 to 1, each from the two before it."""
    found: list[Sliding] = [1.0, place]
    while len(found) <= order:
        found.append(2.0 * place * found[-1] - found[-2])
    return found


def held_by(way: Way, piece: Piece) -> Held:
    """What holds a piece built that way, by value: without the functions of the stress model."""
    if not way.holds:
        return Held(0.0)
    return replace(
        way.holding(piece, Allowances()) if way.holding else plane_field(piece), through_year=None, panel=None
    )


def share_over_width(way: Way, piece: Piece, widths_m: tuple[float, float]) -> Fitted:
    """The share of the movement that a way holds, over the width of the piece.

    >>> from woodlib.ways.registry import reference_way
    >>> seat = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    >>> round(share_over_width(reference_way(), seat, (0.4, 0.6))(seat.width_m), 2)
    0.78
    """

    def share(width_m: float) -> float:
        sized = replace(piece, width_m=width_m)
        return (way.holding(sized, Allowances()) if way.holding else plane_field(sized)).share

    if not way.holds:
        return Fitted((widths_m,), ())
    own = piece.width_m
    return fitted(lambda widths: np.array([share(w) for w in widths]), (widths_m,), (own,), share(own), SHARE_ORDERS)


def crack_score(
    piece: Piece,
    stock_mc_percent: float,
    year_mc_percent: Sequence[float],
    spans: Spans,
    own: Sequence[float],
    emc: Callable[..., tuple[np.ndarray, np.ndarray]],
) -> Fitted | None:
    """The stress model's warning over the air of a house, or None where the plane field does not fit the piece.

    It is the normal score of the likely chance of a crack, from ``WORRYING_SCORE`` on a warning. ``spans`` hold the
    humidities of the driest and the dampest month, ``own`` those of the house, where it says what the verdict on the
    year ``year_mc_percent`` says; ``emc(driest_rh, dampest_rh)`` the moistures they lead to. It is worked out for the
    piece's own width, which hardly changes it.
    """
    held = plane_field(piece)
    if held.panel is None or held.through_year is None:
        return None
    panel, chance = held.panel, held.through_year(stock_mc_percent, year_mc_percent).chance

    def score(*humidities: np.ndarray) -> np.ndarray:
        driest, dampest = emc(*humidities)
        chances = panel.chances(stock_mc_percent, np.stack([dampest, driest]))
        return score_of(chances.sound.likely)

    return fitted(score, spans, own, float(score_of(chance.sound.likely)), SCORE_ORDERS)


def score_of(chance: float | np.ndarray) -> np.ndarray:
    """Chances below one in a hundred thousand are all the same to a maker, and their score would run away."""
    return np.vectorize(normal_score, otypes=[float])(np.clip(chance, 1e-5, 1.0 - 1e-5))


WORRYING_SCORE = float(score_of(WORRYING_CHANCE))
