"""How fast moisture moves, each number as low, mid and high, and the limits at which stock counts as ready."""

from __future__ import annotations

from typing import NamedTuple

from ..tables import number


class Likely(NamedTuple):
    """A number that is only known within a range; ``low`` <= ``mid`` <= ``high`` in size."""

    low: float
    mid: float
    high: float

    @classmethod
    def of(cls, first: float, mid: float, last: float) -> Likely:
        """The same three numbers with the ends in order of size.

        >>> Likely.of(13.1, 8.1, 3.1)
        Likely(low=3.1, mid=8.1, high=13.1)
        """
        return cls(float(min(first, mid, last)), float(mid), float(max(first, mid, last)))


def rate(name: str) -> Likely:
    """Low, mid and high of one number on moisture in wood, SI unless the name says otherwise.

    >>> rate("end_grain_factor")
    Likely(low=10.0, mid=12.0, high=15.0)
    """
    found = number("moisture", name)
    return Likely(found.low, found.middle, found.high)


def readiness_limit(name: str) -> float:
    """A limit at which a smooth number about stock becomes a decision.

    >>> readiness_limit("margin_percent")
    1.0
    """
    return number("readiness", name).middle
