"""What a piece is made of: its wooden parts, where each size comes from, where each lies, and that they add up.

Each way fills these records. Every length is an exact fraction of a metre.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ..units import both
from ..units.exact import Rounding, exact_text
from .way import Way

Span = tuple[Fraction, Fraction]

TYPED = "typed in the brief"
QUARTER_CIRCLE = Fraction(355, 452)
"""A circle over its square; 355/452 is pi/4 to a ten-millionth."""

SOLID = ("panel", "strip", "turned")
"""Kinds of part that are solid wood; the others are ``sheet``, ``veneer``, and ``offcut``, for which no
wood is bought and which fills what was cut away."""


@dataclass(frozen=True)
class Size:
    """One size of a part, exact, with where it comes from; ``direction`` is the safe way to round it.

    >>> Size(Fraction(1, 2), TYPED).less(Fraction(1, 10), "less two borders").comes_from
    'typed in the brief, less two borders'
    """

    exact_m: Fraction
    comes_from: str
    direction: str = "nearest"

    def less(self, by_m: Fraction, words: str) -> Size:
        """The same size with something taken off."""
        return replace(self, exact_m=self.exact_m - by_m, comes_from=f"{self.comes_from}, {words}")

    def plus(self, by_m: Fraction, words: str) -> Size:
        """The same size with something added."""
        return self.less(-by_m, words)


@dataclass(frozen=True)
class WoodPart:
    """One part, ``count`` of it alike: length along its own grain, width and thickness, finished.

    ``role`` panel (glued up from boards), strip (from one board), turned, sheet, veneer or offcut; ``counted_m`` its length
    and width for weight, what is inside other parts left out.
    """

    name: str
    count: int
    length: Size
    width: Size
    thickness: Size
    role: str = "strip"
    counted_m: tuple[Fraction, Fraction] | None = None
    note: str = ""

    @property
    def sizes(self) -> tuple[Size, Size, Size]:
        """Length, width and thickness."""
        return self.length, self.width, self.thickness

    @property
    def solid(self) -> bool:
        """Whether it is solid wood, which is planed, weighed and bought by the board."""
        return self.role in SOLID

    @property
    def volume_m3(self) -> Fraction:
        """Volume of all of them as they count for the weight, m3."""
        long, wide = self.counted_m or (self.length.exact_m, self.width.exact_m)
        round_share = QUARTER_CIRCLE if self.role == "turned" else 1
        return self.count * long * wide * self.thickness.exact_m * round_share

    def text(self, first: str = "customary") -> str:
        """Its three sizes in words, each rounded the safe way.

        >>> inch = Fraction(254, 10_000)
        >>> WoodPart("rail", 2, *(Size(n * inch, TYPED) for n in (18, 2, Fraction(7, 8)))).text()
        '18 in (457.2 mm) x 2 in (50.8 mm) x 7/8 in (22.2 mm)'
        """
        return " x ".join(both(size.exact_m, 64, 0.1, size.direction, first) for size in self.sizes)


@dataclass(frozen=True)
class Sum:
    """Sizes that add up to a whole: each as (how often, what, size); what overlaps is counted below zero."""

    name: str
    terms: tuple[tuple[int, str, Fraction], ...]
    total_m: Fraction

    @property
    def adds_up(self) -> bool:
        """Whether they do, exactly."""
        return sum(times * size for times, _, size in self.terms) == self.total_m

    @property
    def says(self) -> str:
        """The sum in words, in millimetres."""
        return self.said()

    def said(self, first: str = "metric") -> str:
        """The sum in words, in the units of a system.

        >>> Sum("across", ((2, "stile", Fraction(1, 20)), (1, "opening", Fraction(2, 5))), Fraction(1, 2)).said()
        'across: 2 x stile 50 mm + opening 400 mm = 500 mm'
        """
        text = ""
        for times, what, size in self.terms:
            often = f"{abs(times)} x " if abs(times) > 1 else ""
            sign = ("- " if times < 0 else "") if not text else (" - " if times < 0 else " + ")
            text += f"{sign}{often}{what} {exact_text(size, first)}"
        return f"{self.name}: {text} = {exact_text(self.total_m, first)}"


@dataclass(frozen=True)
class Place:
    """Where a part is seen from its show face: from the left end along the piece, from the front edge across it.

    ``grain`` "along" or "across" the piece; ``below`` that it lies on the underside, hidden by the panel.
    """

    part: str
    along: Span
    across: Span
    grain: str = "along"
    below: bool = False

    def holds(self, along_m: Fraction, across_m: Fraction) -> bool:
        """Whether a point is on it."""
        return self.along[0] <= along_m <= self.along[1] and self.across[0] <= across_m <= self.across[1]


@dataclass(frozen=True)
class JointLine:
    """A line where two parts meet: ``runs`` along or across the piece, at a distance from the front or the left end.

    ``low_m`` to ``high_m`` is what the joint takes up on both sides of it, groove, tongue and gap; ``loose`` that one
    part slides in the other; ``between`` how far the line runs, None for all the way.
    """

    name: str
    runs: str
    at_m: Fraction
    low_m: Fraction
    high_m: Fraction
    loose: bool = False
    between: Span | None = None


@dataclass(frozen=True)
class Section:
    """One part in the section: from and to along the cut, from and to below the show face; ``end`` shows end grain.

    ``bevel`` of both front edges: how far in, the step at its inner end, and how deep at the edge. ``play`` that a loose
    tongue has across its groove, in all.
    """

    part: str
    spread: Span
    depth: Span
    end: bool = True
    loose: bool = False
    bevel: tuple[Fraction, Fraction, Fraction] | None = None
    play: Fraction = Fraction(0)

    def cut_off(self) -> tuple[tuple[tuple[Fraction, Fraction], ...], ...]:
        """The two wedges that bevels take off its front, as corners (along the cut, below the show face)."""
        if self.bevel is None:
            return ()
        wide, step, deep = self.bevel
        top = self.depth[0]
        return tuple(
            ((at, top), (at + way * wide, top), (at + way * wide, top + step), (at, top + deep))
            for at, way in zip(self.spread, (1, -1), strict=True)
        )


@dataclass(frozen=True)
class JointGlue:
    """Glue lines of the way itself, ``count`` alike, with the clamps for one of them."""

    name: str
    count: int
    length_m: Fraction
    width_m: Fraction
    clamps: int

    @property
    def area_m2(self) -> Fraction:
        """Area of all of them, m2."""
        return self.count * self.length_m * self.width_m


@dataclass(frozen=True)
class Fixing:
    """A pin or a screw of the way itself: its place on the piece, its bore, and the slot it slides in, if any.

    ``across`` how its place across the grain was rounded, from the middle of the width; ``reaches`` of the slot from
    the centre, outward and inward, which add up to it; ``slot_in`` the part it is cut in, where the fixing is in another.
    """

    name: str
    part: str
    along_m: Fraction
    across_m: Fraction
    across: Rounding
    diameter: Size
    slot: Size | None = None
    reaches: tuple[Size, Size] | None = None
    slot_in: str = ""


@dataclass(frozen=True)
class MadePiece:
    """One piece as a way to build makes it.

    ``size_m`` length, width and thickness outside; ``section_runs`` "across" or "along" the grain of the piece;
    ``joints_with`` what the panel is cut from together ("end pieces" from its own blank).
    """

    way: Way
    size_m: tuple[Fraction, Fraction, Fraction]
    parts: tuple[WoodPart, ...]
    sums: tuple[Sum, ...]
    places: tuple[Place, ...]
    section: tuple[Section, ...]
    lines: tuple[JointLine, ...] = ()
    glue: tuple[JointGlue, ...] = ()
    fixings: tuple[Fixing, ...] = ()
    section_runs: str = "across"
    own_ends_m: Fraction | None = None
    remarks: tuple[str, ...] = ()

    @property
    def panel(self) -> WoodPart | None:
        """The part that is glued up from boards, where there is one."""
        return next((part for part in self.parts if part.role == "panel"), None)

    @property
    def others(self) -> tuple[WoodPart, ...]:
        """All solid parts that have a blank of their own."""
        own = self.own_ends_m is not None
        return tuple(p for p in self.parts if p.solid and p.role != "panel" and not (own and p.name == "end piece"))

    @property
    def panel_at_m(self) -> tuple[Fraction, Fraction]:
        """Where the panel begins, tongues and all, from the piece's left end and its front edge, m."""
        panel = next(part for part in self.parts if part.role == "panel")
        place = next(place for place in self.places if place.part == panel.name)
        return (sum(place.along) - panel.length.exact_m) / 2, (sum(place.across) - panel.width.exact_m) / 2

    @property
    def solid_m3(self) -> Fraction:
        """Volume of its solid wood, m3."""
        return sum((part.volume_m3 for part in self.parts if part.solid), Fraction(0))

    def part_at(self, along_m: Fraction, across_m: Fraction) -> Place | None:
        """The part that is seen at a point of the show face, or None beside the piece."""
        return next((p for p in self.places if not p.below and p.holds(along_m, across_m)), None)


def roundings_of(parts: Sequence[WoodPart], rule: str) -> tuple[tuple[str, Rounding], ...]:
    """Every size of the parts that the rule does not show exactly, each rounded once, the safe way."""
    names = ("length", "width", "thickness")
    found = []
    for part in (part for part in parts if part.role != "veneer"):  # nobody marks a thickness of veneer
        for name, size in zip(names, part.sizes, strict=True):
            rounding = Rounding(size.exact_m, rule, size.direction)
            if rounding.error_m:
                found.append((f"{part.name}, {name}", rounding))
    return tuple(found)
