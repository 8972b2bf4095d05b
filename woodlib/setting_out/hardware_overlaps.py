"""Holes and slots of hardware as shapes on the wood, and which hardware lies over other hardware."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from .hardware_places import ALONG

if TYPE_CHECKING:
    from .hardware import SetHardware

MOST_NAMED = 3
Span = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class HoleShape:
    """A round hole, or a slot, as the line its bit runs along; ``radius_m`` of the bit, all exact, m."""

    across_m: Span
    along_m: Span
    radius_m: Fraction

    def along(self, runs: str) -> Span:
        """From where to where it goes in the direction of the hardware."""
        low, high = self.along_m if runs == ALONG else self.across_m
        return low - self.radius_m, high + self.radius_m

    def meets(self, other: HoleShape) -> bool:
        """Whether the two have wood in common, or none between them."""
        apart = [
            max(Fraction(0), mine[0] - its[1], its[0] - mine[1])
            for mine, its in ((self.along_m, other.along_m), (self.across_m, other.across_m))
        ]
        return apart[0] ** 2 + apart[1] ** 2 <= (self.radius_m + other.radius_m) ** 2


def holes_of(item: SetHardware) -> tuple[HoleShape, ...]:
    """The shapes of all its holes."""
    return tuple(_shape(item, hole, centre) for hole, centre in zip(item.pair.holes_m, item.centres_m, strict=True))


def _shape(item: SetHardware, hole_m: Fraction, centre: tuple[Fraction, Fraction]) -> HoleShape:
    radius = item.fit.drill.size_m / 2
    slot = item.slots.at(hole_m) if item.slots else None
    middle = half = Fraction(0)
    if item.slots and slot:  # its middle is marked away from the round hole
        away = 1 if float(hole_m) > item.slots.plan.fixed_m else -1
        middle, half = away * slot[1].marked_m, max(Fraction(0), slot[0].marked_m / 2 - radius)
    work = hole_m + middle - half, hole_m + middle + half
    along, across = ((at, at) for at in centre)
    return HoleShape(across, work, radius) if item.runs == ALONG else HoleShape(work, along, radius)


def with_overlaps(items: Sequence[SetHardware]) -> tuple[SetHardware, ...]:
    """The same hardware; what lies over other hardware has a sentence about it among its warnings."""
    shapes = [holes_of(item) for item in items]
    marked = []
    for place, item in enumerate(items):
        others = [n for n in range(len(items)) if n != place]
        holes = [n for n in others if any(a.meets(b) for a in shapes[place] for b in shapes[n])]
        over = [n for n in others if n not in holes and _same_line(item, items[n]) and _spans_meet(item, items[n])]
        said = [
            f"{_named(items, place)} {what} {_list(items, found)}; write another middle or inset for one of them."
            for what, found in (("has holes that run into those of", holes), ("lies over", over))
            if found
        ]
        marked.append(replace(item, warnings=(*item.warnings, *said)))
    return tuple(marked)


def _same_line(one: SetHardware, other: SetHardware) -> bool:
    apart = abs(one.inset_m - other.inset_m)
    return one.runs == other.runs and apart <= (one.fit.drill.size_m + other.fit.drill.size_m) / 2


def _spans_meet(one: SetHardware, other: SetHardware) -> bool:
    return one.pair.holes_m[0] < other.pair.holes_m[-1] and other.pair.holes_m[0] < one.pair.holes_m[-1]


def _list(items: Sequence[SetHardware], found: Sequence[int]) -> str:
    names = [_named(items, place) for place in found[:MOST_NAMED]]
    more = len(found) - len(names)
    return " and ".join([*names, *([f"{more} more"] if more else [])])


def _named(items: Sequence[SetHardware], place: int) -> str:
    """Its name; with its number in the brief where another is called the same."""
    name = items[place].pair.name
    alike = sum(item.pair.name == name for item in items) > 1
    return f"{name} (no. {place + 1} in the brief)" if alike else name
