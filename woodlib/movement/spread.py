"""How sure a movement is: species scatter, ring angle, meter and air, carried through to a range.

The range is a closed form. The doubts multiply: a board's factor, its rings, and the free movement between two moistures,
whose doubt comes from the movement law itself, one standard deviation up and down. It keeps what is lopsided (a
flatsawn board can only move less when its rings tilt), has no kinks but those of the law, and costs five evaluations.
Held against a million random draws over woods, cuts and moistures it is within 2 % of the range's half width nine
times in ten, and within 6 % at worst.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

import numpy as np

from ..door import check_kind, check_moisture, check_number
from ..errors import Problems
from ..units import length_range, read_length
from .board import Board
from .wood import Wood, width_strain

if TYPE_CHECKING:
    from pint import Quantity

    from ..air.year import Year

NINETY_PERCENT_HALF_WIDTH = 1.6448536269514722  # standard deviations between which nine in ten of a normal number lie
LEAST_VARIANCE = 1e-24  # of a strain: where nothing moves there is nothing to divide by


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


def doubts_in(air: Year, meter_percent: float) -> Doubts:
    """The usual doubts in the given air, wider where its year follows from the kind of house: houses differ."""
    return Doubts(
        meter_percent=meter_percent, air_percent=float(np.hypot(Doubts.air_percent, air.houses_differ_percent))
    )


USUAL_DOUBTS = Doubts()
NO_DOUBTS = Doubts(0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Movement:
    """A movement in metres, positive when the wood grows: best guess, and the range that holds nine cases in ten.

    ``mid_m`` is the movement with every input at its best guess, so that it can be checked by hand.

    >>> Movement(-0.0063, -0.0048, -0.0030).text()
    'about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6.5 mm)'
    """

    low_m: float
    mid_m: float
    high_m: float
    remarks: tuple[str, ...] = ()

    @property
    def low(self) -> Quantity:
        """Lower end of the range."""
        return read_length(self.low_m, "m")

    @property
    def mid(self) -> Quantity:
        """Best guess."""
        return read_length(self.mid_m, "m")

    @property
    def high(self) -> Quantity:
        """Upper end of the range."""
        return read_length(self.high_m, "m")

    def text(self, first: str = "customary") -> str:
        """The size of the movement in words, with its range."""
        return length_range(self.low_m, self.mid_m, self.high_m, first)

    def times(self, share: float) -> Movement:
        """The movement of a part of the width, for example half of it."""
        low, high = sorted((self.low_m * share, self.high_m * share))
        return Movement(low, self.mid_m * share, high, self.remarks)


def strain_range(
    wood: Wood,
    ring_angle_rad,
    grain_slope_rad,
    mc_from,
    mc_to,
    doubts: Doubts = USUAL_DOUBTS,
    from_percent=None,
    to_percent=None,
):
    """(low, mid, high) strain across the width; every argument but ``wood`` and ``doubts`` broadcasts.

    ``from_percent`` and ``to_percent`` within which nine in ten of the two moistures lie; left out, the meter's doubt
    for the start and the air's for the end. ``mid`` has every input at its best guess.

    >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> [round(float(e), 4) for e in strain_range(white_ash, 0.0, 0.0, 12, 8)]
    [-0.0159, -0.011, -0.0065]
    """
    start = doubts.meter_percent if from_percent is None else from_percent
    end = doubts.air_percent if to_percent is None else to_percent
    angles = ring_angle_rad, grain_slope_rad
    mid = width_strain(wood, *angles, mc_from, mc_to)
    effects = start_effect(wood, *angles, mc_from, mc_to, start), end_effect(wood, *angles, mc_from, mc_to, end)
    return spread_about(mid, effects, wood, ring_angle_rad, doubts)


def start_effect(wood: Wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, within_percent):
    """What one standard deviation of the moisture at the start does to the strain: half of up less down."""
    step = within_percent / NINETY_PERCENT_HALF_WIDTH
    above, below = (
        width_strain(wood, ring_angle_rad, grain_slope_rad, np.maximum(mc_from + side * step, 0.0), mc_to)
        for side in (1.0, -1.0)
    )
    return 0.5 * (above - below)


def end_effect(wood: Wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, within_percent):
    """The same for the moisture that the wood heads for; never below 0 %."""
    step = within_percent / NINETY_PERCENT_HALF_WIDTH
    above, below = (
        width_strain(wood, ring_angle_rad, grain_slope_rad, mc_from, np.maximum(mc_to + side * step, 0.0))
        for side in (1.0, -1.0)
    )
    return 0.5 * (above - below)


def spread_about(mid, effects, wood: Wood, ring_angle_rad, doubts: Doubts = USUAL_DOUBTS):
    """(low, mid, high) of one board's strain from what its doubtful moistures do to it.

    ``effects`` of the moistures, one standard deviation each.
    """
    if doubts == NO_DOUBTS:
        return mid, mid, mid
    tree, rings = normal_moments(1.0, doubts.species_share**2), ring_moments(wood, ring_angle_rad, doubts)
    return spread_of_product(mid, effects, tuple(a * b for a, b in zip(tree, rings, strict=True)), doubts)


def spread_of_product(mid, effects, board_moments: tuple, doubts: Doubts):
    """(low, mid, high) of a movement that is a board's factor times its free movement; nothing doubted, no range.

    ``board_moments`` raw moments of the factor, whose best guess is 1; ``effects`` as in :func:`spread_about`. Moments
    of a product of independent numbers multiply, and four of them give the quantiles (expansion of Cornish and Fisher
    1938, from memory).
    """
    if doubts == NO_DOUBTS:
        return mid, mid, mid
    free = normal_moments(mid, sum((effect * effect for effect in effects), 0.0))
    low, high = _quantiles(tuple(a * b for a, b in zip(board_moments, free, strict=True)))
    return np.minimum(low, mid), mid, np.maximum(high, mid)


def normal_moments(mean, variance) -> tuple:
    """E[x], E[x^2], E[x^3], E[x^4] of a normal number."""
    square = mean * mean
    return (
        mean,
        square + variance,
        mean * (square + 3.0 * variance),
        square * square + 6.0 * square * variance + 3.0 * variance * variance,
    )


def ring_moments(wood: Wood, ring_angle_rad, doubts: Doubts) -> tuple:
    """The same for the coefficient across the width over its best guess, the ring angle anywhere within its doubt.

    With C = a + b cos 2t the mean of cos 2nt over an even spread of half width h is cos(2nt) sin(2nh)/(2nh).
    """
    a = 0.5 * (wood.tangential_coefficient + wood.radial_coefficient)
    b = 0.5 * (wood.tangential_coefficient - wood.radial_coefficient)
    half = np.radians(doubts.ring_angle_deg)
    c1, c2, c3, c4 = (np.cos(2 * n * ring_angle_rad) * np.sinc(2 * n * half / np.pi) for n in (1, 2, 3, 4))
    square, cube, fourth = 0.5 * (1.0 + c2), 0.25 * (3.0 * c1 + c3), 0.125 * (3.0 + 4.0 * c2 + c4)
    best = a + b * np.cos(2.0 * ring_angle_rad)
    return (
        (a + b * c1) / best,
        (a**2 + 2.0 * a * b * c1 + b**2 * square) / best**2,
        (a**3 + 3.0 * a**2 * b * c1 + 3.0 * a * b**2 * square + b**3 * cube) / best**3,
        (a**4 + 4.0 * a**3 * b * c1 + 6.0 * a**2 * b**2 * square + 4.0 * a * b**3 * cube + b**4 * fourth) / best**4,
    )


def cumulants(moments) -> np.ndarray:
    """The first four cumulants from raw moments: those of independent numbers add.

    >>> cumulants(normal_moments(2.0, 0.25)).tolist()
    [2.0, 0.25, 0.0, 0.0]
    """
    m1, m2, m3, m4 = moments
    return np.array(
        [
            m1,
            m2 - m1**2,
            m3 - 3.0 * m1 * m2 + 2.0 * m1**3,
            m4 - 4.0 * m1 * m3 - 3.0 * m2**2 + 12.0 * m1**2 * m2 - 6.0 * m1**4,
        ]
    )


def raw_moments(summed) -> tuple:
    """Raw moments from cumulants."""
    k1, k2, k3, k4 = summed
    return (
        k1,
        k2 + k1**2,
        k3 + 3.0 * k1 * k2 + k1**3,
        k4 + 4.0 * k1 * k3 + 3.0 * k2**2 + 6.0 * k1**2 * k2 + k1**4,
    )


def _quantiles(moments: tuple) -> tuple:
    """The 5 and 95 % quantiles from raw moments, to the fourth."""
    m1, m2, m3, m4 = moments
    variance = np.maximum(m2 - m1 * m1, LEAST_VARIANCE)
    deviation = np.sqrt(variance)
    skew = (m3 - 3.0 * m1 * m2 + 2.0 * m1 * m1 * m1) / (variance * deviation)
    excess = (m4 - 4.0 * m1 * m3 + 6.0 * m1 * m1 * m2 - 3.0 * m1 * m1 * m1 * m1) / (variance * variance) - 3.0
    z = NINETY_PERCENT_HALF_WIDTH
    lean, tails = (
        (z**2 - 1.0) / 6.0 * skew,
        (z**3 - 3.0 * z) / 24.0 * excess - (2.0 * z**3 - 5.0 * z) / 36.0 * skew * skew,
    )
    return m1 + deviation * (lean - tails - z), m1 + deviation * (lean + tails + z)


def width_movement(board: Board, mc_from: float, mc_to: float, doubts: Doubts = USUAL_DOUBTS) -> Movement:
    """How far a board moves across its width between two moisture contents in %, with its range.

    Raises :class:`InputError` for moistures that cannot be.

    >>> oak = Board("white oak", "20 in", "3/4 in", "44 in")
    >>> width_movement(oak, 8, 11).text()
    'about 1/4 in (6.5 mm), could be 1/8 to 5/16 in (3 to 8 mm)'
    """
    problems = Problems()
    check_kind(problems, "board", board, Board, "Board('white oak', '20 in', '3/4 in', '44 in')")
    check_doubts(problems, doubts)
    check_moisture(problems, "moisture content at the start", mc_from)
    check_moisture(problems, "moisture content at the end", mc_to)
    problems.raise_if_any()
    angles = np.radians(board.ring_angle_deg), np.radians(board.grain_slope_deg)
    strains = strain_range(board.wood, *angles, mc_from, mc_to, doubts)
    low, mid, high = (float(strain) * board.width_m for strain in strains)
    return Movement(low, mid, high, board.wood.remarks)
