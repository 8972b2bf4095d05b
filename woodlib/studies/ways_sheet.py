"""What the pictures of the ways to build share: the sheet's lay-out, scales that stay put, one state of a way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..construction.verdict import CutRule
from ..reading.decided import Decided

WIDTH, HEIGHT = 720.0, 452.0
COLUMNS = (14.0, 374.0)  # left edge of the two months
COLUMN = 332.0
PLAN_TOP, PLAN_HEIGHT = 38.0, 178.0
CLOSE_TOP, CLOSE_HEIGHT = 258.0, 140.0
BOARDS = 3
EXAGGERATIONS = (30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2)

Quantities = Mapping[str, float]
Number = float | Decided


@dataclass(frozen=True)
class Scales:
    """What stays put while sliders move: px per metre of plan and close-up, exaggeration, longest strain shown."""

    plan_px: float
    exaggeration: int
    close_px: float
    longest_strain: float
    border_m: float


@dataclass(frozen=True)
class State:
    """One state of a way to build: its smooth numbers, the sizes to cut by name, and what counts against the wood.

    ``only_stress_warns`` is 1 where the stress model warns and the strain rule does not.
    """

    key: str
    numbers: Quantities
    cuts: Mapping[str, Number]
    level: Number
    pull: tuple[Number, Number]
    push: tuple[Number, Number]
    only_stress_warns: Number = 0.0


def sizes(rules: tuple[CutRule, ...], numbers: Quantities) -> dict[str, Decided]:
    """Every dimension to cut, by name, remembered with its decisions."""
    return {rule.name: rule.size(numbers) for rule in rules}
