"""Movement as a slider needs it: kinks kept in sight, and a range that changes smoothly and costs little.

:func:`decided_strain` is ``movement_strain`` with its seams at 6 %, 14 % and fibre saturation written as decisions,
so that a page without Python can repeat them. :func:`moment_margins` is a third way to a range, beside the fixed
samples and the first order of ``spread``: exact moments of the movement, turned into quantiles. It keeps what is
lopsided, has no kinks, and takes tens of microseconds.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np

from ..words.decided import Decided, larger, smaller
from .coefficients import FIBRE_SATURATION_PERCENT, LINEAR_FROM_PERCENT, LINEAR_TO_PERCENT
from .spread import NINETY_PERCENT_HALF_WIDTH, USUAL_DOUBTS, Doubts
from .wood import Wood


def decided_strain(
    coefficient: float,
    shrinkage: float,
    mc_from: float,
    mc_to: float,
    fibre_saturation: float = FIBRE_SATURATION_PERCENT,
) -> Decided:
    """Strain along one axis, the same number as ``movement_strain``, remembered with its decisions; scalars only.

    ``coefficient`` per % MC, ``shrinkage`` green to oven-dry as a fraction, moistures in %. Positive when the wood grows.

    >>> round(float(decided_strain(0.00365, 0.105, 9, 4)), 5)  # leaves the window at 6 %
    -0.01851
    """
    start, end = smaller(mc_from, fibre_saturation), smaller(mc_to, fibre_saturation)
    enter, leave = (smaller(larger(m, LINEAR_FROM_PERCENT), LINEAR_TO_PERCENT) for m in (start, end))
    dry = fibre_saturation * (1.0 - shrinkage)
    # Outside the window a size at moisture M is proportional to dry + shrinkage M.
    sizes = (dry + shrinkage * moisture for moisture in (enter, end, start, leave))
    enter_size, end_size, start_size, leave_size = sizes
    outside = enter_size * end_size / (start_size * leave_size)
    return outside * (1.0 + coefficient * (leave - enter)) - 1.0


def _normal_moments(mean, deviation) -> tuple:
    """E[x], E[x^2], E[x^3], E[x^4] of a normal number."""
    square, variance = mean**2, deviation**2
    return (
        mean,
        square + variance,
        mean * (square + 3.0 * variance),
        square**2 + 6.0 * square * variance + 3.0 * variance**2,
    )


def _ring_moments(radial, tangential, ring_angle_rad, doubt_rad: float) -> tuple:
    """The same for the rotated coefficient when the ring angle lies anywhere within ``doubt_rad``.

    With C = a + b cos 2t the mean of cos 2nt over an even spread of half width h is cos(2nt) sin(2nh)/(2nh).
    """
    a, b = 0.5 * (tangential + radial), 0.5 * (tangential - radial)
    c1, c2, c3, c4 = (np.cos(2 * n * ring_angle_rad) * np.sinc(2 * n * doubt_rad / np.pi) for n in (1, 2, 3, 4))
    square, cube, fourth = 0.5 * (1.0 + c2), 0.25 * (3.0 * c1 + c3), 0.125 * (3.0 + 4.0 * c2 + c4)
    return (
        a + b * c1,
        a**2 + 2.0 * a * b * c1 + b**2 * square,
        a**3 + 3.0 * a**2 * b * c1 + 3.0 * a * b**2 * square + b**3 * cube,
        a**4 + 4.0 * a**3 * b * c1 + 6.0 * a**2 * b**2 * square + 4.0 * a * b**3 * cube + b**4 * fourth,
    )


def _quantiles(moments: Iterable, scores: tuple[float, ...]) -> Iterator:
    """Quantiles at normal ``scores`` from raw moments, by the expansion of Cornish and Fisher to the fourth moment."""
    m1, m2, m3, m4 = moments
    variance = m2 - m1**2
    deviation = np.sqrt(variance)
    skew = (m3 - 3.0 * m1 * m2 + 2.0 * m1**3) / (variance * deviation)
    excess = (m4 - 4.0 * m1 * m3 + 6.0 * m1**2 * m2 - 3.0 * m1**4) / variance**2 - 3.0
    for z in scores:
        bent = (z**2 - 1.0) * skew / 6.0 + (z**3 - 3.0 * z) * excess / 24.0 - (2.0 * z**3 - 5.0 * z) * skew**2 / 36.0
        yield m1 + deviation * (z + bent)


def moment_margins(
    wood: Wood, ring_angle_rad, mc_difference_percent, air_percent, doubts: Doubts = USUAL_DOUBTS
) -> tuple:
    """How far below and above the best guess nine cases in ten reach: two strains, both counted positive.

    ``mc_difference_percent`` dampest less driest; ``air_percent`` within which nine in ten of that *difference* lie,
    above zero: ``sqrt(2) * doubts.air_percent`` where dry and damp air are doubted independently. All but ``wood`` and
    ``doubts`` broadcast; ring angle and difference may be zero, the doubts of species and air not both.

    The movement is taken as a product of three independent numbers: how this board differs from its species (normal),
    the coefficient at its ring angle (even), the change of moisture (normal). Moments of a product multiply. The
    handbook's coefficient is used throughout, so outside 6 to 14 % MC the margins (not the best guess) are off by the
    few percent by which the total-shrinkage form is steeper. Expansion: Cornish and Fisher 1938 (from memory); within
    3 % of the fixed samples of ``sampled_range``.

    >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> [round(float(margin), 4) for margin in moment_margins(white_ash, 0.0, 4.0, 2**0.5)]
    [0.0045, 0.005]
    """
    radial, tangential = wood.radial_coefficient, wood.tangential_coefficient
    coefficient = tangential * np.cos(ring_angle_rad) ** 2 + radial * np.sin(ring_angle_rad) ** 2
    factors = (
        _normal_moments(1.0, doubts.species_share),
        _ring_moments(radial, tangential, ring_angle_rad, np.radians(doubts.ring_angle_deg)),
        _normal_moments(mc_difference_percent, air_percent / NINETY_PERCENT_HALF_WIDTH),
    )
    moments = (board * rings * air for board, rings, air in zip(*factors, strict=True))
    low, high = _quantiles(moments, (-NINETY_PERCENT_HALF_WIDTH, NINETY_PERCENT_HALF_WIDTH))
    mid = coefficient * mc_difference_percent
    return mid - low, high - mid
