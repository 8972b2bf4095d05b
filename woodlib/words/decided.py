"""Numbers and words that are decided by a kink: a larger-of, a smaller-of, a threshold.

A study's answer is drawn live by Python, but in a handout a page without Python must draw it again from a
table of smooth numbers. Smooth numbers can be interpolated; a kink cannot. So a study keeps its kinks in
sight: :func:`larger`, :func:`smaller` and :func:`reached` return a :class:`Decided` number that remembers
how it came about, and :func:`pick` returns words (or a colour role) that hang on such a number. Python reads
their present value; a page repeats the few steps.

>>> gap = larger(0.002, 0.0031)
>>> float(gap * 1000)
3.1
>>> pick(0.006, [0.004, 0.009], ["stays elastic", "takes a set", "fails"]).chosen
'takes a set'
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from ..errors import InputError

# The steps a page can repeat. A step has two operands, each a plain number or another Decided.
STEPS: dict[str, Callable[[float, float], float]] = {
    "+": lambda a, b: a + b,
    "-": lambda a, b: a - b,
    "*": lambda a, b: a * b,
    "/": lambda a, b: a / b,
    "larger": lambda a, b: a if a >= b else b,
    "smaller": lambda a, b: a if a <= b else b,
    # An edge counts as reached a ten-millionth before it, so that a table cannot fall short of it by its own rounding.
    "reached": lambda a, b: 1.0 if a >= b - 1e-7 * max(abs(a), abs(b)) else 0.0,
}


class Decided:
    """A number with the step that made it; arithmetic with plain numbers keeps the record."""

    __slots__ = ("step", "first", "second", "value")

    def __init__(self, step: str, first: float | Decided, second: float | Decided) -> None:
        self.step, self.first, self.second = step, first, second
        self.value = STEPS[step](float(first), float(second))

    def __float__(self) -> float:
        return self.value

    def __repr__(self) -> str:
        return f"Decided({self.value:.6g})"

    def __add__(self, other):
        return Decided("+", self, other)

    def __radd__(self, other):
        return Decided("+", other, self)

    def __sub__(self, other):
        return Decided("-", self, other)

    def __rsub__(self, other):
        return Decided("-", other, self)

    def __mul__(self, other):
        return Decided("*", self, other)

    def __rmul__(self, other):
        return Decided("*", other, self)

    def __truediv__(self, other):
        return Decided("/", self, other)

    def __rtruediv__(self, other):
        return Decided("/", other, self)

    def __neg__(self):
        return Decided("-", 0.0, self)

    def _no_branch(self, other):
        raise InputError(
            "A decided number cannot be compared with <, > or ==, because a page could not repeat the choice; "
            "write pick(number, [edges], [options]) or reached(number, edge) instead."
        )

    __lt__ = __le__ = __gt__ = __ge__ = __eq__ = _no_branch
    __hash__ = object.__hash__


def larger(first: float | Decided, second: float | Decided) -> Decided:
    """The larger of two numbers, remembered as a decision."""
    return Decided("larger", first, second)


def smaller(first: float | Decided, second: float | Decided) -> Decided:
    """The smaller of two numbers, remembered as a decision."""
    return Decided("smaller", first, second)


def size_of(number: float | Decided) -> Decided:
    """The number without its sign."""
    return Decided("larger", number, Decided("-", 0.0, number))


def reached(number: float | Decided, edge: float | Decided) -> Decided:
    """1 where ``number`` is at or above ``edge``, else 0."""
    return Decided("reached", number, edge)


def level(number: float | Decided, edges: Sequence[float | Decided]) -> Decided:
    """How many of the ascending ``edges`` the number has reached: 0, 1, 2 ..."""
    total: Any = 0.0
    for edge in edges:
        total = reached(number, edge) + total
    return total if isinstance(total, Decided) else Decided("+", total, 0.0)


@dataclass(frozen=True)
class Pick:
    """One of several options, chosen by a whole number. Options are words, roles, sentences or on/off."""

    index: float | Decided
    options: tuple[Any, ...]

    def __post_init__(self) -> None:
        if not 0 <= round(float(self.index)) < len(self.options):
            raise InputError(
                f"A pick was asked for option {float(self.index):g}, but it has options 0 to {len(self.options) - 1}; "
                "give one option more than there are edges."
            )

    @property
    def chosen(self) -> Any:
        """The option that holds now."""
        return self.options[round(float(self.index))]


def pick(number: float | Decided, edges: Sequence[float | Decided], options: Sequence[Any]) -> Pick:
    """Choose ``options[k]``, where k is the number of ascending ``edges`` that ``number`` has reached."""
    if len(options) != len(edges) + 1:
        raise InputError(
            f"pick() was given {len(edges)} edges and {len(options)} options; give one option more than edges."
        )
    return Pick(level(number, edges), tuple(options))


def chosen(value: Any) -> Any:
    """The present value of anything that may or may not be a pick."""
    return value.chosen if isinstance(value, Pick) else value
