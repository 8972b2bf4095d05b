"""The door of the air and moisture functions: every argument checked once, then plain arrays inside."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import Any

import numpy as np

from ..errors import InputError, Problems


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

    def __post_init__(self) -> None:
        if not self.pint_unit:
            object.__setattr__(self, "pint_unit", self.unit)

    def accepted(self) -> str:
        """The range in words, for an error sentence."""
        if np.isinf(self.high):
            return f"{'above' if self.above_low else 'at least'} {self.low:g} {self.unit}"
        joint = "above {low:g} and up to {high:g} {unit}" if self.above_low else "{low:g} to {high:g} {unit}"
        return joint.format(low=self.low, high=self.high, unit=self.unit)


TEMPERATURE_C = Limits(-100.0, 200.0, "degC", "write the temperature in degrees Celsius")
RH_PERCENT = Limits(0.0, 100.0, "%", "write relative humidity in percent, for example 45", "percent", share="rh")
RH_ABOVE_ZERO = Limits(0.0, 100.0, "%", "perfectly dry air has no dew point", "percent", True, "rh")
PRESSURE_PA = Limits(10_000.0, 200_000.0, "Pa", "the sea-level pressure is 101325 Pa")
VAPOUR_PRESSURE_PA = Limits(
    0.0, 2.0e6, "Pa", "room air has about 1200 Pa, and dry air has no dew point", above_low=True
)
MOISTURE_GAIN_G_M3 = Limits(-20.0, 20.0, "g/m3", "homes usually gain 2 to 4 g/m3 in winter", "gram / meter ** 3")


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
    sentence = _out_of_range(array, limits, name)
    if sentence:
        problems.add(sentence)
        return np.nan
    return array


def _as_floats(value: Any, limits: Limits, name: str) -> Any:
    if isinstance(value, str) or hasattr(value, "magnitude"):
        from ..units import check_share, read_quantity  # kept out of the import: plain numbers never need it

        check_share(value, limits.share, name)
        quantity = read_quantity(value, limits.pint_unit, name=name, default_unit=limits.pint_unit)
        value = quantity.m_as(limits.pint_unit)
    if isinstance(value, np.ma.MaskedArray):
        value = value.astype(float).filled(np.nan)
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
    return f"{name} is {flat[bad[0]]:g} {limits.unit}{where}; accepted is {limits.accepted()}: {limits.advice}."


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

    >>> @door(rh_percent=RH_PERCENT)
    ... def dryness(rh_percent):
    ...     return 100.0 - rh_percent
    >>> dryness(40)
    60.0
    >>> dryness(140)  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: rh_percent is 140 %; accepted is 0 to 100 %: write relative humidity in percent, ...
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
