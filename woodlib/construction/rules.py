"""Dimensions as data: sums of smooth numbers, the larger-of that gives room to a travel, and safe rounding."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..reading.decided import Decided, larger
from ..units import both


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

    ``fine`` dimensions are written to 1/32 in and half a millimetre, all others to 1/16 in and a millimetre.
    """

    name: str
    terms: tuple[Term, ...]
    rounding: str
    why: str
    fine: bool = False

    def size(self, quantities: Mapping[str, float]) -> Decided:
        """The dimension in metres, remembered with its decisions."""
        return total(self.terms, quantities)

    def cut(self, quantities: Mapping[str, float]) -> Cut:
        """The dimension for these numbers."""
        return Cut(self.name, float(self.size(quantities)), self.rounding, self.why, self.fine)


def fixed(name: str, times: float = 1.0) -> Term:
    """A size that is there whatever the wood does."""
    return Term(name, times)


def travel(name: str, times: float = 1.0) -> Term:
    """Room for a travel, counted only where it happens."""
    return Term(name, times, only_room=True)


@dataclass(frozen=True)
class Cut:
    """One dimension to cut today, in metres, and which way it may be rounded."""

    name: str
    metres: float
    rounding: str
    why: str
    fine: bool = False

    def text(self, first: str = "customary") -> str:
        """The dimension as the shop reads it, rounded the safe way.

        >>> Cut("slot", 0.0131, "up", "").text()
        '9/16 in (14 mm)'
        """
        denominator, step_mm = (32, 0.5) if self.fine else (16, 1)
        return both(self.metres, denominator, step_mm, self.rounding, first)


@dataclass(frozen=True)
class NoteRule:
    """A remark that is said where the sum of its terms is above zero."""

    terms: tuple[Term, ...]
    sentence: str

    def said(self, quantities: Mapping[str, float]) -> bool:
        """Whether the remark holds for these numbers."""
        return float(total(self.terms, quantities)) > 0.0


@dataclass(frozen=True)
class Facts:
    """What the words on a month may use: smooth numbers and the lengths they lead to."""

    quantities: Mapping[str, float]

    def moves(self, name: str) -> bool:
        """Whether a travel happens at all at its careful end."""
        return float(room(self.quantities[name])) > 0.0

    def up_to(self, name: str) -> str:
        """The most a travel can need, as the shop reads it, rounded up."""
        return f"up to {both(float(room(self.quantities[name])), rounding='up')}" if self.moves(name) else "nothing"

    def at_least(self, name: str) -> str:
        """A size that is kept, rounded down."""
        return both(self.quantities[name], rounding="down")
