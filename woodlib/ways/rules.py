"""Dimensions as data: sums of smooth numbers, the larger-of that gives room to a travel, and safe rounding."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from ..units import both, rounded_steps
from ..words.decided import Decided, larger
from ..words.say import Number

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


Part = tuple[float, str]
"""How often a marked size or a number counts in a chain, and its key."""


@dataclass(frozen=True)
class CutRule:
    """A dimension to cut today as a sum of terms; gaps round up, tongues and panels round down.

    ``key`` is what the kit calls it, ``label`` what a reader does. ``fine`` dimensions are written to 1/32 in and half
    a millimetre, all others to 1/16 in and a millimetre. What follows from others that are marked has a ``chain``, of
    keys of sizes or names of numbers, and ``moves``, what the wood does to it from today on: it is written as they come
    to, while ``terms`` stays the smooth size that slides and is judged.
    """

    key: str
    label: str
    terms: tuple[Term, ...]
    rounding: str
    why: str
    fine: bool = False
    chain: tuple[Part, ...] = ()
    moves: tuple[Term, ...] = ()

    def size(self, quantities: Mapping[str, float]) -> Decided:
        """The dimension in metres, remembered with its decisions."""
        return total(self.terms, quantities)


def cuts_of(rules: Mapping[str, CutRule], quantities: Mapping[str, float]) -> dict[str, Cut]:
    """Every size of a way by key: those of a chain follow from what is marked for the others."""
    found: dict[str, Cut] = {}

    def cut(key: str) -> Cut:
        if key not in found:
            rule = rules[key]
            chain = tuple(
                (Fraction(times), cut(of) if of in rules else _typed(quantities[of])) for times, of in rule.chain
            )
            size, moved = float(rule.size(quantities)), float(total(rule.moves, quantities))
            found[key] = Cut(key, rule.label, size, rule.rounding, rule.why, rule.fine, chain, moved)
        return found[key]

    return {key: cut(key) for key in rules}


def _typed(metres: float) -> Fraction:
    """A size that somebody typed, exactly again: nothing is typed finer than a nanometre."""
    return Fraction(round(metres * 10**9), 10**9)


def up(
    key: str,
    label: str,
    terms: tuple[Term, ...],
    why: str,
    fine: bool = False,
    chain: tuple[Part, ...] = (),
    moves: tuple[Term, ...] = (),
) -> CutRule:
    """A gap, a slot or a groove: never narrower than the sum."""
    return CutRule(key, label, terms, "up", why, fine, chain, moves)


def down(
    key: str,
    label: str,
    terms: tuple[Term, ...],
    why: str,
    fine: bool = False,
    chain: tuple[Part, ...] = (),
    moves: tuple[Term, ...] = (),
) -> CutRule:
    """A tongue, or what goes into an opening: never wider than the sum."""
    return CutRule(key, label, terms, "down", why, fine, chain, moves)


def fixed(name: str, times: float = 1.0) -> Term:
    """A size that is there whatever the wood does."""
    return Term(name, times)


def travel(name: str, times: float = 1.0) -> Term:
    """Room for a travel, counted only where it happens."""
    return Term(name, times, only_room=True)


@dataclass(frozen=True)
class Cut:
    """One dimension to cut today, in metres, and which way it may be rounded.

    ``chain`` the marked sizes and the typed ones that it follows from, each with how often it counts; ``moved`` what the
    wood does to it from today on. ``metres`` is the smooth size, before anything is marked.
    """

    key: str
    label: str
    metres: float
    rounding: str
    why: str
    fine: bool = False
    chain: tuple[tuple[Fraction, Cut | Fraction], ...] = ()
    moved: float = 0.0

    def _exact_m(self, first: str) -> float | Fraction:
        """What is rounded: the smooth size, or what the marked sizes come to."""
        if not self.chain:
            return self.metres
        sizes = ((times, part.written_m(first) if isinstance(part, Cut) else part) for times, part in self.chain)
        marked = sum((times * size for times, size in sizes), Fraction(0))
        return float(marked) + self.moved if self.moved else marked

    def _step(self, first: str) -> tuple[int, float]:
        """The steps of an inch and of a millimetre: finer ones for what follows from halves, or would be lost in these."""
        steps = (32, 0.5) if self.fine or self.chain else (16, 1)
        if self.rounding == "down" and self.metres > 0.0:
            exact = self._exact_m(first)
            lost = not all(rounded_steps(size, per, "down") for size, per in _in_steps(exact, steps))
            return (64, 0.1) if lost and exact > 0 else steps
        return steps

    def written_m(self, first: str = "customary") -> Fraction:
        """The dimension as it is written in one system, exactly: what leaves the shop, metres.

        >>> Cut("slot", "slot", 0.0131, "up", "").written_m("metric")
        Fraction(7, 500)
        """
        steps = self._step(first)
        inches, mm = _in_steps(self._exact_m(first), steps)
        if first == "customary":
            return Fraction(rounded_steps(*inches, self.rounding), steps[0]) * EXACT_INCH_M
        return Fraction(rounded_steps(*mm, self.rounding), 1000 * mm[1])

    def text(self, first: str = "customary") -> str:
        """The dimension as the shop reads it, rounded the safe way once; the other system says what is marked.

        >>> Cut("slot", "slot", 0.0131, "up", "").text()
        '9/16 in (14.5 mm)'
        """
        text = both(self._exact_m(first), *self._step(first), self.rounding, first)
        lost = self.metres > 0.0 and not self.written_m(first)
        return re.sub(r"(?<![\d/.-])0 in\b", "under 1/64 in", text) if lost and self.rounding == "down" else text

    def number(self, first: str = "customary") -> Number:
        """The dimension as it is marked, as a number for a sentence."""
        kind = {16: "length", 32: "movement", 64: "fine_length"}[self._step(first)[0]]
        return Number(float(self.written_m(first)), kind)


def _in_steps(metres: float | Fraction, steps: tuple[int, float]) -> tuple[tuple[Any, int], tuple[Any, int]]:
    """A size with the steps that it is written in: in inches, and in millimetres."""
    inch = EXACT_INCH_M if isinstance(metres, Fraction) else INCH_M
    return (metres / inch, steps[0]), (1000 * metres, round(1 / steps[1]))


@dataclass(frozen=True)
class NoteRule:
    """A remark that is said where the sum of its terms is above zero."""

    terms: tuple[Term, ...]
    sentence: str

    def said(self, quantities: Mapping[str, float]) -> bool:
        """Whether the remark holds for these numbers."""
        return float(total(self.terms, quantities)) > 0.0
