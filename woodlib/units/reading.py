"""Read what shop people write: ``1-1/2 in``, ``1' 6-3/8"``, ``38mm``, ``68 degF``, ``45 %``, or a quantity."""

from __future__ import annotations

import math
import re
from decimal import Decimal
from fractions import Fraction
from numbers import Rational, Real
from typing import TYPE_CHECKING, Any

from ..errors import InputError
from . import spelling
from .spelling import (
    CELSIUS_OF,
    KIND_OF_UNIT,
    KINDS,
    METRES_PER_UNIT,
    NUMBER,
    SHARES,
    UNIT_OF_SPELLING,
    exact_number,
    plain,
    shown,
)
from .writing import LARGEST_NUMBER, both

if TYPE_CHECKING:
    from pint import Quantity

LONGEST_M = 1000.0
"""A length beyond this is a slip of the pen in any workshop, so it is refused."""

ONE_NUMBER = re.compile(rf"(?P<sign>[+-]?)\s*(?P<number>{NUMBER})\s*(?P<unit>[^0-9\s/,.+-].*)?")
FEET_AND_INCHES = re.compile(
    rf"(?P<sign>[+-]?)\s*(?P<feet>[0-9]+)\s*(?:'|ft\.?|foot|feet)\s*[-,]?\s*"
    rf"(?P<inches>{NUMBER})\s*(?:\"|in\.?|inch|inches)?"
)
_KINDS_OF_REGISTRY_UNITS = {
    "length": "meter",
    "temperature": "kelvin",
    "density": "kilogram / meter ** 3",
    "stress": "pascal",
    "time": "second",
    "mass": "kilogram",
    "force": "newton",
}


def read_length(value, default_unit: str | None = None, name: str = "length") -> Quantity:
    """One length, in metres, from shop text, from a pint quantity, or from a plain number with a default unit.

    ``value`` text, pint quantity or number; ``default_unit`` unit of plain numbers, for example ``"mm"``: without
    it a plain number is refused, because 18 may be inches or millimetres. A bare fraction (``7/8``) means inches
    unless another default unit is declared. Returns a quantity in metres; raises :class:`InputError`.

    >>> round(read_length('1 1/2"').to("mm").magnitude, 6)
    38.1
    >>> read_length("1' 6-3/8\\"").to("inch").magnitude
    18.375
    """
    from .pint_registry import Quantity

    return Quantity(float(exact_metres(value, default_unit, name)), "meter")


def metres(
    value,
    *,
    name: str,
    default_unit: str | None = None,
    minimum_m: float | None = None,
    maximum_m: float | None = None,
    positive: bool = False,
) -> float:
    """One length as a float in metres, checked against what is possible for it (limits in metres, inclusive).

    >>> metres("455 mm", name="width", positive=True)
    0.455
    >>> metres("-2 in", name="width", positive=True)
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: width is '-2 in'; it must be more than zero, for example 1-1/2 in or 38 mm.
    """
    exact = exact_metres(value, default_unit, name)
    if positive and exact <= 0:
        raise InputError(f"{name} is {shown(value)}; it must be more than zero, for example 1-1/2 in or 38 mm.")
    if minimum_m is not None and exact < _typed(minimum_m):
        raise InputError(f"{name} is {shown(value)}; it must be at least {_limit(minimum_m)}.")
    if maximum_m is not None and exact > _typed(maximum_m):
        raise InputError(f"{name} is {shown(value)}; it must be at most {_limit(maximum_m)}.")
    return float(exact)


def exact_metres(value, default_unit: str | None = None, name: str = "length") -> Fraction:
    """The same as :func:`read_length`, as an exact fraction of a metre for setting out.

    A decimal means what it says: 0.1 is one tenth, not the nearest binary number.

    >>> exact_metres("7/8 in"), exact_metres("3.8 cm")
    (Fraction(889, 40000), Fraction(19, 500))
    """
    default = _default(default_unit, "length", name)
    if isinstance(value, str):
        exact = _text_metres(value, default, name)
    elif hasattr(value, "magnitude"):
        exact = _quantity_metres(value, name)
    else:
        number, unit = _plain_number(value, default, "length", name)
        exact = number * METRES_PER_UNIT[unit]
    if abs(exact) > LONGEST_M:
        raise InputError(f"{name} is {shown(value)}, longer than {LONGEST_M:.0f} m; {_write_it_like('length')}.")
    return exact


def read_quantity(value, unit: str, *, name: str, default_unit: str | None = None) -> Quantity:
    """One quantity of another kind (temperature, percent, density, stress, angle, time, mass), in ``unit``.

    ``unit`` as pint or the shop spells it, for example ``"degC"``, ``"percent"``, ``"kg/m^3"``, ``"MPa"``.
    Plain numbers need a ``default_unit``. Raises :class:`InputError`.

    >>> round(read_quantity("68 degF", "degC", name="room temperature").magnitude, 6)
    20.0
    >>> read_quantity("45 %", "percent", name="humidity").magnitude
    45.0
    """
    from .pint_registry import Quantity

    target = _unit_name(unit, name)
    if _kind(target) == "length":
        return read_length(value, default_unit, name).to(target)
    return Quantity(_number_in(value, target, default_unit, name), target)


def _number_in(value, target: str, default_unit: str | None, name: str) -> float:
    """One number in a unit of the registry; pint is asked only for conversions that the kit seldom meets."""
    kind = _kind(target)
    default = _default(default_unit, kind, name)
    if isinstance(value, str):
        number, source = _text_number(value, default, kind, name)
    elif hasattr(value, "magnitude"):
        number, source = _number_of_quantity(value, kind, name)
    else:
        number, source = _plain_number(value, default, kind, name)
    if abs(number) > LARGEST_NUMBER:
        raise InputError(_too_large(value, kind, name))
    if source == target:
        return float(number)
    if {source, target} <= CELSIUS_OF.keys():
        (scale, zero), (to_scale, to_zero) = CELSIUS_OF[source], CELSIUS_OF[target]
        return float((scale * (number - zero)) / to_scale + to_zero)
    from .pint_registry import Quantity

    # Rounded to clear the binary noise of offsets.
    converted = Quantity(float(number), source).to(target).magnitude
    return round(converted, 9) if kind == "temperature" else converted


def number_in(
    value,
    unit: str,
    *,
    name: str,
    default_unit: str | None = None,
    minimum: float | None = None,
    maximum: float | None = None,
    share: str = "",
) -> float:
    """One quantity as a float in ``unit``, checked against inclusive limits in that unit.

    ``share`` tells what a percentage is of, ``"rh"`` or ``"mc"``; the other one is refused where it is written out.

    >>> number_in("50 percent", "percent", name="humidity", minimum=0, maximum=100)
    50.0
    >>> number_in("8 % RH", "percent", name="wood", share="mc")
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: wood is '8 % RH', a relative humidity and not a moisture content; write it like 8 % MC.
    """
    check_share(value, share, name)
    target = _unit_name(unit, name)
    if _kind(target) == "length":
        number = read_length(value, default_unit, name).to(target).magnitude
    else:
        number = _number_in(value, target, default_unit, name)
    below, above = minimum is not None and number < minimum, maximum is not None and number > maximum
    if not (below or above):
        return number
    if minimum is not None and maximum is not None:
        allowed = f"between {minimum:g} and {maximum:g} {unit}"
    else:
        allowed = f"at least {minimum:g} {unit}" if below else f"at most {maximum:g} {unit}"
    hint = _meant_percent(value, unit, minimum, maximum) if below else ""
    raise InputError(f"{name} is {shown(value)}; it must be {allowed}{hint}.")


def check_share(value, share: str, name: str) -> None:
    """Refuse text that names the other percentage: ``share`` is ``"rh"``, ``"mc"`` or empty for any.

    >>> check_share("45 % RH", "rh", "humidity")
    """
    written = plain(value[-spelling.LONGEST_TEXT :])[-2:] if isinstance(value, str) else ""
    if share and written in SHARES and written != share:
        example = {"rh": "45 % RH", "mc": "8 % MC"}[share]
        raise InputError(
            f"{name} is {shown(value)}, {SHARES[written]} and not {SHARES[share]}; write it like {example}."
        )


def _meant_percent(value: Any, unit: str, minimum: float | None, maximum: float | None) -> str:
    """A plain 0.25 where a percentage belongs is usually a fraction of one."""
    plain_number = isinstance(value, Real) and 0 < float(value) < 1
    if unit != "percent" or not plain_number or not (minimum or 0) <= 100 * value <= (maximum or 100):
        return ""
    return f'; if you mean {100 * value:.4g} %, write "{100 * value:.4g} %"'


def _text_metres(text: str, default: str | None, name: str) -> Fraction:
    cleaned = _cleaned(text, "length", name)
    found = FEET_AND_INCHES.fullmatch(cleaned)
    if found:
        inches = _number(found["inches"], text, "length", name)
        size = int(found["feet"]) * METRES_PER_UNIT["foot"] + inches * METRES_PER_UNIT["inch"]
        return -size if found["sign"] == "-" else size
    if default not in (None, "inch") and re.fullmatch(r"[+-]?[^a-z\"']*/[^a-z\"']*", cleaned):
        raise InputError(
            f"{name} is {shown(text)}, a fraction without a unit where plain numbers are in {default}; "
            "write the unit, for example 7/8 in or 22 mm."
        )
    number, unit = _text_number(text, "inch" if "/" in cleaned and default is None else default, "length", name)
    return number * METRES_PER_UNIT[unit]


def _text_number(text: str, default: str | None, kind: str, name: str) -> tuple[Fraction, str]:
    """Exact number and registry unit of a text such as ``68 degF``."""
    found = ONE_NUMBER.fullmatch(_cleaned(text, kind, name))
    if not found:
        raise InputError(_refusal(text, kind, name))
    spelt = (found["unit"] or "").rstrip(" .")
    unit = UNIT_OF_SPELLING.get(spelt) if spelt else default
    if unit is None:
        reason = f"whose unit {shown(spelt)} is not known" if spelt else "a plain number without a unit"
        raise InputError(f"{name} is {shown(text)}, {reason}; {_write_it_like(kind)}.")
    if KIND_OF_UNIT.get(unit, kind) != kind:
        raise InputError(_wrong_kind(text, KIND_OF_UNIT[unit], kind, name))
    number = _number(found["number"], text, kind, name)
    return (-number if found["sign"] == "-" else number), unit


def _cleaned(text: str, kind: str, name: str) -> str:
    if len(text) > spelling.LONGEST_TEXT:
        raise InputError(f"{name} is a text of {len(text)} characters; {_write_it_like(kind)}.")
    cleaned = plain(text)
    if not cleaned:
        raise InputError(f"{name} is empty; {_write_it_like(kind)}.")
    return cleaned


def _number(digits: str, text: str, kind: str, name: str) -> Fraction:
    try:
        return exact_number(digits)
    except ValueError as reason:
        raise InputError(f"{name} is {shown(text)}, which {reason}; {_write_it_like(kind)}.") from None


def _plain_number(value: Any, default: str | None, kind: str, name: str) -> tuple[Fraction, str]:
    if isinstance(value, bool) or not isinstance(value, (Real, Decimal)):
        raise InputError(_refusal(value, kind, name))
    if not isinstance(value, Rational) and not math.isfinite(value):
        raise InputError(f"{name} is {shown(value)}, not a finite number; {_write_it_like(kind)}.")
    if abs(_typed(value)) > LARGEST_NUMBER:
        raise InputError(_too_large(value, kind, name))
    if default is None:
        raise InputError(f"{name} is {shown(value)}, a plain number without a unit; {_write_it_like(kind)}.")
    return _typed(value), default


def _typed(number: Any) -> Fraction:
    """The decimal a person sees: 0.1 as one tenth, not as the binary number nearest to it."""
    return Fraction(number) if isinstance(number, (Rational, Decimal)) else Fraction(repr(float(number)))


def _number_of_quantity(quantity, kind: str, name: str) -> tuple[Fraction, str]:
    units = _unit_name(str(quantity.units), name)
    found = _kind(units)
    if found != kind:
        raise InputError(_wrong_kind(quantity, found, kind, name))
    if getattr(quantity.magnitude, "ndim", 0):
        raise InputError(f"{name} is a list of {quantity.magnitude.size} values; give one, {_write_it_like(kind)}.")
    return _plain_number(quantity.magnitude, units, kind, name)


def _quantity_metres(quantity, name: str) -> Fraction:
    number, units = _number_of_quantity(quantity, "length", name)
    factor = METRES_PER_UNIT.get(units)
    if factor is not None:
        return number * factor
    from .pint_registry import Quantity

    return _typed(Quantity(float(number), units).to("meter").magnitude)


def _unit_name(unit: str, name: str) -> str:
    if unit in KIND_OF_UNIT:
        return unit
    try:
        known = UNIT_OF_SPELLING.get(unit.lower())
    except AttributeError:
        known = None
    if known:
        return known
    from pint.errors import PintError

    from .pint_registry import registry

    try:
        return str(registry.Unit(unit))
    except (PintError, ValueError, AttributeError, TypeError, AssertionError):
        raise InputError(
            f"{name} is to be read in {shown(unit)}, which is not a unit; use one such as mm or degC."
        ) from None


def _default(default_unit: str | None, kind: str, name: str) -> str | None:
    if default_unit is None:
        return None
    unit = _unit_name(default_unit, name)
    found = _kind(unit)
    if found != kind or (kind == "length" and unit not in METRES_PER_UNIT):
        raise InputError(
            f"{name} has the default unit {shown(default_unit)}, which does not fit; {_write_it_like(kind)}."
        )
    return unit


def _kind(unit: str) -> str:
    """Kind of a unit by its name in the registry; percent and degrees are dimensionless to pint, told apart by name."""
    if unit in KIND_OF_UNIT:
        return KIND_OF_UNIT[unit]
    from .pint_registry import registry

    of_registry = registry.Unit(unit)
    if of_registry.dimensionless:
        return "share"
    matches = (kind for kind, of in _KINDS_OF_REGISTRY_UNITS.items() if of_registry.is_compatible_with(of))
    return next(matches, str(of_registry.dimensionality))


def _called(kind: str) -> str:
    return KINDS[kind][0] if kind in KINDS else f"of dimension {kind}"


def _write_it_like(kind: str) -> str:
    return f"write it like {KINDS[kind][1]}" if kind in KINDS else "write a number with its unit"


def _refusal(value, kind: str, name: str) -> str:
    return f"{name} is {shown(value)}, which is not {_called(kind)}; {_write_it_like(kind)}."


def _too_large(value, kind: str, name: str) -> str:
    return f"{name} is {shown(value)}, beyond anything a workshop meets; {_write_it_like(kind)}."


def _wrong_kind(value, found: str, kind: str, name: str) -> str:
    return f"{name} is {shown(value)}, {_called(found)} and not {_called(kind)}; {_write_it_like(kind)}."


def _limit(limit_m: float) -> str:
    return both(limit_m, denominator=64, step_mm=0.1)
