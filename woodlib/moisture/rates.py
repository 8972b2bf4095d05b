"""How fast moisture moves: the numbers of ``data/moisture_rates.csv``, each as low, mid and high."""

from __future__ import annotations

import csv
from functools import lru_cache
from typing import NamedTuple

from ..data_files import data_path
from ..errors import MissingDataError


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


class Rate(NamedTuple):
    """One row of the table: the number with its unit, status, source and note."""

    value: Likely
    unit: str
    status: str
    source: str
    note: str


@lru_cache(maxsize=1)
def all_rates() -> dict[str, Rate]:
    """Every rate of the table by name.

    >>> all_rates()["diffusivity_factor"].status
    'estimated'
    """
    with data_path("moisture_rates.csv").open(encoding="utf-8", newline="") as table:
        return {row["name"]: _rate(row) for row in csv.DictReader(table)}


def _rate(row: dict[str, str]) -> Rate:
    value = Likely(float(row["low"]), float(row["mid"]), float(row["high"]))
    return Rate(value, row["unit"], row["status"], row["source"], row["note"])


def rate(name: str) -> Likely:
    """Low, mid and high of one named rate, SI unless the name says otherwise.

    Raises :class:`MissingDataError` when the table has no such row.

    >>> rate("end_grain_factor")
    Likely(low=10.0, mid=12.0, high=15.0)
    """
    table = all_rates()
    if name not in table:
        raise MissingDataError(f"moisture_rates.csv has no row {name!r}; its rows are: {', '.join(table)}.")
    return table[name].value


@lru_cache(maxsize=1)
def _limits() -> dict[str, float]:
    with data_path("readiness_limits.csv").open(encoding="utf-8", newline="") as table:
        return {row["name"]: float(row["value"]) for row in csv.DictReader(table)}


def readiness_limit(name: str) -> float:
    """A shop limit of ``data/readiness_limits.csv``: where a smooth number becomes a decision.

    Raises :class:`MissingDataError` when the table has no such row.

    >>> readiness_limit("margin_percent")
    1.0
    """
    limits = _limits()
    if name not in limits:
        raise MissingDataError(f"readiness_limits.csv has no row {name!r}; its rows are: {', '.join(limits)}.")
    return limits[name]
