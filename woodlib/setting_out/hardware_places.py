"""Where the hardware of a brief goes: typed places, else shared out; refused where its holes leave the wood."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ..brief import Brief
from ..units.exact import fine_text
from .holes import shared_middles
from .practice import ShopPractice

ALONG = "along the grain"
UPRIGHT = ("drawer front", "drawer side")  # their width is a height


@dataclass(frozen=True)
class HardwarePlace:
    """One piece of hardware of the brief on the wood, exact, m.

    ``work_m`` size of the wood in the direction of its holes, ``aside_m`` the other way; ``middle_m`` between its
    holes; ``inset_m`` of their line; ``sharing`` how many share the work out, 1 where it has a middle of its own.
    """

    number: int
    name: str
    runs: str
    work_m: Fraction
    aside_m: Fraction
    centres_m: Fraction
    screw_m: Fraction
    middle_m: Fraction
    inset_m: Fraction
    fixing: str
    sharing: int = 1

    @property
    def ends_m(self) -> tuple[Fraction, Fraction]:
        """Its two holes in the direction of the work."""
        return self.middle_m - self.centres_m / 2, self.middle_m + self.centres_m / 2

    @property
    def size(self) -> str:
        """The key of the brief that is as long as its work."""
        return "piece.length" if self.runs == ALONG else "piece.width"

    @property
    def aside(self) -> str:
        """The key of the brief for the other way."""
        return "piece.width" if self.runs == ALONG else "piece.length"


def hardware_places(brief: Brief, size_m: Sequence[Fraction], practice: ShopPractice) -> tuple[HardwarePlace, ...]:
    """Every piece of hardware of a brief on wood of this length and width.

    What runs along the grain and has no middle typed shares the length evenly. What runs across it takes the middle of
    the width, and several without an inset share the length evenly; those typed onto one line share the width.
    """
    placed = [_typed(brief, number, size_m, practice) for number in range(1, len(brief.hardware) + 1)]
    apart = [place for place in placed if place.runs != ALONG and not _given(brief, place, "inset")]
    if len(apart) > 1:
        for place, inset in zip(apart, shared_middles(apart[0].aside_m, len(apart)), strict=True):
            placed[place.number - 1] = replace(place, inset_m=inset)
    for line in _lines(placed):
        for place, middle in zip(line, shared_middles(line[0].work_m, len(line)), strict=True):
            if not _given(brief, place, "middle"):
                placed[place.number - 1] = replace(place, middle_m=middle, sharing=len(line))
    return tuple(placed)


def edges_of(brief: Brief, runs: str) -> tuple[str, str]:
    """The two ends that a row of holes in this direction points at, the one it is measured from first."""
    if runs == ALONG:
        return "left end", "right end"
    return ("lower edge", "upper edge") if brief.piece.kind in UPRIGHT else ("front edge", "back edge")


def _typed(brief: Brief, number: int, size_m: Sequence[Fraction], practice: ShopPractice) -> HardwarePlace:
    """As typed; what is not is in the middle of its work, as far in as is usual."""
    item = brief.hardware[number - 1]
    work, aside = (size_m[0], size_m[1]) if item.runs == ALONG else (size_m[1], size_m[0])
    usual = {"middle": work / 2, "inset": practice.hardware_inset_m, "screw": practice.screw_diameter_m}
    middle, inset, screw = (
        brief.exact_m(key) if (key := f"hardware.{number}.{entry}") in brief.typed else size
        for entry, size in usual.items()
    )
    centres = brief.exact_m(f"hardware.{number}.centres")
    return HardwarePlace(number, item.name, item.runs, work, aside, centres, screw, middle, inset, item.fixing)


def _given(brief: Brief, place: HardwarePlace, entry: str) -> bool:
    return f"hardware.{place.number}.{entry}" in brief.typed


def _lines(placed: Sequence[HardwarePlace]) -> list[list[HardwarePlace]]:
    """What shares a side: all along the grain, and what lies on one line across it."""
    lines: dict[object, list[HardwarePlace]] = {}
    for place in placed:
        lines.setdefault(ALONG if place.runs == ALONG else place.inset_m, []).append(place)
    return list(lines.values())


def _where(brief: Brief, place: HardwarePlace, *entries: str) -> str:
    """The line of the first of these that is typed."""
    typed = [entry for entry in entries if _given(brief, place, entry)]
    return brief.where(f"hardware.{place.number}.{typed[0] if typed else 'centres'}")


def off_the_wood(brief: Brief, place: HardwarePlace, placed: Sequence[HardwarePlace]) -> str:
    """Why its holes cannot be where they would be, in a sentence with its line; empty where they can."""
    work, centres = _size(brief, place.work_m), _size(brief, place.centres_m)
    if place.centres_m >= place.work_m:
        return (
            f"{_where(brief, place)}{place.name} has centres of {centres}, and the wood is only {work} there; use narrower "
            "centres."
        )
    if place.sharing > 1 and _crowded(place, placed):
        least, most = _size(brief, place.centres_m / 2), _size(brief, place.work_m - place.centres_m / 2)
        return (
            f"{_where(brief, place)}{place.size} shared among {place.sharing} leaves {_size(brief, place.work_m / place.sharing)} "
            f"for each, and {place.name} has centres of {centres}; write middle = for each, more than {least} and less than "
            f"{most} here, or take fewer."
        )
    if place.ends_m[0] <= 0 or place.ends_m[1] >= place.work_m:
        beyond = edges_of(brief, place.runs)[place.ends_m[0] > 0]
        return (
            f"{_where(brief, place, 'middle')}{place.name} would have a hole beyond the {beyond} of wood that is {work} "
            "there; use narrower centres or move its middle."
        )
    if place.inset_m >= place.aside_m:
        return (
            f"{_where(brief, place, 'inset')}{place.name} would have its holes {_size(brief, place.inset_m)} from the edge of wood "
            f"that is only {_size(brief, place.aside_m)} there; write a smaller inset."
        )
    return ""


def _crowded(place: HardwarePlace, placed: Sequence[HardwarePlace]) -> bool:
    """Whether its share of the side is too short: it runs off the wood, or over another on its line."""
    low, high = place.ends_m
    line = [
        other for other in placed if other.runs == place.runs and other.inset_m == place.inset_m and other is not place
    ]
    over = any(other.sharing > 1 and other.ends_m[0] <= high and low <= other.ends_m[1] for other in line)
    return low <= 0 or high >= place.work_m or over


def breaks_out(
    brief: Brief, place: HardwarePlace, bore_m: Fraction, ends_m: tuple[Fraction, Fraction], slotted: bool
) -> str:
    """Why a hole would not be one, in a sentence with its line: it runs into its neighbour, or out of the wood.

    ``bore_m`` the drill; ``ends_m`` how far the row of its holes and slots reaches, from the same end as its places.
    """
    bore = _size(brief, bore_m)
    if place.centres_m <= bore_m:
        return (
            f"{_where(brief, place)}{place.name} has centres of {_size(brief, place.centres_m)}, and its holes are bored {bore}, so "
            "they run into each other; use wider centres or a thinner screw."
        )
    for room, edge in (
        (place.inset_m, "the edge it is measured from"),
        (place.aside_m - place.inset_m, "the far edge"),
    ):
        if room < bore_m / 2:
            return (
                f"{_where(brief, place, 'inset')}{place.name} has its holes {_size(brief, room)} from {edge}, and half the bore of "
                f"{bore} is {_size(brief, bore_m / 2)}, so they break out; write an inset from {_size(brief, bore_m / 2, 'up')} to "
                f"{_size(brief, place.aside_m - bore_m / 2, 'down')}, or a thinner screw."
            )
    if ends_m[0] < 0 or ends_m[1] > place.work_m:
        what = "a slot would run" if slotted else f"a hole of {bore} would break"
        end = "end" if place.runs == ALONG else "edge"
        return (
            f"{_where(brief, place, 'middle')}{place.name}: {what} out of the {end} of wood that is {_size(brief, place.work_m)} "
            "there; use narrower centres, or a middle further from it."
        )
    return ""


def _size(brief: Brief, length_m: Fraction, rounding: str = "nearest") -> str:
    return fine_text(length_m, brief.first, rounding)
