"""The numbers that held movement rests on and no species table holds: each with range, status and source."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache

from ..data_files import data_path


@dataclass(frozen=True)
class Assumption:
    """One number with its range; ``status`` as for the values of a species."""

    key: str
    meaning: str
    low: float
    middle: float
    high: float
    unit: str
    status: str
    source: str
    note: str


@cache
def all_assumptions() -> dict[str, Assumption]:
    """Every assumption by key, in the order of the table.

    >>> all_assumptions()["yield_strain"].middle
    0.004
    """
    with open(data_path("held_movement.csv"), encoding="utf-8", newline="") as table:
        rows = list(csv.DictReader(table))
    return {row["key"]: _read(row) for row in rows}


def _read(row: dict[str, str]) -> Assumption:
    numbers = {name: float(row[name]) for name in ("low", "middle", "high")}
    return Assumption(**(row | numbers))


def assumption(key: str) -> Assumption:
    """One assumption of the table."""
    return all_assumptions()[key]
