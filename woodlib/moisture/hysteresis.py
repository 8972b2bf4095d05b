"""Swings between the branches of the isotherm: wood that dries rests damper than wood that wets in the same air.

The two branches lie apart by a constant ratio, the table between them (geometric middle). Between the branches the
resting moisture follows the logarithm u of the table's value by play operators, each of which moves only when u has
pulled it taut by its width; widths are spread evenly from 0 so that a long run in one direction ends exactly on its
branch. One constant beyond the ratio: ``share``, the slope right after a turn over the table's. So a swing is smaller than
the table says; a single state is not touched by this, and rate plays no part.

share 0.75, with 0.6 to 0.9 as its doubt: chosen with Scots pine between 35 and 85 % RH in view (Sydor, Majka, Langova 2021,
abstract); a similarity rule that fits yellow-poplar (Peralta, Bangi 1998, abstract) speaks for the high end.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from .equilibrium import ADSORPTION_TO_DESORPTION

SHARE = (0.6, 0.75, 0.9)  # low, likely, high
_HALF_BAND = -0.5 * np.log(ADSORPTION_TO_DESORPTION)  # of ln moisture content
_PLAYS = 12
FRESH = {"wetted": -1.0, "worn in": 0.0, "dried": 1.0}


def resting(driest_emc: Any, dampest_emc: Any, share: Any = SHARE[1]) -> tuple[Any, Any]:
    """Moisture contents (%) between which wood really rests, worn in to a yearly swing of the air.

    driest_emc, dampest_emc: what the table says of the two ends, %; share: see above. Exact for play operators, whatever
    the course between the ends, because lesser turns are wiped out. Broadcasts; follows NumPy's protocols.

    >>> [round(float(end), 2) for end in resting(6.2, 10.9)]
    [6.55, 10.31]
    """
    dry, damp = np.log(driest_emc), np.log(dampest_emc)
    behind = 0.5 * (damp - dry - _gone_since_a_turn(damp - dry, share))
    return np.exp(dry + behind), np.exp(damp - behind)


def _gone_since_a_turn(since: Any, share: Any) -> Any:
    """How far the logarithm of the resting moisture has gone since a turn, ``since`` being that of the table's value.

    Plays up to half as wide as ``since`` are pulled along, each by what it exceeds twice its width; wider ones stay.
    """
    widest = 2.0 * _HALF_BAND / (1.0 - share)
    half = 0.5 * since
    taut = np.minimum(half, widest)
    return share * since + (1.0 - share) * taut * (2.0 * half - taut) / widest


def loop(
    driest_emc: Any, dampest_emc: Any, course_emc: Any, history: str = "worn in", share: float = SHARE[1]
) -> tuple[Any, Any]:
    """The two ways of a swing of the air: resting moisture (%) at ``course_emc`` as the wood wets, and as it dries.

    driest_emc, dampest_emc: what the table says of the ends, %; course_emc: of any air between them. history: as
    :func:`resting_course`; the past moves the loop between the branches and does not change its size in proportion.

    >>> wetting, drying = loop(6.2, 10.9, np.array([6.2, 8.0, 10.9]))
    >>> wetting.round(2).tolist(), drying.round(2).tolist()
    ([6.55, 7.98, 10.31], [6.55, 8.1, 10.31])
    """
    dry, damp, course = np.log(driest_emc), np.log(dampest_emc), np.log(course_emc)
    gone = _gone_since_a_turn(damp - dry, share)
    if history == "worn in":
        lowest = dry + 0.5 * (damp - dry - gone)
    else:
        lowest = dry + _HALF_BAND if history == "dried" else damp - _HALF_BAND - gone
    wetting = np.exp(lowest + _gone_since_a_turn(course - dry, share))
    return wetting, np.exp(lowest + gone - _gone_since_a_turn(damp - course, share))


def swing_factor(driest_emc: Any, dampest_emc: Any) -> tuple[Any, Any, Any]:
    """How much of the table's swing is left between two states of air: (low, likely, high).

    >>> [round(float(factor), 2) for factor in swing_factor(6.2, 10.9)]
    [0.73, 0.8, 0.91]
    """
    dry, damp = np.multiply(driest_emc, 1.0), np.multiply(dampest_emc, 1.0)
    wide = np.where(damp > dry, damp - dry, 1.0)
    low, likely, high = (
        np.where(damp > dry, (ends[1] - ends[0]) / wide, share)
        for share, ends in ((share, resting(dry, damp, share)) for share in SHARE)
    )
    return low, likely, high


def resting_course(emc_percent: Any, history: str = "worn in", share: float = SHARE[1]) -> np.ndarray:
    """Resting moisture (%) along a course of the table's values, one after the other (steps first).

    history: how the wood came to the first state: "dried" (from green), "wetted" (from kiln-dry), or "worn in".

    >>> resting_course([8.0, 12.0, 8.0, 12.0], "wetted").round(2).tolist()
    [7.38, 11.06, 8.04, 11.06]
    """
    course = np.log(np.asarray(emc_percent, dtype=float))
    widest = 2.0 * _HALF_BAND / (1.0 - share)
    widths = widest * (np.arange(_PLAYS) + 0.5) / _PLAYS
    plays = course[0][..., None] + FRESH[history] * widths
    found = []
    for u in course:
        plays = np.minimum(np.maximum(plays, u[..., None] - widths), u[..., None] + widths)
        found.append(np.exp(share * u + (1.0 - share) * plays.mean(axis=-1)))
    return np.array(found)
