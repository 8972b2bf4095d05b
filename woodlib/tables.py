"""The data tables: one loader for all of them, and the one table of numbers that calculations and rules rest on."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from .data_files import data_path
from .errors import MissingDataError


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """Rows of one CSV of the data folder as text.

    >>> rows("risk_levels.csv")[0]["word"]
    'safe'
    """
    with data_path(name).open(encoding="utf-8", newline="") as table:
        return tuple(csv.DictReader(table))


@dataclass(frozen=True)
class Number:
    """One number with its range; SI unless ``unit`` says otherwise, a pure number where it is empty, ``status`` as for the values of a species.

    ``low`` and ``high`` hold what the truth may be; for what a shop decides, what it may be set to.
    """

    key: str
    low: float
    middle: float
    high: float
    unit: str
    status: str
    source: str
    meaning: str
    note: str
    exact: Fraction


@cache
def numbers(topic: str) -> dict[str, Number]:
    """Every number of a topic of ``numbers.csv`` by key, in the order of the table.

    >>> numbers("shop practice")["saw_kerf"].meaning
    'width that a saw blade turns to dust, 1/8 in'
    """
    return {row["key"]: _number(row) for row in rows("numbers.csv") if row["topic"] == topic}


def _number(row: dict[str, str]) -> Number:
    low, middle, high = (float(row[name]) for name in ("low", "middle", "high"))
    texts = {name: row[name] for name in ("status", "source", "meaning", "note")}
    unit = "" if row["unit"] == "1" else row["unit"]
    return Number(row["key"], low, middle, high, unit, **texts, exact=Fraction(row["middle"]))


def number(topic: str, key: str) -> Number:
    """One number of the table. Raises :class:`MissingDataError` when there is no such row.

    >>> number("held movement", "yield_strain").middle
    0.004
    """
    found = numbers(topic)
    if key not in found:
        raise MissingDataError(f"numbers.csv has no row {key!r} on {topic}; its rows are: {', '.join(found)}.")
    return found[key]


@cache
def metric_numbers(topic: str) -> dict[str, Fraction]:
    """What a metric shop works with where the numbers of a topic are those of inches, m; all are common practice, no source.

    >>> metric_numbers("allowances")["pin_diameter"]
    Fraction(1, 100)
    """
    return {row["key"]: Fraction(row["metres"]) for row in rows("metric_practice.csv") if row["topic"] == topic}
