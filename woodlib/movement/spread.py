"""How sure a movement is: species scatter, ring angle, meter and air, carried through to a range.

Two ways, same call shape: ``sampled_range`` evaluates the movement at 1021 fixed, evenly spread points of the doubts
and takes the 5 and 95 % quantiles; ``first_order_range`` adds the effects of each doubt in squares. The first keeps
what is lopsided (a flatsawn board can only move less when its rings tilt); the second is exact for small doubts and
needs eleven evaluations, which suits large tables. The points are fixed, so equal inputs give equal answers, and a
range grows smoothly with width and moisture.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import lru_cache

import numpy as np
from scipy.special import ndtri

from ..errors import Problems
from ..units import Quantity, length_range
from .board import Board
from .inputs import check_kind, check_moisture, check_number
from .wood import Wood, width_strain

LOW_QUANTILE, HIGH_QUANTILE = 0.05, 0.95
NINETY_PERCENT_HALF_WIDTH = float(ndtri(HIGH_QUANTILE))  # standard deviations; 1.645
# Chosen by search: normal scores of any two of 23 rows correlate below 0.08.
_POINTS, _GENERATOR, _SHIFT = 1021, 467, 211


@dataclass(frozen=True)
class Doubts:
    """How far the inputs may be off.

    ``species_share`` standard deviation of a board's shrinkage as a share of its species' average, 0.15 (coefficient
    of variation of shrinkage, Wood Handbook chapter 4, from memory). ``ring_angle_deg`` anywhere within this of the
    angle given, 10 (common practice, no source). ``meter_percent`` nine readings in ten within this many points, 1
    (hand-held meter on dry wood; common practice, no source). ``air_percent`` the same for the moisture content the
    wood heads for, 1 (species, extractives and history of wetting spread it by about a point between 30 and 70 % RH;
    from memory).
    """

    species_share: float = 0.15
    ring_angle_deg: float = 10.0
    meter_percent: float = 1.0
    air_percent: float = 1.0

    def __post_init__(self) -> None:
        problems = Problems()
        limits = {"species_share": ("", 0.3), "ring_angle_deg": ("degrees", 45), "meter_percent": ("points", 10)}
        for entry in fields(self):
            unit, highest = limits.get(entry.name, ("points", 10))
            name = f"doubt {entry.name}"
            check_number(problems, name, getattr(self, entry.name), unit, 0, highest, "0 means no doubt at all")
        problems.raise_if_any()


def check_doubts(problems: Problems, doubts: object) -> None:
    """Add a sentence unless these are :class:`Doubts`."""
    check_kind(problems, "doubts", doubts, Doubts, "Doubts(meter_percent=0.5)")


USUAL_DOUBTS = Doubts()
NO_DOUBTS = Doubts(0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Movement:
    """A movement in metres, positive when the wood grows: best guess, and the range that holds nine cases in ten.

    ``mid_m`` is the movement with every input at its best guess, so that it can be checked by hand.

    >>> Movement(-0.0063, -0.0048, -0.0030).text()
    'about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6 mm)'
    """

    low_m: float
    mid_m: float
    high_m: float
    remarks: tuple[str, ...] = ()

    @property
    def low(self) -> Quantity:
        """Lower end of the range."""
        return Quantity(self.low_m, "meter")

    @property
    def mid(self) -> Quantity:
        """Best guess."""
        return Quantity(self.mid_m, "meter")

    @property
    def high(self) -> Quantity:
        """Upper end of the range."""
        return Quantity(self.high_m, "meter")

    def text(self, first: str = "customary") -> str:
        """The size of the movement in words, with its range."""
        return length_range(self.low_m, self.mid_m, self.high_m, first)

    def times(self, share: float) -> Movement:
        """The movement of a part of the width, for example half of it."""
        low, high = sorted((self.low_m * share, self.high_m * share))
        return Movement(low, self.mid_m * share, high, self.remarks)


@dataclass(frozen=True, eq=False)
class DoubtPoints:
    """Values that the doubtful inputs take, point by point; arrays of one length.

    ``factor`` multiplies shrinkage, ``ring_rad`` is added to the ring angle, the others to moisture contents in %.
    The same board value drives every month and every part of one answer.
    """

    factor: np.ndarray
    ring_rad: np.ndarray
    stock_percent: np.ndarray
    dry_air_percent: np.ndarray
    damp_air_percent: np.ndarray


@lru_cache(maxsize=32)
def lattice(dimensions: int) -> np.ndarray:
    """Evenly spread points in the unit cube, shape (dimensions, 1021): a rank-1 lattice, each row a permutation.

    Every coordinate takes the values (k + 1/2)/1021 once; rows are shifted against each other, so that no point holds
    the lowest value of all of them at once.

    >>> lattice(5).shape, round(float(lattice(5).mean()), 12)
    ((5, 1021), 0.5)
    """
    steps = [pow(_GENERATOR, power, _POINTS) for power in range(dimensions)]
    shifts = [(power * power + power) * _SHIFT % _POINTS for power in range(dimensions)]
    places = (np.outer(steps, np.arange(_POINTS)) + np.array(shifts)[:, None]) % _POINTS
    return (places + 0.5) / _POINTS


def _points(doubts: Doubts, normal: np.ndarray, even: np.ndarray) -> DoubtPoints:
    """Points from standard normal scores (rows: board, meter, dry air, damp air) and an even score from -1 to 1."""
    one_in_ten = 1.0 / NINETY_PERCENT_HALF_WIDTH
    return DoubtPoints(
        1.0 + doubts.species_share * normal[0],
        np.radians(doubts.ring_angle_deg) * even,
        doubts.meter_percent * one_in_ten * normal[1],
        doubts.air_percent * one_in_ten * normal[2],
        doubts.air_percent * one_in_ten * normal[3],
    )


def sample_points(doubts: Doubts) -> DoubtPoints:
    """The 1021 fixed points of the doubts, normal for board, meter and air, even for the ring angle."""
    unit = lattice(5)
    return _points(doubts, ndtri(unit[[0, 2, 3, 4]]), 2.0 * unit[1] - 1.0)


def star_points(doubts: Doubts) -> DoubtPoints:
    """One standard deviation up and down along each doubt in turn: ten points for the first-order range."""
    arms = np.concatenate([np.eye(5), -np.eye(5)])
    return _points(doubts, arms[:, [0, 2, 3, 4]].T, arms[:, 1] / np.sqrt(3.0))


def sampled_strain(wood: Wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, share_of_damp, points: DoubtPoints):
    """Strain across the width at every doubt point: shape of the arguments together, then the points.

    ``share_of_damp`` 0 uses the doubt of dry air, 1 that of damp air; the two are independent of each other.
    Moisture below 0 % cannot be: points that would fall there stay at 0.
    """
    ring, slope, start, end, damp = (
        np.asarray(value, dtype=float)[..., None]
        for value in (ring_angle_rad, grain_slope_rad, mc_from, mc_to, share_of_damp)
    )
    air = points.dry_air_percent * (1.0 - damp) + points.damp_air_percent * damp
    start, end = np.maximum(start + points.stock_percent, 0.0), np.maximum(end + air, 0.0)
    return width_strain(wood, ring + points.ring_rad, slope, start, end, points.factor)


def quantile_range(mid, samples):
    """(low, mid, high): the 5 and 95 % quantiles over the last axis, widened where the best guess lies outside."""
    low, high = np.quantile(samples, (LOW_QUANTILE, HIGH_QUANTILE), axis=-1)
    return np.minimum(low, mid), mid, np.maximum(high, mid)


def sampled_range(
    wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, doubts: Doubts = USUAL_DOUBTS, share_of_damp=0.0
):
    """(low, mid, high) strain across the width by fixed samples; every argument but wood and doubts broadcasts.

    >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> [round(float(e), 4) for e in sampled_range(white_ash, 0.0, 0.0, 12, 8)]
    [-0.0158, -0.011, -0.0065]
    """
    mid = width_strain(wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to)
    points = sample_points(doubts)
    return quantile_range(
        mid, sampled_strain(wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, share_of_damp, points)
    )


def first_order_range(
    wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, doubts: Doubts = USUAL_DOUBTS, share_of_damp=0.0
):
    """(low, mid, high) strain by first-order propagation: mid -+ 1.645 sqrt(sum of squared effects).

    Each effect is half the difference between one standard deviation up and down. It misses what is lopsided.

    >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> [round(float(e), 4) for e in first_order_range(white_ash, 0.0, 0.0, 12, 8)]
    [-0.0157, -0.011, -0.0062]
    """
    mid = width_strain(wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to)
    arms = sampled_strain(wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, share_of_damp, star_points(doubts))
    effects = 0.5 * (arms[..., :5] - arms[..., 5:])
    half = NINETY_PERCENT_HALF_WIDTH * np.sqrt(np.sum(effects**2, axis=-1))
    return mid - half, mid, mid + half


def width_movement(board: Board, mc_from: float, mc_to: float, doubts: Doubts = USUAL_DOUBTS) -> Movement:
    """How far a board moves across its width between two moisture contents in %, with its range.

    Raises :class:`InputError` for moistures that cannot be.

    >>> oak = Board("white oak", "20 in", "3/4 in", "44 in")
    >>> width_movement(oak, 8, 11).text()
    'about 1/4 in (6 mm), could be 1/8 to 5/16 in (3 to 9 mm)'
    """
    problems = Problems()
    check_kind(problems, "board", board, Board, "Board('white oak', '20 in', '3/4 in', '44 in')")
    check_doubts(problems, doubts)
    check_moisture(problems, "moisture content at the start", mc_from)
    check_moisture(problems, "moisture content at the end", mc_to)
    problems.raise_if_any()
    angles = np.radians(board.ring_angle_deg), np.radians(board.grain_slope_deg)
    strains = sampled_range(board.wood, *angles, mc_from, mc_to, doubts)
    return Movement(*(float(strain) * board.width_m for strain in strains), remarks=board.wood.remarks)
