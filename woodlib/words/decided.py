"""Numbers and words that are decided by a kink: a larger-of, a smaller-of, a threshold.

A study's answer is drawn live by Python, but in a handout a page without Python must draw it again from a
table of smooth numbers. Smooth numbers can be interpolated; a kink cannot. So a study keeps its kinks in
sight: :func:`larger`, :func:`smaller` and :func:`reached` return a :class:`Decided` number that remembers
how it came about, and :func:`pick` returns words (or a colour role) that hang on such a number. Python reads
their present value; a page repeats the few steps. Whatever NumPy function of a decided number a page can repeat
(:mod:`woodlib.words.steps`) gives a decided number again, so plain physics may be handed one.

>>> gap = larger(0.002, 0.0031)
>>> float(gap * 1000)
3.1
>>> pick(0.006, [0.004, 0.009], ["stays elastic", "takes a set", "fails"]).chosen
'takes a set'
>>> np.minimum(gap, np.array([0.001, 0.01]))
Decideds([Decided(0.001), Decided(0.0031)], dtype=object)
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import reduce
from typing import Any, TypeAlias

import numpy as np

from ..errors import InputError
from .many import Many
from .steps import STEPS

NO_BRANCH = (
    "A decided number cannot be compared with <, > or ==, because a page could not repeat the choice; "
    "write pick(number, [edges], [options]) or reached(number, edge) instead."
)


Sliding: TypeAlias = Any
"""A slider's number as a study computes with it: a float, a :class:`Many` or a :class:`Decided`. Not spelt out, because
NumPy's annotations of its functions know no numbers but its own."""


class Decided:
    """A number with the step that made it, worked out when it is first asked for; a function of it keeps the record."""

    __slots__ = ("_value", "first", "second", "step")

    def __init__(self, step: str, first: Sliding, second: Sliding) -> None:
        self.step, self.first, self.second = step, first, second
        self._value: Any = None

    @property
    def value(self) -> Any:
        """The present number; a :class:`Many` where its study is asked at many states."""
        if self._value is None:
            self._value = STEPS[self.step].python(now(self.first), now(self.second))
        return self._value

    def __float__(self) -> float:
        return float(self.value)

    def __repr__(self) -> str:
        value = self.value
        return f"Decided({value!r})" if isinstance(value, Many) else f"Decided({value:.6g})"

    def __array_ufunc__(self, ufunc: np.ufunc, method: str, *inputs: Any, **options: Any) -> Any:
        if method != "__call__" or options:
            return NotImplemented
        if all(np.ndim(value) == 0 for value in inputs):
            return _decided(ufunc, inputs)
        split = [_one_by_one(value) for value in inputs]
        shape = np.broadcast_shapes(*(np.shape(value) for value in split))
        result = np.empty(shape, object).view(Decideds)
        parts = [np.broadcast_to(value, shape) for value in split]
        for place in np.ndindex(*shape):
            result[place] = _decided(ufunc, [part[place] for part in parts])
        return result

    def clip(self, low: Sliding, high: Sliding, **_options: Any) -> Any:
        """As ``np.clip``, which looks for this."""
        return smaller(larger(self, low), high)

    def __add__(self, other: Any) -> Any:
        return _two("+", np.add, self, other)

    def __radd__(self, other: Any) -> Any:
        return _two("+", np.add, other, self)

    def __sub__(self, other: Any) -> Any:
        return _two("-", np.subtract, self, other)

    def __rsub__(self, other: Any) -> Any:
        return _two("-", np.subtract, other, self)

    def __mul__(self, other: Any) -> Any:
        return _two("*", np.multiply, self, other)

    def __rmul__(self, other: Any) -> Any:
        return _two("*", np.multiply, other, self)

    def __truediv__(self, other: Any) -> Any:
        return _two("/", np.divide, self, other)

    def __rtruediv__(self, other: Any) -> Any:
        return _two("/", np.divide, other, self)

    def __pow__(self, other: Any) -> Any:
        return self.__array_ufunc__(np.power, "__call__", self, other)

    def __neg__(self) -> Decided:
        return Decided("-", 0.0, self)

    def __pos__(self) -> Decided:
        return self

    def __abs__(self) -> Decided:
        return Decided("size", self, self)

    def _no_branch(self, other: Any) -> Any:
        raise InputError(NO_BRANCH)

    __lt__ = __le__ = __gt__ = __ge__ = __eq__ = __ne__ = _no_branch
    __hash__ = object.__hash__


class Decideds(np.ndarray):
    """An array that holds decided numbers; functions of it go number by number."""

    __array_priority__ = 1.0  # what is joined of it and plain arrays stays one

    def __array_ufunc__(self, ufunc: np.ufunc, method: str, *inputs: Any, **options: Any) -> Any:
        if method == "reduce":
            return self._reduced(ufunc, **options)
        return Decided.__array_ufunc__(self, ufunc, method, *inputs, **options)  # type: ignore[arg-type]

    def _reduced(self, ufunc: np.ufunc, axis: Any = 0, **_options: Any) -> Any:
        rows = self.reshape(-1) if axis is None else np.moveaxis(self, axis, 0)
        return reduce(ufunc, rows)


# How a page makes what has no step of its own.
_COMPOSED: dict[str, Callable[..., Any]] = {
    "negative": lambda a: Decided("-", 0.0, a),
    "positive": lambda a: a,
    "square": lambda a: Decided("*", a, a),
    "clip": lambda a, low, high: np.minimum(np.maximum(a, low), high),
    "deg2rad": lambda a: Decided("*", a, np.pi / 180.0),
    "radians": lambda a: Decided("*", a, np.pi / 180.0),
}
_STEP_OF = {step.ufunc: name for name, step in STEPS.items() if step.ufunc}


def _decided(ufunc: np.ufunc, inputs: Sequence[Any]) -> Any:
    """A function of single numbers, some of them decided."""
    name = ufunc.__name__
    if not any(isinstance(value, Decided) for value in inputs):
        return ufunc(*inputs)
    if name in _COMPOSED:
        return _COMPOSED[name](*inputs)
    if name == "power" and _is_small_whole(inputs[1]):
        return reduce(lambda made, factor: Decided("*", made, factor), [inputs[0]] * int(inputs[1]))
    if name not in _STEP_OF:
        raise InputError(
            NO_BRANCH if name in _COMPARISONS else f"A page cannot repeat np.{name}() of a decided number."
        )
    return Decided(_STEP_OF[name], inputs[0], inputs[-1])


_COMPARISONS = ("less", "less_equal", "greater", "greater_equal", "equal", "not_equal")


def _is_small_whole(power: Any) -> bool:
    return isinstance(power, int | float | np.generic) and power in (1, 2, 3, 4)


def _two(step: str, ufunc: np.ufunc, first: Any, second: Any) -> Any:
    other = second if type(first) is Decided else first
    if type(other) not in _SINGLE and np.ndim(other):
        return ufunc(first, second)
    return Decided(step, first, second)


_SINGLE = {Decided, float, int, np.float64}


def _one_by_one(value: Any) -> Any:
    """An array at many states as an array of numbers at many states."""
    if not isinstance(value, Many) or not value.ndim:
        return value
    parts = np.empty(value.shape, object)
    for place in np.ndindex(*value.shape):
        parts[place] = value[place]
    return parts


def now(value: Any) -> Any:
    """The present value of a number, decided or not."""
    return value.value if isinstance(value, Decided) else value


def in_sight(number: Sliding) -> Decided:
    """The same number, remembered from here on: what plain physics does to it, kinks included, a page repeats."""
    return Decided("+", number, 0.0)


def larger(first: Sliding, second: Sliding) -> Decided:
    """The larger of two numbers, remembered as a decision."""
    return Decided("larger", first, second)


def smaller(first: Sliding, second: Sliding) -> Decided:
    """The smaller of two numbers, remembered as a decision."""
    return Decided("smaller", first, second)


def size_of(number: Sliding) -> Decided:
    """The number without its sign."""
    return Decided("size", number, number)


def reached(number: Sliding, edge: Sliding) -> Decided:
    """1 where ``number`` is at or above ``edge``, else 0."""
    return Decided("reached", number, edge)


def level(number: Sliding, edges: Sequence[Sliding]) -> Decided:
    """How many of the ascending ``edges`` the number has reached: 0, 1, 2 ..."""
    total: Any = 0.0
    for edge in edges:
        total = reached(number, edge) + total
    return total if isinstance(total, Decided) else Decided("+", total, 0.0)


def check_index(index: float | np.ndarray, options: int) -> None:
    """Refuse a pick of an option that there is not, at any state."""
    lowest, highest = float(np.min(index)), float(np.max(index))
    if round(lowest) < 0 or round(highest) >= options:
        raise InputError(
            f"A pick was asked for option {highest if round(lowest) >= 0 else lowest:g}, but it has options 0 to "
            f"{options - 1}; give one option more than there are edges."
        )


@dataclass(frozen=True)
class Pick:
    """One of several options, chosen by a whole number. Options are words, roles, sentences or on/off."""

    index: Sliding
    options: tuple[Any, ...]

    def __post_init__(self) -> None:
        if not isinstance(self.index, Decided):  # a decided one is looked at when it chooses, or is recorded
            check_index(self.index.values if isinstance(self.index, Many) else self.index, len(self.options))

    @property
    def chosen(self) -> Any:
        """The option that holds now."""
        index = float(now(self.index))
        check_index(index, len(self.options))
        return self.options[round(index)]


def pick(number: Sliding, edges: Sequence[Sliding], options: Sequence[Any]) -> Pick:
    """Choose ``options[k]``, where k is the number of ascending ``edges`` that ``number`` has reached."""
    if len(options) != len(edges) + 1:
        raise InputError(
            f"pick() was given {len(edges)} edges and {len(options)} options; give one option more than edges."
        )
    return Pick(level(number, edges), tuple(options))


def chosen(value: Any) -> Any:
    """The present value of anything that may or may not be a pick."""
    return value.chosen if isinstance(value, Pick) else value
