"""Write numbers the way a maker reads them: fractions of an inch with millimetres, safe side chosen by the caller.

Every way of writing is a small table of :class:`Part` (scale, offset, step, suffix), so that a page script can
follow the same table and arrive at the same text. The rounding rule is stated once, in :func:`rounded_steps`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from fractions import Fraction
from numbers import Real
from typing import Any

from ..errors import InputError
from .spelling import shown

NOISE = 1e-9
"""A float closer than this share of itself (or of one step) to a step counts as that step: arithmetic noise of
floats is about 1e-16 per operation, and a billionth of a gap is far below anything that can be cut."""

LARGEST_NUMBER = 10**15
"""Beyond this a float no longer holds the steps it is written in."""

ROUNDINGS = ("nearest", "up", "down")
DENOMINATORS = (1, 2, 4, 8, 16, 32, 64)
_INCHES_PER_METRE = Fraction(10_000, 254)
_HALVES_BELOW_M = 0.025


@dataclass(frozen=True)
class Part:
    """One way to write a number: ``number * scale + offset`` in steps of ``1 / steps_per_unit``, then a suffix.

    ``denominator`` above 0 writes the steps as a mixed fraction, otherwise as a decimal with ``decimals`` places.
    ``trim`` leaves out zeros behind the decimal point. ``one`` is the suffix for exactly one, where it differs.
    ``halves_below`` numbers below it are told in halves where the part stands in brackets, the others in whole units.
    """

    suffix: str
    scale: float | Fraction = 1
    offset: float = 0
    steps_per_unit: int = 1
    decimals: int = 0
    denominator: int = 0
    trim: bool = False
    one: str = ""
    halves_below: float = 0

    def text(self, number: float | Fraction, rounding: str = "nearest") -> str:
        """The number as text, for example ``3/16 in``. Raises :class:`InputError` if it is not one finite number."""
        number = _checked(number, rounding)
        return self.digits(number, rounding) + self._suffix(number, rounding)

    def digits(self, number: float | Fraction, rounding: str = "nearest") -> str:
        """The number as text without its suffix, for example ``3/16``."""
        steps = rounded_steps(self._scaled(number), self.steps_per_unit, rounding)
        size = _mixed(abs(steps), self.denominator) if self.denominator else self._decimal(abs(steps))
        return "-" + size if steps < 0 else size

    def shown(self, number: float | Fraction, rounding: str = "nearest") -> Fraction:
        """The number that :meth:`text` shows, exactly, in the unit that was handed in.

        >>> FORMATS["length"].parts[0].shown(0.0047) * 10_000 / 254
        Fraction(3, 16)
        """
        steps = rounded_steps(self._scaled(_checked(number, rounding)), self.steps_per_unit, rounding)
        return (Fraction(steps, self.steps_per_unit) - Fraction(self.offset)) / Fraction(self.scale)

    def bracketed(self, number: float | Fraction) -> Part:
        """The part as it writes in brackets what another shows: fine enough that no two marks are told alike."""
        if self.denominator:
            small = abs(float(number)) < _HALVES_BELOW_M
            return _inches(max(32 if small else 16, self.denominator))
        if not self.halves_below:
            return self
        return replace(self, steps_per_unit=2 if abs(float(number)) < self.halves_below else 1, decimals=1)

    def _scaled(self, number):
        if isinstance(number, Fraction):
            return number * Fraction(self.scale) + Fraction(self.offset)
        return float(number) * float(self.scale) + self.offset

    def _decimal(self, steps: int) -> str:
        written = f"{steps / self.steps_per_unit:.{self.decimals}f}"
        return written.rstrip("0").rstrip(".") if self.trim and "." in written else written

    def _suffix(self, number, rounding: str) -> str:
        return self.one if self.one and self.digits(number, rounding) == "1" else self.suffix


@dataclass(frozen=True)
class Format:
    """How one kind of number is written: ``unit`` of the number handed in, customary part first, metric second.

    Kinds without a customary twin have one part.
    """

    kind: str
    unit: str
    parts: tuple[Part, ...]
    rounding: str = "nearest"

    def text(self, number: float | Fraction, *, first: str = "customary", rounding: str | None = None) -> str:
        """The number as text, the other system in brackets; ``first`` is ``customary`` or ``metric``.

        What is in brackets is the number shown before it, to the nearest step: it is rounded the safe way once.
        """
        head, *rest = self.parts if first == "customary" else self.parts[::-1]
        return _and_converted(number, head, rest, rounding or self.rounding)

    def as_table(self) -> dict:
        """The same description as plain numbers and texts, ready for JSON."""
        parts = [{**asdict(part), "scale": float(part.scale)} for part in self.parts]
        return {"kind": self.kind, "unit": self.unit, "rounding": self.rounding, "parts": parts}


def _inches(denominator: int) -> Part:
    return Part(" in", _INCHES_PER_METRE, steps_per_unit=denominator, denominator=denominator)


def _millimetres(steps_per_mm: int) -> Part:
    halves = 0 if steps_per_mm > 2 else _HALVES_BELOW_M
    decimals = 0 if steps_per_mm == 1 else 1
    return Part(" mm", 1000, steps_per_unit=steps_per_mm, decimals=decimals, trim=True, halves_below=halves)


_PASCAL_PER_PSI = 6894.757293168
_KILOGRAM_PER_POUND = 0.45359237


def _tenths(suffix: str, scale: float = 1.0) -> Part:
    return Part(suffix, scale, steps_per_unit=10, decimals=1)


FORMATS = {
    entry.kind: entry
    for entry in (
        Format("length", "metre", (_inches(16), _millimetres(1))),
        Format("movement", "metre", (_inches(32), _millimetres(2))),
        Format("fine_length", "metre", (_inches(64), _millimetres(10))),
        Format("moisture", "percent of dry mass", (_tenths(" % MC"),)),
        Format("humidity", "percent", (Part(" % RH"),)),
        Format("temperature", "degree Celsius", (Part(" \u00b0F", 1.8, 32), Part(" \u00b0C"))),
        Format("percent", "percent", (_tenths(" %"),)),
        Format("whole_percent", "percent", (Part(" %"),)),
        Format("stress", "pascal", (Part(" psi", 1 / _PASCAL_PER_PSI), _tenths(" MPa", 1e-6))),
        Format("strain", "metre per metre", (Part(" %", 100, steps_per_unit=100, decimals=2),)),
        Format("angle", "degree", (Part("\u00b0"),)),
        Format("days", "day", (Part(" days", one=" day"),)),
        Format("mass", "kilogram", (_tenths(" lb", 1 / _KILOGRAM_PER_POUND), _tenths(" kg"))),
        Format("count", "1", (Part(""),)),
    )
}
"""Kind of number -> how it is written."""


def write(number: float | Fraction, kind: str, *, first: str = "customary", rounding: str | None = None) -> str:
    """A number as text by its kind; ``number`` in the unit that ``FORMATS[kind].unit`` names.

    >>> write(0.0047, "length"), write(20.0, "temperature"), write(1, "days"), write(9.26, "moisture")
    ('3/16 in (5 mm)', '68 °F (20 °C)', '1 day', '9.3 % MC')
    """
    if kind not in FORMATS:
        raise InputError(f"kind of number is {shown(kind)}; it must be one of {', '.join(FORMATS)}.")
    if first not in ("customary", "metric"):
        raise InputError(f"first is {shown(first)}; it must be customary or metric.")
    return FORMATS[kind].text(number, first=first, rounding=rounding)


def inch_fraction(metres: float | Fraction, denominator: int = 16, rounding: str = "nearest") -> str:
    """A length in metres as inches and a fraction; ``up`` never writes less than it is, ``down`` never more.

    A float within float noise of a tick counts as that tick; a ``Fraction`` is taken exactly.

    >>> inch_fraction(0.0381), inch_fraction(0.0048, 16, "up"), inch_fraction(0.00635, 64, "up")
    ('1-1/2 in', '1/4 in', '1/4 in')
    """
    return length_parts(denominator, 1)[0].text(metres, rounding)


def millimetres(metres: float | Fraction, step_mm: float = 1, rounding: str = "nearest") -> str:
    """A length in metres as millimetres to whole, half or tenth millimetres.

    >>> millimetres(0.00476), millimetres(0.0021, 0.5, "up")
    ('5 mm', '2.5 mm')
    """
    return length_parts(1, step_mm)[1].text(metres, rounding)


def both(
    metres: float | Fraction,
    denominator: int = 16,
    step_mm: float = 1,
    rounding: str = "nearest",
    first: str = "customary",
) -> str:
    """A length rounded once, in the system that comes ``first``; the other says what is shown, to its nearest step.

    To 1/64 in and 0.1 mm it is told as it is, each system from the same length.

    >>> both(0.0047), both(0.0381, first="metric"), both(0.0054, rounding="up")
    ('3/16 in (5 mm)', '38 mm (1-1/2 in)', '1/4 in (6.5 mm)')
    """
    inches, mm = length_parts(denominator, step_mm)
    return _and_converted(metres, *((inches, [mm]) if first == "customary" else (mm, [inches])), rounding)


def length_parts(denominator: int, step_mm: float) -> tuple[Part, Part]:
    """How a length is written in inches and in millimetres with these steps. Raises :class:`InputError`."""
    if denominator not in DENOMINATORS:
        raise InputError(f"denominator is {shown(denominator)}; it must be one of {', '.join(map(str, DENOMINATORS))}.")
    if step_mm not in (1, 0.5, 0.1):
        raise InputError(f"step_mm is {shown(step_mm)}; it must be 1, 0.5 or 0.1.")
    return _inches(denominator), _millimetres(round(1 / step_mm))


def _and_converted(number: float | Fraction, head: Part, rest: Sequence[Part], rounding: str) -> str:
    """A number rounded once; behind it, in brackets, what it shows in the other system.

    In the finest steps a size is told as it is, in both systems: what was typed as 1 mm must not come back as 1.2 mm.
    """
    if {64, 10} == {part.steps_per_unit for part in (head, *rest)}:
        return head.text(number, rounding) + "".join(f" ({part.text(number, rounding)})" for part in rest)
    said = head.shown(number, rounding) if rest else number
    return head.text(number, rounding) + "".join(f" ({part.bracketed(said).text(said)})" for part in rest)


def length_range(low: float | Fraction, mid: float | Fraction, high: float | Fraction, first: str = "customary") -> str:
    """A length with its honest range, all in metres, to the step that fits its size.

    Lengths that are all negative are written by size, so that the caller says "shrinks" or "swells"; a range
    that spans zero keeps its signs. ``low`` and ``high`` may come in either order. The second system says what the
    first shows. For talking about movement; for cutting use :func:`both` with a rounding direction.

    >>> length_range(0.0030, 0.0048, 0.0063)
    'about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6.5 mm)'
    >>> length_range(0.0, 0.0001, 0.0002)
    'less than 1/64 in (under 0.4 mm)'
    """
    low, mid, high = (_checked(number, "nearest") for number in (low, mid, high))
    low, high = min(low, high), max(low, high)
    if not low <= mid <= high:
        raise InputError(f"range {float(low):g} to {float(high):g} m does not hold its middle value {float(mid):g} m.")
    if high <= 0:
        low, mid, high = -high, -mid, -low
    largest_inches = float(max(high, -low)) * float(_INCHES_PER_METRE)
    if rounded_steps(largest_inches, 64, "up") <= 1 and largest_inches * 64 < 1 - NOISE:
        return _tiny(first)
    head, tail = _parts_for(largest_inches) if first == "customary" else _parts_for(largest_inches)[::-1]
    about, span = f"about {_and_converted(mid, head, [tail], 'nearest')}", _span(head, low, high)
    if span == head.text(mid):
        return about
    said = head.shown(low), head.shown(high)
    return f"{about}, could be {span} ({_span(tail.bracketed(max(map(abs, said))), *said)})"


def rounded_steps(number: float | Fraction, steps_per_unit: int, rounding: str = "nearest") -> int:
    """Whole number of steps: ``nearest`` (halves away from zero), ``up`` (towards plus) or ``down``.

    For floats: ``slack = NOISE * max(1, |x|)``; up is ``ceil(x - slack)``, down ``floor(x + slack)``, nearest
    ``sign(x) * floor(|x| + 1/2 + slack)`` with ``x = number * steps_per_unit``. Fractions are exact, without slack.

    >>> rounded_steps(0.25 + 1e-16, 64, "up"), rounded_steps(Fraction(1, 32), 16)
    (16, 1)
    """
    steps: Any = number * steps_per_unit
    slack: Any = 0 if isinstance(number, Fraction) else NOISE * max(1.0, abs(steps))
    if rounding == "up":
        return math.ceil(steps - slack)
    if rounding == "down":
        return math.floor(steps + slack)
    half: Any = Fraction(1, 2) if isinstance(number, Fraction) else 0.5
    return int(math.copysign(1, steps)) * math.floor(abs(steps) + half + slack)


def _mixed(steps: int, denominator: int) -> str:
    whole, part = divmod(Fraction(steps, denominator), 1)
    if not part:
        return str(whole)
    fraction = f"{part.numerator}/{part.denominator}"
    return f"{whole}-{fraction}" if whole else fraction


def _parts_for(largest_inches: float) -> tuple[Part, Part]:
    """Finer steps for smaller lengths, so that a range does not collapse into one tick."""
    if largest_inches >= 3 / 16 * (1 - NOISE):
        return _inches(16), _millimetres(1)
    return (_inches(32), _millimetres(2)) if largest_inches >= 1 / 16 else (_inches(64), _millimetres(10))


def _span(part: Part, low, high) -> str:
    lower, upper = part.digits(low), part.text(high)
    return upper if lower == part.digits(high) else f"{lower} to {upper}"


def _tiny(first: str) -> str:
    inches, millimetre = "1/64 in", "0.4 mm"
    head, tail = (inches, millimetre) if first == "customary" else (millimetre, inches)
    return f"less than {head} (under {tail})"


def _checked(number: Any, rounding: str) -> Any:
    if rounding not in ROUNDINGS:
        raise InputError(f"rounding is {shown(rounding)}; it must be one of {', '.join(ROUNDINGS)}.")
    real = isinstance(number, Real) and not isinstance(number, bool)
    if not real or not abs(number) < LARGEST_NUMBER:
        raise InputError(f"number to write is {shown(number)}; it must be one finite number, for example 0.0381.")
    return number
