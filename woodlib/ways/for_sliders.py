"""The numbers of a way to build as a slider needs them: smooth in the air of the house and in the width.

The ranges of ``travel`` are quantiles of fixed samples. They rise and fall with the air in many tiny steps of slope,
which nobody can see in wood but which a table of smooth numbers cannot hold. Here the same numbers are asked at a grid
of airs and carried by a polynomial in both humidities, moved so that it meets the exact numbers at the brief's own
air. The tests bound how far the two differ elsewhere: less than 0.4 mm on a metre of width, which is the coarseness of
the samples themselves.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from ..moisture.equilibrium import emc_percent
from ..movement.spread import Doubts
from ..movement.wood import Wood
from ..restraint.measures import WORRYING_CHANCE
from ..restraint.normal import normal_score
from .held import plane_field
from .piece import Allowances, Piece
from .travel import RANGE, Quantities, travel_quantities
from .way import Way

HELD_RULE = plane_field
"""How much a glued border holds back, for everything that is shown and sent: the one place to put another rule."""

ORDERS = 7  # of the polynomial in each humidity
_NODES = 12
_LENGTHS = ("to_driest", "to_dampest", "swing", "narrowing", "widening")
_STRAINS = ("stretch", "swing_strain")
_NAMES = tuple(f"{name}_{end}" for name in (*_LENGTHS, *_STRAINS) for end in RANGE) + ("driest_mc", "dampest_mc")
_PER_WIDTH = len(_LENGTHS) * len(RANGE)


@dataclass(frozen=True)
class Airs:
    """The air of one month: its temperature, its humidity by the brief, and the humidities a slider may reach, in %."""

    temperature_c: float
    rh_percent: float
    lowest_percent: float
    highest_percent: float


@dataclass(frozen=True)
class Travels:
    """What decides how far a width goes; call it with two humidities and a width for the numbers of ``travel``.

    >>> ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> travels = Travels(ash, ash, 0.0, 8.0, Airs(20, 30, 15, 45), Airs(24, 60, 45, 80))
    >>> [round(1000 * travels(30, 60, 0.5)[name], 2) for name in ("narrowing_mid", "widening_mid", "swing_high")]
    [2.48, 3.93, 9.03]
    """

    wood: Wood
    border_wood: Wood
    ring_angle_rad: float
    stock_mc_percent: float
    driest: Airs
    dampest: Airs
    doubts: Doubts = Doubts()

    def __call__(self, driest_rh_percent: float, dampest_rh_percent: float, width_m: float) -> Quantities:
        """The smooth numbers of ``travel_quantities`` and the three moistures, for air within the two spans."""
        table = _table(self)
        values = table @ _powers(self.dampest, dampest_rh_percent) @ _powers(self.driest, driest_rh_percent)
        values[:_PER_WIDTH] *= width_m
        numbers = dict(zip(_NAMES, values.tolist(), strict=True))
        return numbers | {"width": width_m, "stock_mc": self.stock_mc_percent}

    def exact(self, driest_rh_percent: float, dampest_rh_percent: float) -> np.ndarray:
        """The numbers for a width of one metre by ``travel`` itself, in the order of the table."""
        driest = float(emc_percent(self.driest.temperature_c, driest_rh_percent))
        dampest = float(emc_percent(self.dampest.temperature_c, dampest_rh_percent))
        asked = travel_quantities(
            self.wood, self.border_wood, self.ring_angle_rad, 1.0, self.stock_mc_percent, driest, dampest, self.doubts
        )
        return np.array([*(asked[name] for name in _NAMES[:-2]), driest, dampest])


def held_shares(piece: Piece, lowest_m: float, highest_m: float, way: Way, orders: int = 6) -> tuple[float, ...]:
    """The share that a way holds, over the width, as Chebyshev coefficients on ``lowest_m`` to ``highest_m``.

    >>> from woodlib.ways.registry import reference_way
    >>> round(held_shares(Piece("white oak", "20 in", "44 in", "7/8 in", "2 in"), 0.4, 0.6, reference_way())[0], 2)
    0.78
    """
    if not way.holds:
        return (0.0,)

    def share(width_m: float) -> float:
        sized = replace(piece, width_m=width_m)
        held = HELD_RULE(sized)
        return (way.holding(sized, held, Allowances()) if way.holding else held).share

    places = np.cos(np.pi * (np.arange(orders) + 0.5) / orders)
    widths = lowest_m + (highest_m - lowest_m) * 0.5 * (places + 1.0)
    found = np.polynomial.chebyshev.chebfit(places, [share(float(width)) for width in widths], orders - 1)
    # Moved to meet the piece's own width exactly: one handout must not tell two numbers for one piece.
    own = 2.0 * (piece.width_m - lowest_m) / (highest_m - lowest_m) - 1.0
    found[0] += share(piece.width_m) - np.polynomial.chebyshev.chebval(own, found)
    return tuple(float(value) if abs(value) > 1e-12 else 0.0 for value in np.round(found, 14))


@dataclass(frozen=True)
class StressScore:
    """The stress model's warning as one smooth number: the normal score of the likely chance of a crack.

    ``table`` holds Chebyshev coefficients in both humidities; ``WORRYING_SCORE`` is where the warning begins.
    """

    driest: Airs
    dampest: Airs
    table: tuple[tuple[float, ...], ...]

    def __call__(self, driest_rh_percent: float, dampest_rh_percent: float) -> float:
        """The score for air within the two spans."""
        table = np.array(self.table)
        return float(_powers(self.driest, driest_rh_percent) @ table @ _powers(self.dampest, dampest_rh_percent))


def stress_score(piece: Piece, travels: Travels, year_mc_percent: Sequence[float]) -> StressScore | None:
    """The warning of the stress model over the air of the house, or None where no strength is printed for the wood.

    It is worked out for the piece's own width, since width hardly changes it, and moved so that at the brief's own air
    it says what the verdict on the whole year ``year_mc_percent`` says.
    """
    held = HELD_RULE(piece)
    own = held.through_year(travels.stock_mc_percent, year_mc_percent).chance if held.through_year else None
    if own is None or held.panel is None:
        return None
    places = np.cos(np.pi * (np.arange(_NODES) + 0.5) / _NODES)
    dry, damp = (emc_percent(airs.temperature_c, _within(airs, places)) for airs in (travels.driest, travels.dampest))
    years = np.stack([np.tile(damp, _NODES), np.repeat(dry, _NODES)])
    chances = held.panel.chances(travels.stock_mc_percent, years)
    values = np.array([_score(chance) for chance in chances.sound.likely]).reshape(_NODES, _NODES)
    fit = _fit(places)
    table = fit @ values @ fit.T
    met = (
        _powers(travels.driest, travels.driest.rh_percent)
        @ table
        @ _powers(travels.dampest, travels.dampest.rh_percent)
    )
    table[0, 0] += _score(own.sound.likely) - met
    return StressScore(travels.driest, travels.dampest, tuple(map(tuple, np.round(table, 12).tolist())))


def _score(chance: float) -> float:
    # Chances below one in a hundred thousand are all the same to a maker, and their score would run away.
    return normal_score(min(max(chance, 1e-5), 1.0 - 1e-5))


WORRYING_SCORE = _score(WORRYING_CHANCE)


def share_at(shares: tuple[float, ...], width_m: float, lowest_m: float, highest_m: float) -> float:
    """The held share at a width, from :func:`held_shares`."""
    return float(np.polynomial.chebyshev.chebval(2.0 * (width_m - lowest_m) / (highest_m - lowest_m) - 1.0, shares))


def _powers(airs: Airs, rh_percent: float, orders: int = ORDERS) -> np.ndarray:
    """Chebyshev polynomials at one humidity."""
    place = 2.0 * (rh_percent - airs.lowest_percent) / (airs.highest_percent - airs.lowest_percent) - 1.0
    return np.cos(np.arange(orders) * np.arccos(min(max(place, -1.0), 1.0)))


def _within(airs: Airs, places: np.ndarray) -> np.ndarray:
    """Humidities at places from -1 to 1 of a span."""
    return airs.lowest_percent + (airs.highest_percent - airs.lowest_percent) * 0.5 * (places + 1.0)


def _fit(places: np.ndarray) -> np.ndarray:
    """From values at Chebyshev points to the first coefficients, shape (orders, points)."""
    fit = 2.0 / len(places) * np.cos(np.outer(np.arange(ORDERS), np.arccos(places)))
    fit[0] /= 2.0
    return fit


@lru_cache(maxsize=32)
def _table(travels: Travels) -> np.ndarray:
    """Coefficients, shape (numbers, driest orders, dampest orders), moved to meet the brief's own air exactly."""
    places = np.cos(np.pi * (np.arange(_NODES) + 0.5) / _NODES)
    spans = [_within(airs, places) for airs in (travels.driest, travels.dampest)]
    values = np.array([[travels.exact(dry, damp) for damp in spans[1]] for dry in spans[0]])
    fit = _fit(places)
    table = np.einsum("id,jw,dwq->qij", fit, fit, values)
    own = travels.driest.rh_percent, travels.dampest.rh_percent
    met = table @ _powers(travels.dampest, own[1]) @ _powers(travels.driest, own[0])
    table[:, 0, 0] += travels.exact(*own) - met
    return table
