"""Dimensions as data: sums of smooth numbers, the larger-of that gives room to a travel, and safe rounding."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from ..units import both, inch_fraction, millimetres, rounded_steps
from ..words.decided import Decided, larger

EXACT_INCH_M = Fraction(254, 10_000)
INCH_M = float(EXACT_INCH_M)


def room(travel: float | Decided) -> Decided:
    """Room that a travel needs: its size where it happens, nothing where it goes the other way."""
    return larger(travel, 0.0)


@dataclass(frozen=True)
class Term:
    """``times`` a named quantity; ``only_room`` counts it as nothing where it is negative."""

    name: str
    times: float = 1.0
    only_room: bool = False


def total(terms: tuple[Term, ...], quantities: Mapping[str, float]) -> Decided:
    """Sum of terms, remembered with its decisions.

    >>> float(total((fixed("pin"), travel("outward"), travel("inward")), {"pin": 10.0, "outward": -3.0, "inward": 2.0}))
    12.0
    """
    together = Decided("+", 0.0, 0.0)
    for term in terms:
        value = quantities[term.name]
        together = together + term.times * (room(value) if term.only_room else value)
    return together


@dataclass(frozen=True)
class CutRule:
    """A dimension to cut today as a sum of terms; gaps round up, tongues and panels round down.

    ``key`` is what the kit calls it, ``label`` what a reader does. ``fine`` dimensions are written to 1/32 in and half
    a millimetre, all others to 1/16 in and a millimetre. A length with ``reaches``, the rules of its two halves from
    one centre, is written as the sum of the two as they are written.
    """

    key: str
    label: str
    terms: tuple[Term, ...]
    rounding: str
    why: str
    fine: bool = False
    reaches: tuple[CutRule, ...] = ()

    def size(self, quantities: Mapping[str, float]) -> Decided:
        """The dimension in metres, remembered with its decisions."""
        return total(self.terms, quantities)

    def cut(self, quantities: Mapping[str, float]) -> Cut:
        """The dimension for these numbers."""
        reaches = tuple(rule.cut(quantities) for rule in self.reaches)
        return Cut(self.key, self.label, float(self.size(quantities)), self.rounding, self.why, self.fine, reaches)


def up(
    key: str, label: str, terms: tuple[Term, ...], why: str, fine: bool = False, reaches: tuple[CutRule, ...] = ()
) -> CutRule:
    """A gap, a slot or a groove: never narrower than the sum."""
    return CutRule(key, label, terms, "up", why, fine, reaches)


def down(key: str, label: str, terms: tuple[Term, ...], why: str, fine: bool = False) -> CutRule:
    """A tongue, or what goes into an opening: never wider than the sum."""
    return CutRule(key, label, terms, "down", why, fine)


def fixed(name: str, times: float = 1.0) -> Term:
    """A size that is there whatever the wood does."""
    return Term(name, times)


def travel(name: str, times: float = 1.0) -> Term:
    """Room for a travel, counted only where it happens."""
    return Term(name, times, only_room=True)


@dataclass(frozen=True)
class Cut:
    """One dimension to cut today, in metres, and which way it may be rounded."""

    key: str
    label: str
    metres: float
    rounding: str
    why: str
    fine: bool = False
    reaches: tuple[Cut, ...] = ()

    @property
    def _steps(self) -> tuple[int, float]:
        """Steps of an inch, and of a millimetre; a size that these would round down to nothing has finer ones."""
        steps = (32, 0.5) if self.fine else (16, 1)
        lost = self.rounding == "down" and self.metres > 0.0 and not self.reaches
        if lost and not all(rounded_steps(size, per, "down") for size, per in self._in(steps)):
            return (64, 0.1)
        return steps

    def _in(self, steps: tuple[int, float]) -> tuple[tuple[float, int], tuple[float, int]]:
        return (self.metres / INCH_M, steps[0]), (1000.0 * self.metres, round(1 / steps[1]))

    def steps(self) -> tuple[int, int]:
        """The dimension as it is written, in steps of an inch and of a millimetre."""
        if self.reaches:
            inch_steps, mm_steps = zip(*(reach.steps() for reach in self.reaches), strict=True)
            return sum(inch_steps), sum(mm_steps)
        in_inches, in_mm = self._in(self._steps)
        return rounded_steps(*in_inches, self.rounding), rounded_steps(*in_mm, self.rounding)

    def written_m(self, first: str = "customary") -> Fraction:
        """The dimension as it is written in one system, exactly: what leaves the shop, metres.

        >>> Cut("slot", "slot", 0.0131, "up", "").written_m("metric")
        Fraction(7, 500)
        """
        denominator, step_mm = self._steps
        inch_steps, mm_steps = self.steps()
        if first == "customary":
            return Fraction(inch_steps, denominator) * EXACT_INCH_M
        return Fraction(mm_steps, 1000 * round(1 / step_mm))

    def text(self, first: str = "customary") -> str:
        """The dimension as the shop reads it, rounded the safe way.

        >>> Cut("slot", "slot", 0.0131, "up", "").text()
        '9/16 in (14 mm)'
        """
        denominator, step_mm = self._steps
        if not self.reaches:
            return self._never_nothing(both(self.metres, denominator, step_mm, self.rounding, first))
        inch_steps, mm_steps = self.steps()
        texts = (
            inch_fraction(Fraction(inch_steps, denominator) * EXACT_INCH_M, denominator),
            millimetres(Fraction(mm_steps, round(1000 / step_mm)), step_mm),
        )
        head, tail = texts if first == "customary" else texts[::-1]
        return f"{head} ({tail})"

    def _never_nothing(self, text: str) -> str:
        """The text of something too thin for the rule in inches: that it is there must not be lost."""
        lost = self.metres > 0.0 and self.rounding == "down" and not self.steps()[0]
        return re.sub(r"(?<![\d/.-])0 in\b", "under 1/64 in", text) if lost else text


@dataclass(frozen=True)
class NoteRule:
    """A remark that is said where the sum of its terms is above zero."""

    terms: tuple[Term, ...]
    sentence: str

    def said(self, quantities: Mapping[str, float]) -> bool:
        """Whether the remark holds for these numbers."""
        return float(total(self.terms, quantities)) > 0.0
