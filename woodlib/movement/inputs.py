"""Checks shared by the public doors of movement and construction; each adds one sentence per bad input."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from ..errors import InputError, Problems
from ..units import metres, shown

WETTEST_MC_PERCENT = 250.0  # green sapwood of light woods can hold twice its own dry mass in water


def check_number(
    problems: Problems, name: str, value: object, unit: str, low: float, high: float, fix: str, *, above: bool = False
) -> float:
    """Return ``value`` as a float in ``low..high``, or add one sentence to ``problems`` and return nan.

    ``above=True`` leaves ``low`` itself out; ``fix`` says what to write instead.

    >>> problems = Problems()
    >>> check_number(problems, "ring angle", 120, "degrees", 0, 90, "0 is flatsawn, 90 is quartersawn")
    nan
    >>> problems.sentences
    ['ring angle is 120 degrees; it must be between 0 and 90 degrees: 0 is flatsawn, 90 is quartersawn.']
    """
    span = f"above {low:g} and up to {high:g}" if above else f"between {low:g} and {high:g}"
    number = math.nan if isinstance(value, bool | str) else _as_float(value)
    if math.isfinite(number) and low <= number <= high and not (above and number == low):
        return number
    written = f"{number:g} {unit}" if math.isfinite(number) else shown(value)
    problems.add(f"{name} is {written}; it must be {span} {unit}: {fix}.")
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
