"""The one door: what an argument may be, checked once, and one sentence about it where it is not.

A sentence says what was given, what is accepted and how to put it right; all sentences are raised together.
"""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import wraps
from typing import Any

import numpy as np

from .errors import InputError, Problems
from .units import check_share, metres, number_in, shown

WETTEST_MC_PERCENT = 250.0  # green sapwood of light woods can hold twice its own dry mass in water


@dataclass(frozen=True)
class Limits:
    """What one argument may be: its range, its unit as words and as ``units`` knows it, and what to do."""

    low: float
    high: float
    unit: str
    advice: str
    pint_unit: str = ""
    above_low: bool = False  # True: the low end itself is refused
    share: str = ""  # "rh" or "mc": text that names the other percentage is refused
    plain_high: float = math.inf  # above it a number without a unit is refused, since another unit is likely meant

    def __post_init__(self) -> None:
        if not self.pint_unit:
            object.__setattr__(self, "pint_unit", self.unit)

    def accepted(self) -> str:
        """The range in words, for an error sentence."""
        if np.isinf(self.high):
            return f"{'above' if self.above_low else 'at least'} {self.low:g} {self.unit}"
        joint = "above {low:g} and up to {high:g} {unit}" if self.above_low else "{low:g} to {high:g} {unit}"
        return joint.format(low=self.low, high=self.high, unit=self.unit)

    def refusal(self, name: str, written: str) -> str:
        """The sentence about a value that is not accepted, as ``written``."""
        return f"{name} is {written}; it must be {self.accepted()}: {self.advice}."


def read_values(value: Any, limits: Limits, *, name: str, problems: Problems) -> Any:
    """Turn one argument into floats within ``limits``, or add the sentence that says why not.

    Text and quantities go through ``units``; arrays that follow NumPy's protocols are kept as they are.
    Returns the array (or NaN when a problem was added).
    """
    try:
        array = _as_floats(value, limits, name)
    except InputError as error:
        problems.absorb(error)
        return np.nan
    except (TypeError, ValueError):
        problems.add(f"{name} is {value!r}, which is not a number; {limits.advice} ({limits.accepted()}).")
        return np.nan
    if isinstance(value, int | float) and limits.plain_high < value <= limits.high:
        problems.add(
            f'{name} is {value:g} without a unit; write "{value:g} degF", or "{value:g} degC" if that is meant.'
        )
        return np.nan
    sentence = _out_of_range(array, limits, name)
    if sentence:
        problems.add(sentence)
        return np.nan
    return array


def _as_floats(value: Any, limits: Limits, name: str) -> Any:
    if isinstance(value, str) or hasattr(value, "magnitude"):
        check_share(value, limits.share, name)
        value = number_in(value, limits.pint_unit, name=name, default_unit=limits.pint_unit)
    if isinstance(value, np.ma.MaskedArray):
        value = np.ma.filled(value.astype(float), np.nan)
    if isinstance(value, bool) or value is None:
        raise TypeError
    if not isinstance(value, np.ndarray) and hasattr(value, "__array_function__"):
        return value
    array = np.asarray(value)
    if array.dtype.kind not in "fiu":
        array = np.asarray(value, dtype=object).astype(float) if array.dtype.kind == "O" else _refuse()
    return array.astype(float, copy=False)


def _refuse() -> Any:
    raise TypeError


def _out_of_range(array: Any, limits: Limits, name: str) -> str:
    """One sentence about the first value outside the limits; empty when all are inside."""
    if getattr(array, "size", 1) == 0:
        return f"{name} is empty; {limits.advice}."
    low = array > limits.low if limits.above_low else array >= limits.low
    good = low & (array <= limits.high) & np.isfinite(array)
    if bool(np.all(good)):
        return ""
    flat_good, flat = np.ravel(np.asarray(good)), np.ravel(np.asarray(array))
    bad = np.flatnonzero(~flat_good)
    where = "" if flat.size == 1 else f" (value {bad[0] + 1} of {flat.size}; {bad.size} in all are refused)"
    return limits.refusal(name, f"{flat[bad[0]]:g} {limits.unit}{where}")


def check_shapes(problems: Problems, **arrays: Any) -> None:
    """Add a sentence when the arrays cannot be combined."""
    shapes = {name: np.shape(array) for name, array in arrays.items()}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        listed = ", ".join(f"{name} {shape}" for name, shape in shapes.items())
        problems.add(f"the arrays do not fit together: {listed}; give single numbers or arrays of one shape.")


def plain(result: Any) -> Any:
    """A single result as a Python float, anything larger unchanged."""
    return float(result) if isinstance(result, np.generic | np.ndarray) and np.ndim(result) == 0 else result


def door(**limits: Limits) -> Callable[[Callable[..., Any]], Any]:
    """Check the named arguments of a kernel, all of them at once, before it runs.

    The unchecked function stays reachable as ``.kernel`` for callers that have checked already.

    >>> @door(rh_percent=Limits(0.0, 100.0, "%", "write relative humidity in percent", "percent"))
    ... def dryness(rh_percent):
    ...     return 100.0 - rh_percent
    >>> dryness(40)
    60.0
    >>> dryness(140)
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: rh_percent is 140 %; it must be 0 to 100 %: write relative humidity in percent.
    """

    def decorate(kernel: Callable[..., Any]) -> Any:
        signature = inspect.signature(kernel)

        @wraps(kernel)
        def checked(*args: Any, **kwargs: Any) -> Any:
            bound = signature.bind(*args, **kwargs)
            bound.apply_defaults()
            problems = Problems()
            values = {
                name: read_values(bound.arguments[name], limit, name=name, problems=problems)
                for name, limit in limits.items()
            }
            problems.raise_if_any()
            check_shapes(problems, **values)
            problems.raise_if_any()
            return plain(kernel(**{**bound.arguments, **values}))

        checked.kernel = kernel  # type: ignore[attr-defined]
        return checked

    return decorate


def check_number(
    problems: Problems, name: str, value: object, unit: str, low: float, high: float, fix: str, *, above: bool = False
) -> float:
    """Return ``value`` as a float in ``low..high``, or add one sentence to ``problems`` and return nan.

    ``above=True`` leaves ``low`` itself out; ``fix`` says what to write instead.

    >>> problems = Problems()
    >>> check_number(problems, "ring angle", 120, "degrees", 0, 90, "0 is flatsawn, 90 is quartersawn")
    nan
    >>> problems.sentences
    ['ring angle is 120 degrees; it must be 0 to 90 degrees: 0 is flatsawn, 90 is quartersawn.']
    """
    number = math.nan if isinstance(value, bool | str) else _as_float(value)
    if math.isfinite(number) and low <= number <= high and not (above and number == low):
        return number
    written = f"{number:g} {unit}" if math.isfinite(number) else shown(value)
    problems.add(Limits(low, high, unit, fix, above_low=above).refusal(name, written))
    return math.nan


def _as_float(value: object) -> float:
    try:
        return float(value)  # type: ignore[arg-type]
    except (TypeError, ValueError):
        return math.nan


def check_kind(problems: Problems, name: str, value: object, kind: type, example: str) -> None:
    """Add a sentence unless ``value`` is of a kind; ``example`` shows how to make one.

    >>> problems = Problems()
    >>> check_kind(problems, "doubts", 5, dict, "{}")
    >>> problems.sentences
    ['doubts is 5; it must be of kind dict, for example {}.']
    """
    if not isinstance(value, kind):
        problems.add(f"{name} is {shown(value)}; it must be of kind {kind.__name__}, for example {example}.")


def check_moisture(problems: Problems, name: str, value: object) -> float:
    """Return a moisture content in percent of oven-dry mass, or add a sentence and return nan."""
    fix = "percent of oven-dry mass, for example 8"
    return check_number(problems, name, value, "% MC", 0.0, WETTEST_MC_PERCENT, fix)


def check_length(problems: Problems, name: str, value: object, default_unit: str | None = "meter") -> float:
    """Return a length above zero in metres from a number, text or quantity, or add a sentence and return nan."""
    try:
        return metres(value, name=name, default_unit=default_unit, positive=True)
    except InputError as error:
        problems.absorb(error)
        return math.nan


def check_moistures(problems: Problems, name: str, values: Sequence[float] | np.ndarray, count: int) -> np.ndarray:
    """Return ``count`` moisture contents in percent, or add sentences and return nans."""
    try:
        array = np.asarray(values, dtype=float)
    except (TypeError, ValueError):
        array = np.zeros(0)
    if array.shape != (count,):
        problems.add(f"{name} is {shown(values)}; it must be {count} moisture contents in %, one per month.")
        return np.full(count, math.nan)
    for place, number in enumerate(array, start=1):
        check_moisture(problems, f"{name}, number {place},", float(number))
    return array
