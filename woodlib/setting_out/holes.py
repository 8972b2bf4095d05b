"""Hole centres for hardware, exact and symmetric in mixed units: how to mark them, and what fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ..door import check_kind
from ..errors import InputError, Problems
from ..shop_sizes import TABLES, ShopSize, at_least, sold
from ..units import both, shown
from ..units.exact import INCH, MILLIMETRE, Rounding, check_rule, exact_text, read_exact, read_name, read_whole
from .kernels import error_allowed, hole_for_screw, pair_about
from .practice import ShopPractice, check_practice

LOOSE_M = {"customary": INCH / 32, "metric": MILLIMETRE}
"""How much wider than needed a bit of the shop's own may be (common practice, no source)."""


@dataclass(frozen=True)
class HolePair:
    """Holes of one piece of hardware along one direction of the work, exact, m.

    ``middle_m`` of the hardware from the work's left end; ``holes_m`` from the same end.
    """

    name: str
    work_m: Fraction
    centres_m: Fraction
    middle_m: Fraction
    holes_m: tuple[Fraction, ...]

    @property
    def mirrored(self) -> bool:
        """Whether both ends of the work see the same."""
        return all(a + b == self.work_m for a, b in zip(self.holes_m, self.holes_m[::-1], strict=True))

    @property
    def rest_m(self) -> tuple[Fraction, Fraction]:
        """From the left end to the first hole and from the last hole to the right end, m."""
        return self.holes_m[0], self.work_m - self.holes_m[-1]

    @property
    def says(self) -> str:
        """The layout in words, exact."""
        left, right = (exact_text(rest) for rest in self.rest_m)
        gap = f"{left} on each side" if left == right else f"{left} on the left, {right} on the right"
        return f"{self.name}: centres {exact_text(self.centres_m)} on {both(self.work_m, 64, 0.1)} leave {gap}"


def hole_pair(work: object, centres: object, *, middle: object = None, count: int = 2, name: str = "holes") -> HolePair:
    """Holes at fixed centres about a middle, the work's own middle unless given.

    ``work`` length of the work in that direction; ``centres`` from hole to hole; ``count`` holes in the row.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> hole_pair("455 mm", "160 mm", name="pull").says
    'pull: centres 160 mm on 17-29/32 in (455 mm) leave 147.5 mm on each side'
    >>> [exact_text(hole) for hole in hole_pair("20 in", "128 mm").holes_m]
    ['190 mm', '318 mm']
    """
    problems = Problems()
    name = read_name(problems, "name of the hardware", name, 200)
    work_m, centres_m = read_exact(problems, "work", work), read_exact(problems, "centres", centres)
    number = read_whole(problems, "count of holes", count, 2, 40)
    middle_m = None if middle is None else read_exact(problems, "middle of the hardware", middle, above=False)
    problems.raise_if_any()
    middle_m = work_m / 2 if middle_m is None else middle_m
    first, last = pair_about(middle_m, centres_m * (number - 1))
    if first <= 0 or last >= work_m:
        raise InputError(
            f"{name} would have its outer holes at {both(first, 64, 0.1)} and {both(last, 64, 0.1)} on work of "
            f"{both(work_m, 64, 0.1)}; use narrower centres or move its middle."
        )
    holes = tuple(first + place * centres_m for place in range(number))
    return HolePair(name, work_m, centres_m, middle_m, holes)


def shared_middles(work_m: Fraction, count: int) -> tuple[Fraction, ...]:
    """Middles of ``count`` pieces of hardware that share a length evenly: each in the middle of its own part.

    >>> [float(middle) for middle in shared_middles(Fraction(4), 2)]
    [1.0, 3.0]
    """
    return tuple(work_m * (2 * place + 1) / (2 * count) for place in range(count))


@dataclass(frozen=True)
class Marking:
    """One way to mark a row of holes on a rule: what is read off, and what the rounding does.

    ``middle`` the centre line as read off from the left end, None where it is struck or not used; ``centres_error_m``
    between neighbouring holes, at its largest; ``aside_m`` how far the whole row sits off its exact middle.
    """

    start: str
    marks: tuple[Rounding, ...]
    centres_error_m: Fraction
    aside_m: Fraction
    middle: Rounding | None = None

    @property
    def worst_m(self) -> Fraction:
        """The largest error of any one hole, m."""
        return max(abs(mark.error_m) for mark in self.marks)

    @property
    def misfit_m(self) -> Fraction:
        """How far each hole is off once the hardware is shifted to share the error, m; what counts for the fit."""
        errors = [mark.error_m for mark in self.marks]
        return (max(errors) - min(errors)) / 2

    @property
    def says(self) -> str:
        """The marks, with each rounding."""
        middle = f", which lies at {self.middle.says}" if self.middle else ""
        return f"from {self.start}{middle}: " + "; ".join(mark.says for mark in self.marks)


def markings(pair: HolePair, rule: str = "1/64 in") -> tuple[Marking, Marking]:
    """Two ways to mark the holes with one rule: from the left end, or both ways from a centre line.

    The middle of the work is struck, not read off: halving with dividers is exact; any other middle is read off to the
    rule's step. Nearest mark each time.

    >>> pair = hole_pair("20 in", "128 mm")
    >>> for way in markings(pair, "1 mm"):
    ...     print(way.start, [mark.text for mark in way.marks], exact_text(way.centres_error_m))
    the left end ['190 mm', '318 mm'] 0 mm
    the centre line ['-64 mm', '64 mm'] 0 mm
    >>> [exact_text(way.centres_error_m) for way in markings(pair, "1/16 in")]
    ['1 mm', '1 mm']
    """
    problems = Problems()
    check_rule(problems, rule)
    check_kind(problems, "pair", pair, HolePair, "hole_pair('20 in', '128 mm')")
    problems.raise_if_any()
    from_middle = tuple(hole - pair.middle_m for hole in pair.holes_m)
    middle = None if pair.middle_m * 2 == pair.work_m else Rounding(pair.middle_m, rule)
    return _marking(pair.holes_m, "the left end", rule), _marking(from_middle, "the centre line", rule, middle)


def best_marking(pair: HolePair, rules: Sequence[str] = ("1/64 in", "0.5 mm")) -> tuple[str, Marking]:
    """The rule and the way of marking with the least error between holes, then at any hole, then of the whole row.

    >>> rule, way = best_marking(hole_pair("20 in", "128 mm"))
    >>> rule, way.start, [mark.text for mark in way.marks]
    ('0.5 mm', 'the centre line', ['-64 mm', '64 mm'])
    """
    ways = [(rule, _best_middle(pair, way, rules)) for rule in rules for way in markings(pair, rule)[::-1]]
    return min(ways, key=lambda entry: (entry[1].centres_error_m, entry[1].worst_m, abs(entry[1].aside_m)))


def _best_middle(pair: HolePair, way: Marking, rules: Sequence[str]) -> Marking:
    """The same way with its centre line read off on whichever rule comes nearest."""
    if way.middle is None:
        return way
    best = min((Rounding(pair.middle_m, rule) for rule in rules), key=lambda mark: abs(mark.error_m))
    return replace(way, middle=best, aside_m=way.aside_m - way.middle.error_m + best.error_m)


def _marking(exact: tuple[Fraction, ...], start: str, rule: str, middle: Rounding | None = None) -> Marking:
    marks = tuple(Rounding(place, rule) for place in exact)
    between = max((abs(b.error_m - a.error_m) for a, b in zip(marks, marks[1:], strict=False)), default=Fraction(0))
    aside = sum((mark.error_m for mark in marks), Fraction(0)) / len(marks) + (middle.error_m if middle else 0)
    return Marking(start, marks, between, aside, middle)


@dataclass(frozen=True)
class HoleFit:
    """Whether screws at fixed centres enter their holes, with everything at its worst.

    ``off_m`` how far one screw may sit from where it belongs; ``needs_m`` hole that always takes it; ``drill`` the next
    bit up, see :func:`bit_for`; ``hole_m`` the hole there is, ``allows_m`` the error it allows each screw, None where it is still to be
    drilled.
    """

    screw_m: Fraction
    off_m: Fraction
    needs_m: Fraction
    drill: ShopSize
    hole_m: Fraction | None
    allows_m: Fraction | None

    @property
    def fits(self) -> bool:
        """Whether the hole there is takes the worst case; True where it is still to be drilled."""
        return self.hole_m is None or self.hole_m >= self.needs_m

    @property
    def says(self) -> str:
        """The verdict in a sentence."""
        first = self.drill.first
        off, needs = (both(size, 64, 0.1, "up", first) for size in (self.off_m, self.needs_m))
        need = f"Each hole may be off by {off}, so a {exact_text(self.screw_m, first)} screw needs a hole of {needs}"
        if self.hole_m is None or self.allows_m is None:
            return f"{need}: drill {self.drill.text}."
        allowed = f"a hole of {exact_text(self.hole_m, first)} allows {exact_text(self.allows_m, first)}"
        return (
            f"{need}; {allowed}, which is enough."
            if self.fits
            else f"{need}; {allowed}: mark closer, drill with a jig, or open the hole to {self.drill.text}."
        )


def hole_fit(
    screw: object = None,
    *,
    marking: object = None,
    drilling: object = None,
    rounding_error: object = 0,
    hole: object = None,
    first: str = "customary",
    practice: ShopPractice | None = None,
) -> HoleFit:
    """The clearance that marking and drilling need, or the error that a given hole allows.

    ``marking`` and ``drilling`` tolerances each way, ``rounding_error`` of the marks themselves (``Marking.misfit_m``);
    ``hole`` what the hardware or the bit gives, if that is settled. Two screws at their worst are off in opposite
    directions, each by the sum of all three; a hole wider than its screw by twice that sum takes both.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> hole_fit("4 mm", marking="0.25 mm", drilling="0.25 mm", hole="4.5 mm", first="metric").says
    'Each hole may be off by 0.5 mm (1/32 in), so a 4 mm screw needs a hole of 5 mm (13/64 in); a hole of 4.5 mm allows ...'
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    screw_m = read_exact(
        problems, "screw diameter", practice.screw_diameter_m if screw is None else screw, high=Fraction(1, 20)
    )
    given = (
        ("marking tolerance", practice.marking_tolerance_m if marking is None else marking),
        ("drilling tolerance", practice.drilling_tolerance_m if drilling is None else drilling),
        ("rounding error", rounding_error),
    )
    errors = [read_exact(problems, entry, value, high=Fraction(1, 50), above=False) for entry, value in given]
    hole_m = None if hole is None else read_exact(problems, "hole diameter", hole, high=Fraction(1, 10))
    if first not in TABLES:
        problems.add(f"first is {shown(first)}; it must be customary or metric.")
    if hole_m and screw_m and hole_m < screw_m:
        problems.add(
            f"hole diameter is {both(hole_m, 64, 0.1)}, smaller than the screw, {both(screw_m, 64, 0.1)}; "
            "give the larger hole."
        )
    problems.raise_if_any()
    off = sum(errors, Fraction(0))
    needs = hole_for_screw(screw_m, off, 0)
    allows = None if hole_m is None else error_allowed(hole_m, screw_m)
    return HoleFit(screw_m, off, needs, bit_for(needs, first, practice), hole_m, allows)


def bit_for(needs_m: Fraction, first: str, practice: ShopPractice) -> ShopSize:
    """The bit for a hole: the next one up of the shop's own, unless it is far too wide; then the next one that is sold.

    A hole beyond all of them is opened up to the next step of a rule.

    >>> bit_for(Fraction(47, 10_000), "metric", ShopPractice(drills_m=("4 mm", "6 mm"))).text
    '5 mm'
    """
    own = at_least(practice.sizes("drill", first), needs_m)
    if own and own.size_m <= needs_m + LOOSE_M[first]:
        return own
    opened = Rounding(needs_m, "1 mm" if first == "metric" else "1/16 in", "up")
    return at_least(sold("drill", first), needs_m) or ShopSize(opened.text, opened.marked_m, first)
