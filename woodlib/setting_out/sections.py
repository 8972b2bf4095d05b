"""A panel glued up in sections that still pass the thicknesser: which strips go together, with clamps, cauls and minutes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from math import ceil

from ..units import both
from .boards import BoardsPlan
from .glue import NARROWEST_M, clamp_places
from .practice import ShopPractice

MOST_STAGES = 4


@dataclass(frozen=True)
class GoesTogether:
    """What is glued in one go: ``name``, its glue lines, its width and its clamps and cauls.

    ``strips`` first and last, from 1; ``opens_m`` what the clamps must open; ``cauls`` pairs across it; ``minutes`` from
    the first glue to the last clamp.
    """

    name: str
    strips: tuple[int, int]
    lines: int
    width_m: Fraction
    clamps: int
    opens_m: Fraction
    cauls: int
    minutes: Fraction

    @property
    def strips_said(self) -> str:
        """Its strips in words."""
        first, last = self.strips
        return f"strip {first}" if first == last else f"strips {first} to {last}"


@dataclass(frozen=True)
class Sections:
    """A panel's glue-up: ``sections`` that pass the thicknesser, then ``last`` which joins them; none where one will do.

    ``by_hand`` how many joints are left that no thicknesser reaches; ``remarks`` what is beyond the shop, one sentence each.
    """

    sections: tuple[GoesTogether, ...]
    last: GoesTogether | None
    by_hand: int
    remarks: tuple[str, ...]

    @property
    def goes(self) -> tuple[GoesTogether, ...]:
        """Every glue-up in its order."""
        return (*(one for one in self.sections if one.lines), *([self.last] if self.last else []))


def glue_up(boards: BoardsPlan, length_m: Fraction, practice: ShopPractice, first: str) -> Sections:
    """How the strips of a panel go together: whole where it passes the thicknesser and the glue stays open long enough.

    Otherwise in the fewest sections that do, all as alike in width as the strips allow.

    >>> from .boards import Strip
    >>> four = BoardsPlan((Strip("A", Fraction(13, 100)),) * 4, Fraction(1, 2), (), ())
    >>> plan = glue_up(four, Fraction(12, 10), ShopPractice(thicknesser_m="12 in"), "customary")
    >>> [part.strips for part in plan.sections], plan.by_hand
    ([(1, 2), (3, 4)], 1)
    """
    widths = [strip.width_m for strip in boards.strips]
    groups = _groups(widths, length_m, practice)
    parts = [_together(group, widths, length_m, practice, f"section {n}") for n, group in enumerate(groups, 1)]
    whole = (1, len(widths))
    if len(groups) == 1:
        only = _together(whole, widths, length_m, practice, "the panel")
        return Sections((only,), None, 0, tuple(_beyond((only,), only.width_m, practice, first)))
    last = _together(whole, widths, length_m, practice, "the sections together", len(groups) - 1)
    wide = last.width_m > practice.thicknesser_m
    return Sections(
        tuple(parts),
        last,
        len(groups) - 1 if wide else 0,
        tuple(_beyond((*parts, last), max(part.width_m for part in parts), practice, first)),
    )


def _minutes(lines: int, length_m: Fraction, clamps: int, practice: ShopPractice) -> Fraction:
    return lines * length_m * practice.spreading_min_m + clamps * practice.clamping_min


def _clamps(edge_m: Fraction, length_m: Fraction, practice: ShopPractice) -> int:
    spacing = min(practice.clamp_spacing_m, 2 * max(edge_m, NARROWEST_M))
    return len(clamp_places(length_m, practice.clamp_end_m, spacing))


def _together(group, widths, length_m: Fraction, practice: ShopPractice, name: str, lines: int | None = None):
    """One glue-up; ``lines`` where it joins sections rather than strips."""
    low, high = group
    taken = widths[low - 1 : high]
    lines = len(taken) - 1 if lines is None else lines
    wide = sum(taken, Fraction(0))
    clamps = _clamps(min(taken[0], taken[-1]), length_m, practice) if lines else 0
    cauls = len(clamp_places(length_m, practice.clamp_end_m, practice.caul_spacing_m)) if lines else 0
    minutes = _minutes(lines, length_m, clamps, practice)
    return GoesTogether(name, group, lines, wide, clamps, wide + practice.clamp_pads_m, cauls, minutes)


def _groups(widths: Sequence[Fraction], length_m: Fraction, practice: ShopPractice) -> list[tuple[int, int]]:
    """The fewest runs of strips that pass the thicknesser and stay within the glue's time, the widest as narrow as can be."""
    clamps = _clamps(min(widths), length_m, practice)  # whichever strip comes to lie at an edge
    in_time = [n for n in range(1, len(widths)) if _minutes(n, length_m, clamps, practice) <= practice.glue_open_min]
    most = max(in_time, default=1) + 1
    ends = list(accumulate(widths))
    limits = sorted({ends[b] - (ends[a - 1] if a else 0) for a in range(len(ends)) for b in range(a, len(ends))})
    fewest = _runs(widths, practice.thicknesser_m, most)
    for limit in limits:
        runs = _runs(widths, limit, most)
        if limit >= max(widths) and len(runs) <= len(fewest):
            return runs
    return fewest


def _runs(widths: Sequence[Fraction], limit: Fraction, most: int) -> list[tuple[int, int]]:
    """Runs of strips from the first on, each no wider than a limit and no more strips than ``most``."""
    runs: list[tuple[int, int]] = []
    start, wide = 1, Fraction(0)
    for number, width in enumerate(widths, 1):
        if number > start and (wide + width > limit or number - start >= most):
            runs.append((start, number - 1))
            start, wide = number, Fraction(0)
        wide += width
    return [*runs, (start, len(widths))]


def _beyond(parts: Sequence[GoesTogether], widest: Fraction, practice: ShopPractice, first: str) -> Iterator[str]:
    """What the shop named cannot do."""
    if widest > practice.thicknesser_m:
        wide = both(practice.thicknesser_m, first=first)
        yield f"One strip alone is wider than the thicknesser takes, {wide}: rip it, or thickness it by hand."
    opens = max((part.opens_m for part in parts if part.lines), default=Fraction(0))
    if opens > practice.longest_clamp_m:
        have, need = (
            both(practice.longest_clamp_m, rounding="down", first=first),
            both(opens, rounding="up", first=first),
        )
        yield f"The longest clamps, {have}, do not reach across {need}: join two end to end, or borrow longer ones."
    most = max((part.clamps for part in parts), default=0)
    if practice.clamps and most > practice.clamps:
        yield (
            f"{most} clamps are needed in one go and the shop has {practice.clamps}: borrow the rest, or spread the pressure "
            "with straight cauls along both edges."
        )
    slow = [part for part in parts if part.minutes > practice.glue_open_min]
    if slow:
        long = max(slow, key=lambda part: part.minutes)
        yield (
            f"Gluing {long.name} takes about {ceil(long.minutes)} minutes, more than the {practice.glue_open_min} that the glue "
            "stays open: glue with two people, one line at a time, or with a slower glue."
        )
