"""What stops each way to build: the size that grows with the width, and how far a shop lets it grow."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType

from ..data_files import data_path
from ..ways.rules import CutRule
from ..ways.ways import find_construction


@dataclass(frozen=True)
class Limit:
    """What stops a way: the rules of the sizes that may not pass ``limit_m``, and in words what happens then.

    ``meaning`` has ``{limit}`` where the limit is to be written.
    """

    rules: tuple[CutRule, ...]
    limit_m: float
    meaning: str


@lru_cache(maxsize=1)
def limits() -> MappingProxyType[str, Limit]:
    """What stops each way that slides, by its key; a way that is not in it bears any width.

    >>> limits()["breadboard"].meaning
    'the step at a corner passes {limit} and catches clothes'
    """
    with open(data_path("ways_out_limits.csv"), encoding="utf-8", newline="") as table:
        rows = list(csv.DictReader(table))
    found = {}
    for way in dict.fromkeys(row["way"] for row in rows):
        own = [row for row in rows if row["way"] == way]
        construction = find_construction(way)
        known = {rule.name: rule for rule in (*construction.rules, *construction.states)}
        found[way] = Limit(tuple(known[row["size"]] for row in own), float(own[0]["limit"]), own[0]["meaning"])
    return MappingProxyType(found)
