"""The numbers of crossing the grain as sliders need them: sizes, the year, and the woods, made smooth.

A page that slides without Python multiplies these numbers itself, so each of them hangs on as few sliders as it can: a
moisture and a size on one humidity each, the grip on two sizes (:mod:`.crossing_panels`), and everything else is
arithmetic on decided numbers, which a page repeats. The tests hold the result against
:func:`woodlib.restraint.held.held_panel`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

import numpy as np
from numpy.polynomial import Chebyshev, Polynomial

from ..air.sorption import sorption_percent
from ..movement.wood import Wood, wood_of
from ..restraint.assumptions import assumption
from ..restraint.elastic import ElasticConstants, elastic_constants
from ..restraint.gathered import first_share
from ..restraint.relaxation import relaxed_path_pa
from ..units.exact import INCH_M
from ..words.decided import Decided, Sliding, in_sight

LENGTH_M, THICKNESS_M = 44 * INCH_M, 0.875 * INCH_M  # of the panel
WIDTHS_M, BORDERS_M, BORDER_THICKNESSES_M = (
    (10 * INCH_M, 30 * INCH_M),
    (1 * INCH_M, 5 * INCH_M),
    (0.5 * INCH_M, 1.25 * INCH_M),
)
DRIEST_RH, DAMPEST_RH = (15.0, 45.0), (50.0, 80.0)
ROOM_C = 21.0
RINGS_DEG = {"flatsawn": 0.0, "riftsawn": 45.0, "quartersawn": 90.0}

SWINGS_PERCENT = (0.7, 12.6)  # points of moisture between the dampest and the driest month, at most and at least
_LEFT_ORDER = 8


def polynomial(number: Any, coefficients: Sequence[float]) -> Any:
    """Powers of a number, lowest first, added up."""
    total: Any = float(coefficients[-1])
    for coefficient in reversed(coefficients[:-1]):
        total = number * total + float(coefficient)
    return total


def scaled(places, ends: tuple[float, float]):
    """Places on -1 to 1, moved to between two ends."""
    return ends[0] + (ends[1] - ends[0]) * 0.5 * (places + 1.0)


def places(count: int) -> np.ndarray:
    """Chebyshev places on -1 to 1, shape (count,)."""
    return np.cos(np.pi * (np.arange(count) + 0.5) / count)


@dataclass(frozen=True)
class Season:
    """What the air decides: moistures in %, free strains, and the year's tension.

    ``swing_percent`` in points of moisture and ``swing`` as strain: what panel and border differ by from the dampest to
    the driest month; ``panel_swing`` the panel's own. ``across``, ``along`` from glue-up to the driest month.
    ``relaxed`` is tension per unit of stiffness: expected, lowest, highest.
    """

    dry_mc: Decided
    damp_mc: Decided
    swing_percent: Decided
    swing: Decided
    panel_swing: Decided
    across: Decided
    along: Decided
    relaxed: tuple[Decided, Decided, Decided]

    @property
    def gathered(self) -> Sliding:
        """Strain that a rigid border would make the panel gather in tension, glued up halfway."""
        rate = assumption("relaxation_rate").middle
        return self.swing * first_share(self.swing_percent, self.swing_percent * 0.5, rate)

    @property
    def misfit(self) -> Decided:
        """What the panel falls short of its border in the driest month, per unit of width."""
        return self.swing * 0.5


@dataclass(frozen=True, eq=False)
class CutWood:
    """One wood, cut one way: what it is made of, and how its size follows the air."""

    species: str
    ring_angle_deg: float
    elastic: ElasticConstants
    wood: Wood
    modulus_pa: float
    strength_pa: float

    def growth(self, mc_from: Sliding, mc_to: Sliding) -> tuple[Sliding, Sliding]:
        """Logarithm of the size across and along at one moisture over that at another."""
        along, radial, tangential = self.wood.axis_strains(mc_from, mc_to)
        flat = np.cos(np.radians(self.ring_angle_deg)) ** 2
        return np.log1p(tangential * flat + radial * (1.0 - flat)), np.log1p(along)

    @property
    def misfit_per_percent(self) -> float:
        """Strain for each point of moisture, over the whole of both spans."""
        dry, damp = moistures(DRIEST_RH[0], DAMPEST_RH[1])
        across, along = self.growth(dry, damp)
        return float((across - along) / (damp - dry))

    def season(self, driest_rh: Sliding, dampest_rh: Sliding) -> Season:
        """The numbers of one house; glued up halfway through the movement of its year."""
        dry, damp = map(in_sight, moistures(driest_rh, dampest_rh))
        across, along = self.growth(dry, damp)
        swing, points = across - along, damp - dry
        relaxed = tuple(swing * polynomial(points, row) for row in shares_left())
        return Season(dry, damp, points, swing, across, across * -0.5, along * -0.5, relaxed)


def moistures(driest_rh: Sliding, dampest_rh: Sliding) -> tuple[Sliding, Sliding]:
    """Moisture of the wood in the driest and the dampest month, %."""
    return sorption_percent(ROOM_C, driest_rh), sorption_percent(ROOM_C, dampest_rh)


@cache
def shares_left() -> tuple[tuple[float, ...], ...]:
    """Share of the year's elastic tension that is left in the driest month: expected, lowest, highest.

    Powers of the swing in points of moisture. Relaxation hangs on how far the moisture goes, so that all woods share
    these; glued up halfway, later years never pull harder than the first.
    """
    swing = scaled(places(24), SWINGS_PERCENT)
    rate, share = assumption("relaxation_rate"), assumption("delayed_share")
    rates, shares = (np.array([entry.middle, entry.high, entry.low]) for entry in (rate, share))
    left = np.array([left_after(points, rates, shares) for points in swing])
    return tuple(powers(swing, column, _LEFT_ORDER) for column in left.T)


def left_after(points: float, rates, shares) -> np.ndarray:
    """Tension in the driest month over the elastic tension of the whole swing, for rates and shares alike in shape."""
    path = half_year(points)
    return relaxed_path_pa(path, (path - path[0]) / points, 1.0, rates, shares)[-1]


def half_year(points: float) -> np.ndarray:
    """Moisture at glue-up, in the dampest and in the driest month, %; only the differences count."""
    return 9.0 + points * np.array([0.0, 0.5, -0.5])


def powers(where: np.ndarray, values: np.ndarray, order: int) -> tuple[float, ...]:
    """Coefficients of a polynomial through values, lowest first."""
    return tuple(Chebyshev.fit(where, values, order).convert(kind=Polynomial).coef.tolist())


@lru_cache(maxsize=64)
def cut_wood(species: str, rings: str) -> CutWood:
    """What is worked out once for a wood and a cut."""
    elastic = elastic_constants(species)
    ring = float(np.radians(RINGS_DEG[rings]))
    modulus, strength = elastic.panel(ring).modulus_x_pa, elastic.strength_across_pa(ring)
    return CutWood(species, RINGS_DEG[rings], elastic, wood_of(species), modulus, strength)
