"""A blank divided along one direction into pieces, kerfs and waste, from one end to the other, without a gap."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from ..units.exact import Rounding, exact_text

WASTE = ("kerf", "trim", "spare", "planing", "flattening", "jointing", "turning")
"""Kinds of part that are not kept; ``piece`` is the one that is."""


@dataclass(frozen=True)
class Part:
    """One part of a blank: ``kind`` is piece or one of ``WASTE``; ``number`` counts the pieces from 1, waste has 0."""

    name: str
    kind: str
    size_m: Fraction
    number: int = 0


@dataclass(frozen=True)
class Division:
    """Parts in order from one end of a blank to the other; their sum is the blank, exactly.

    >>> parts = Part("trim", "trim", Fraction(1, 100)), Part("panel", "piece", Fraction(1, 2), 1)
    >>> Division("length", parts).total_m
    Fraction(51, 100)
    """

    direction: str
    parts: tuple[Part, ...]

    @property
    def total_m(self) -> Fraction:
        """Size of the blank in this direction, m."""
        return sum((part.size_m for part in self.parts), Fraction(0))

    @property
    def pieces(self) -> tuple[Part, ...]:
        """The parts that are kept."""
        return tuple(part for part in self.parts if part.kind == "piece")

    def of_kind_m(self, kind: str) -> Fraction:
        """All parts of one kind together, m."""
        return sum((part.size_m for part in self.parts if part.kind == kind), Fraction(0))

    def spans(self) -> Iterator[tuple[Part, Fraction, Fraction]]:
        """Every part with where it begins and ends, from the blank's end, m."""
        at = Fraction(0)
        for part in self.parts:
            yield part, at, at + part.size_m
            at += part.size_m

    def span(self, number: int) -> tuple[Fraction, Fraction]:
        """Where the piece of this number begins and ends, m."""
        return next((low, high) for part, low, high in self.spans() if part.number == number)

    @property
    def mirrored(self) -> bool:
        """Whether the division reads the same from both ends."""
        sizes = [(part.kind, part.size_m) for part in self.parts]
        return sizes == sizes[::-1]

    def adds_up(self, first: str = "metric") -> str:
        """The sum in words, every part exact in the units of a system, equal parts counted together.

        >>> kerf = Part("kerf", "kerf", Fraction(3, 1000))
        >>> Division("length", (kerf, Part("lid", "piece", Fraction(1, 2), 1), kerf)).adds_up()
        '2 x kerf 3 mm + lid 500 mm = 506 mm'
        """
        counted: dict[tuple[str, Fraction], int] = {}
        spare = self.of_kind_m("spare")  # a rounding, said in one: its halves may be finer than any rule
        for part in self.parts:
            if part.size_m and part.kind != "spare":
                counted[part.name, part.size_m] = counted.get((part.name, part.size_m), 0) + 1
        terms = [
            f"{n} x {name} {exact_text(size, first)}" if n > 1 else f"{name} {exact_text(size, first)}"
            for (name, size), n in counted.items()
        ]
        if spare:
            name = next(part.name for part in self.parts if part.kind == "spare")
            terms.append(f"{name} {exact_text(spare, first)}")
        return f"{' + '.join(terms)} = {exact_text(self.total_m, first)}"


def with_waste(
    direction: str, inside: list[Part], waste: list[Part], rule: str | None
) -> tuple[Division, Rounding | None]:
    """A division with the same waste at both ends, from outside in, brought up to a rule by a spare in two halves.

    Returns the division and its rounding; ``rule`` None leaves the length as it comes.
    """
    parts = [*waste, *inside, *waste[::-1]]
    exact = sum((part.size_m for part in parts), Fraction(0))
    if rule is None:
        return Division(direction, tuple(parts)), None
    rounding = Rounding(exact, rule, "up")
    half = rounding.error_m / 2
    spare = [Part("spare", "spare", half)] if half else []
    return Division(direction, (*spare, *parts, *spare)), rounding
