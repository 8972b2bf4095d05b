"""Dowels and loose tongues kept clear of every later cut by a margin: conflicts shown, shifts proposed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from ..door import check_kind
from ..errors import Problems
from ..units import both, shown
from ..units.exact import LONGEST_M, even_row, read_exact
from .clear_places import Span, free_spans, nearest_places
from .kernels import clear_after, clear_before
from .later_cuts import LaterCut
from .practice import ShopPractice, check_practice

KINDS = ("dowel", "loose tongue")
MOST_PLACES = 60


@dataclass(frozen=True)
class Joint:
    """What sits in a glue line at each place: its size along the joint, into each board, and through the thickness.

    ``size_m`` diameter of a dowel or width of a loose tongue; ``reach_m`` into each board; ``thick_m`` diameter of a
    dowel or thickness of a tongue; ``depth_m`` of its middle from the show face.
    """

    kind: str
    length_m: Fraction
    size_m: Fraction
    reach_m: Fraction
    thick_m: Fraction
    depth_m: Fraction


@dataclass(frozen=True)
class Conflict:
    """One place that is too near one later cut: ``clear_m`` is the wood left, negative when the cut goes into it."""

    number: int
    cut: str
    clear_m: Fraction
    margin_m: Fraction

    @property
    def says(self) -> str:
        """The conflict in a sentence."""
        if self.clear_m < 0:
            lacks = both(-self.clear_m, 64, 0.1, "up")
            return f"number {self.number} is cut into by the {self.cut}; it lacks {lacks} to be free of it."
        return (
            f"number {self.number} keeps {both(self.clear_m, 64, 0.1, 'down')} from the {self.cut}; "
            f"the margin is {both(self.margin_m, 64, 0.1)}."
        )


@dataclass(frozen=True)
class JointPlan:
    """A row of dowels or loose tongues: places as asked for, what they conflict with, and where to put them instead.

    ``wanted_m`` and ``places_m`` from the end of the joint, exact; ``places_m`` is None where no row keeps clear.
    """

    joint: Joint
    wanted_m: tuple[Fraction, ...]
    conflicts: tuple[Conflict, ...]
    places_m: tuple[Fraction, ...] | None
    margin_m: Fraction
    mirrored: bool

    @property
    def shifts_m(self) -> tuple[Fraction, ...]:
        """How far each place is moved, m; positive away from the end that is measured from."""
        return () if self.places_m is None else tuple(b - a for a, b in zip(self.wanted_m, self.places_m, strict=True))

    @property
    def says(self) -> tuple[str, ...]:
        """Conflicts and proposals, one sentence each."""
        if not self.conflicts:
            return ("Every place keeps clear of every later cut.",)
        sentences = [conflict.says for conflict in self.conflicts]
        if self.places_m is None:
            kept = " while both halves stay alike" if self.mirrored else ""
            return (
                *sentences,
                f"No shifting keeps {len(self.wanted_m)} places clear{kept}; use fewer or smaller ones.",
            )
        moved = [(n, shift, self.places_m[n - 1]) for n, shift in enumerate(self.shifts_m, start=1) if shift]
        return (
            *sentences,
            *(
                f"Move number {n} {'on' if s > 0 else 'back'} by {both(abs(s), 64, 0.1)}, to {both(p, 64, 0.1)}."
                for n, s, p in moved
            ),
        )


def joint_row(
    length: object,
    cuts: Sequence[LaterCut] = (),
    *,
    kind: str = "dowel",
    size: object = "3/8 in",
    reach: object = "1 in",
    depth: object = "7/16 in",
    thick: object = None,
    positions: Sequence[object] | None = None,
    margin: object = None,
    keep_mirrored: bool = True,
    practice: ShopPractice | None = None,
) -> JointPlan:
    """Places for dowels or loose tongues along a joint, kept clear of every later cut.

    Parameters
    ----------
    length : length of the joint
    cuts : later cuts, see :class:`later_cuts.LaterCut` and :func:`later_cuts.cuts_of`
    kind : "dowel" or "loose tongue"
    size, reach, thick : along the joint, into each board, through the thickness (the size again unless given)
    depth : middle of the dowel from the show face
    positions : places wanted; left out, an even row with the practice's end distance and spacing
    margin : wood to keep between a place and a cut; left out, the practice's
    keep_mirrored : move both halves alike where the wanted row is mirrored

    A place conflicts when nothing separates the two by the margin along the joint, across it, or through the
    thickness; a dowel counts as its square, so corners err on the safe side.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> plan = joint_row("20 in", [LaterCut("end cut", "5 in", "5-1/8 in")], positions=["5 in", "15 in"])
    >>> plan.says[0]
    'number 1 is cut into by the end cut; it lacks 3/16 in (4.8 mm) to be free of it.'
    >>> [both(place, 64) for place in plan.places_m]
    ['4-9/16 in (116 mm)', '15-7/16 in (392 mm)']
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    if kind not in KINDS:
        problems.add(f"kind is {shown(kind)}; it must be dowel or loose tongue.")
    sizes = [
        read_exact(problems, f"{entry} of the {kind if kind in KINDS else 'joint'}", value)
        for entry, value in (
            ("length of joint", length),
            ("size", size),
            ("reach", reach),
            ("thickness", size if thick is None else thick),
            ("depth", depth),
        )
    ]
    gap = practice.dowel_margin_m if margin is None else read_exact(problems, "margin", margin, above=False)
    listed = _checked_cuts(problems, cuts)
    if all(sizes) and sizes[4] <= sizes[3] / 2:
        problems.add(
            f"depth of the {kind} is {both(sizes[4], 64, 0.1)}, so near the show face that it breaks out; "
            "give more than half its thickness."
        )
    wanted = None if positions is None or not sizes[0] else _read_positions(problems, positions, sizes[0])
    problems.raise_if_any()
    joint = Joint(kind, *sizes)
    if wanted is None:
        wanted = even_row(joint.length_m, practice.dowel_end_m, practice.dowel_spacing_m)
    return _plan(joint, wanted, listed, gap, keep_mirrored)


def conflicts_of(
    joint: Joint, places: Sequence[Fraction], cuts: Sequence[LaterCut], margin_m: Fraction
) -> tuple[Conflict, ...]:
    """Every place that does not keep the margin, for lengths that are exact and checked already."""
    half = joint.size_m / 2
    found = []
    for number, place in enumerate(places, start=1):
        for cut in cuts:
            along = max(clear_before(place, half, cut.low_m), clear_after(place, half, cut.high_m))
            clear = max(along, _clear_elsewhere(joint, cut))
            if clear < margin_m:
                found.append(Conflict(number, cut.name, clear, margin_m))
        ends = min(place - half, joint.length_m - place - half)
        if ends < margin_m:
            found.append(Conflict(number, "end of the joint", ends, margin_m))
        if number > 1 and (between := place - places[number - 2] - joint.size_m) < margin_m:
            found.append(Conflict(number, f"neighbour, number {number - 1}", between, margin_m))
    return tuple(found)


def _clear_elsewhere(joint: Joint, cut: LaterCut) -> Fraction:
    """Wood between joint and cut across the glue line or through the thickness, whichever is more."""
    clear = [-LONGEST_M]
    for middle, half, span in ((Fraction(0), joint.reach_m, cut.across), (joint.depth_m, joint.thick_m / 2, cut.depth)):
        if span is not None:
            clear.append(max(clear_before(middle, half, span[0]), clear_after(middle, half, span[1])))
    return max(clear)


def _plan(
    joint: Joint, wanted: tuple[Fraction, ...], cuts: tuple[LaterCut, ...], margin_m: Fraction, keep_mirrored: bool
) -> JointPlan:
    conflicts = conflicts_of(joint, wanted, cuts, margin_m)
    mirrored = keep_mirrored and all(a + b == joint.length_m for a, b in zip(wanted, wanted[::-1], strict=True))
    if not conflicts:
        return JointPlan(joint, wanted, (), wanted, margin_m, mirrored)
    half = joint.size_m / 2
    forbidden = [
        (c.low_m - margin_m - half, c.high_m + margin_m + half) for c in cuts if _clear_elsewhere(joint, c) < margin_m
    ]
    inside = margin_m + half, joint.length_m - margin_m - half
    apart = joint.size_m + margin_m
    places = (_mirrored if mirrored else _one_sided)(joint.length_m, wanted, forbidden, inside, apart)
    return JointPlan(joint, wanted, conflicts, places, margin_m, mirrored)


def _one_sided(
    length_m: Fraction, wanted, forbidden: list[Span], inside: Span, apart: Fraction
) -> tuple[Fraction, ...] | None:
    places = nearest_places(list(wanted), free_spans(*inside, forbidden), apart)
    return None if places is None else tuple(places)


def _mirrored(
    length_m: Fraction, wanted, forbidden: list[Span], inside: Span, apart: Fraction
) -> tuple[Fraction, ...] | None:
    """Move the first half, clear of the cuts of both halves, and mirror it; a place in the very middle stays."""
    middle, half_count = length_m / 2, len(wanted) // 2
    both_halves = [*forbidden, *((length_m - high, length_m - low) for low, high in forbidden)]
    centre = (middle,) if len(wanted) % 2 else ()
    if any(low < place < high for place in centre for low, high in both_halves):
        return None
    last = middle - (apart if centre else apart / 2)
    free = free_spans(inside[0], min(last, inside[1]), both_halves)
    first = nearest_places(list(wanted[:half_count]), free, apart)
    return None if first is None else (*first, *centre, *(length_m - place for place in first[::-1]))


def _checked_cuts(problems: Problems, cuts: object) -> tuple[LaterCut, ...]:
    listed: list[Any] = list(cuts) if isinstance(cuts, list | tuple) else [cuts]
    for number, cut in enumerate(listed, start=1):
        check_kind(problems, f"cut {number}", cut, LaterCut, "LaterCut('end cut', '2 in', '2-1/8 in')")
    return tuple(listed)


def _read_positions(problems: Problems, positions: object, length_m: Fraction) -> tuple[Fraction, ...]:
    listed = list(positions) if isinstance(positions, list | tuple) else []
    if not 1 <= len(listed) <= MOST_PLACES:
        problems.add(
            f"positions is {shown(positions)}; write a list of 1 to {MOST_PLACES} places such as ['2 in', '10 in']."
        )
    read = [
        read_exact(problems, f"position {number}", place, high=length_m) for number, place in enumerate(listed, start=1)
    ]
    places = [place for place in read if place]
    if any(b <= a for a, b in zip(places, places[1:], strict=False)):
        problems.add("positions are not in order from the end; write them in order, each once.")
    return tuple(places)
