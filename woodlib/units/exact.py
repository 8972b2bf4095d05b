"""Exact lengths, and the one place where a length is rounded: each rounding says which way it went and by how much."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from ..errors import InputError, Problems
from . import both, exact_metres, inch_fraction, rounded_steps, shown

LONGEST_M = Fraction(12)  # beyond any furniture and any board that is sold; catches inches typed as metres
MILLIMETRE = Fraction(1, 1000)
INCH = Fraction(254, 10_000)
INCH_M = float(INCH)

# Name of a rule -> its step in metres. What a maker reads off: a rule in inches or one in millimetres.
RULES = {
    "1/16 in": INCH / 16,
    "1/32 in": INCH / 32,
    "1/64 in": INCH / 64,
    "1 mm": MILLIMETRE,
    "0.5 mm": MILLIMETRE / 2,
    "0.1 mm": MILLIMETRE / 10,
}


def read_exact(
    problems: Problems,
    name: str,
    value: object,
    *,
    low: Fraction = Fraction(0),
    high: Fraction = LONGEST_M,
    above: bool = True,
) -> Fraction:
    """A length as an exact fraction of a metre, or 0 with one sentence added to ``problems``.

    Text and quantities carry their unit; plain numbers and fractions are metres. ``above`` leaves ``low`` itself out.

    >>> read_exact(Problems(), "width", "455 mm")
    Fraction(91, 200)
    """
    try:
        exact = exact_metres(value, default_unit="meter", name=name)
    except InputError as error:
        problems.absorb(error)
        return Fraction(0)
    if low <= exact <= high and not (above and exact == low):
        return exact
    least = "more than zero" if above and low == 0 else f"{'more than' if above else 'at least'} {_limit(low)}"
    problems.add(f"{name} is {shown(value)}, {both(exact, 64, 0.1)}; it must be {least} and at most {_limit(high)}.")
    return Fraction(0)


def read_whole(problems: Problems, name: str, value: object, low: int, high: int) -> int:
    """A whole number from ``low`` to ``high``, or 0 with one sentence added to ``problems``."""
    if not isinstance(value, bool) and isinstance(value, int) and low <= value <= high:
        return value
    problems.add(f"{name} is {shown(value)}; write a whole number from {low} to {high}.")
    return 0


def read_name(problems: Problems, name: str, value: object, longest: int = 60) -> str:
    """A short name on one line, or an empty text with one sentence added to ``problems``."""
    if isinstance(value, str) and value.strip() and len(value) <= longest and value.isprintable():
        return value.strip()
    problems.add(f"{name} is {shown(value)}; write a name on one line, up to {longest} characters.")
    return ""


FINEST = 256  # parts of an inch that an exact length is still written in


def exact_text(length_m: Fraction, first: str = "metric") -> str:
    """The exact length in millimetres, every digit; a division that never ends is written as a fraction.

    With ``first`` "customary" it is written in inches wherever a fraction of an inch is exact.

    >>> exact_text(Fraction(59, 400)), exact_text(INCH / 64), exact_text(Fraction(1, 3000))
    ('147.5 mm', '0.396875 mm', '1/3 mm')
    >>> exact_text(INCH * 43 / 32, "customary"), exact_text(Fraction(64, 1000), "customary")
    ('1-11/32 in', '64 mm')
    """
    if first == "customary" and length_m and (length_m / INCH * FINEST).denominator == 1:
        whole, part = divmod(abs(length_m / INCH), 1)
        text = f"{whole}-{part}" if whole and part else f"{part or whole}"
        return f"{'-' if length_m < 0 else ''}{text} in"
    number = length_m / MILLIMETRE
    if (10**9) % number.denominator:
        whole, part = divmod(abs(number), 1)
        sign, front = "-" if number < 0 else "", f"{whole} " if whole else ""
        return f"{sign}{front}{part} mm"
    digits = f"{int(abs(number) * 10**9):010d}"
    text = f"{digits[:-9]}.{digits[-9:]}".rstrip("0").rstrip(".")
    return f"{'-' if number < 0 else ''}{text} mm"


def fine_text(length_m: Fraction | float, first: str = "customary", rounding: str = "nearest") -> str:
    """A length to the finest step that a shop works to, 1/64 in or 0.5 mm in the system that is written first.

    >>> fine_text(INCH * 3 / 8), fine_text(INCH * 3 / 8, "metric", "up")
    ('3/8 in (9.5 mm)', '10 mm (25/64 in)')
    """
    return both(length_m, 64, 0.5 if first == "metric" else 0.1, rounding, first)


@dataclass(frozen=True)
class Rounding:
    """One exact length and what is marked for it on a rule: ``up``, ``down`` or ``nearest``.

    >>> mark = Rounding(Fraction(59, 400), "1/16 in")
    >>> mark.text, exact_text(mark.error_m), mark.says
    ('5-13/16 in', '0.1375 mm', '147.5 mm marked as 5-13/16 in, under 1/64 in more')
    """

    exact_m: Fraction
    rule: str = "1/16 in"
    direction: str = "nearest"

    @property
    def step_m(self) -> Fraction:
        """One step of the rule, m."""
        return RULES[self.rule]

    @property
    def marked_m(self) -> Fraction:
        """The length as marked, m: a whole number of steps."""
        return rounded_steps(self.exact_m / self.step_m, 1, self.direction) * self.step_m

    @property
    def error_m(self) -> Fraction:
        """Marked less exact, m."""
        return self.marked_m - self.exact_m

    @property
    def text(self) -> str:
        """The length as it is marked."""
        if self.rule.endswith("in"):
            return inch_fraction(self.marked_m, int(INCH / self.step_m))
        return exact_text(self.marked_m)

    @property
    def change(self) -> str:
        """Which way and by how much: ``exact``, ``1 mm more`` or ``under 1/64 in less``."""
        if not self.error_m:
            return "exact"
        step = RULES["1/64 in" if self.first == "customary" else "0.5 mm"]
        about = rounded_steps(abs(self.error_m) / step, 1, "nearest") * step
        size = exact_text(about, self.first) if about else f"under {exact_text(step, self.first)}"
        return f"{size} {'more' if self.error_m > 0 else 'less'}"

    @property
    def first(self) -> str:
        """The system of its rule: customary or metric."""
        return "customary" if self.rule.endswith("in") else "metric"

    @property
    def says(self) -> str:
        """The whole rounding in words."""
        return f"{exact_text(self.exact_m, self.first)} marked as {self.text}, {self.change}"


def mark(length: object, rule: str = "1/16 in", direction: str = "nearest", name: str = "length") -> Rounding:
    """A length rounded once to a rule. Raises :class:`InputError`.

    >>> mark("18 in", "1 mm", "down").says
    '457.2 mm marked as 457 mm, under 0.5 mm less'
    """
    problems = Problems()
    exact = read_exact(problems, name, length, low=-LONGEST_M, above=False)
    check_rule(problems, rule)
    if direction not in ("nearest", "up", "down"):
        problems.add(f"direction of rounding is {shown(direction)}; it must be nearest, up or down.")
    problems.raise_if_any()
    assert exact is not None
    return Rounding(exact, rule, direction)


def check_rule(problems: Problems, rule: object) -> None:
    """Add a sentence unless the rule is one of ``RULES``."""
    if not isinstance(rule, str) or rule not in RULES:
        problems.add(f"rule is {shown(rule)}; it must be one of {', '.join(RULES)}.")


def centred(whole: object, part: object) -> Fraction:
    """What is left on each side of a part centred in a whole, exactly, m. Raises :class:`InputError`.

    >>> exact_text(centred("455 mm", "160 mm")), exact_text(centred("20 in", "128 mm"))
    ('147.5 mm', '190 mm')
    """
    problems = Problems()
    whole_m, part_m = read_exact(problems, "whole", whole), read_exact(problems, "part", part)
    problems.raise_if_any()
    assert whole_m is not None and part_m is not None
    if part_m > whole_m:
        raise InputError(
            f"part is {both(part_m, 64, 0.1)}, longer than the whole, {both(whole_m, 64, 0.1)}; "
            "give the longer one first."
        )
    return (whole_m - part_m) / 2


def even_row(length_m: Fraction, end_m: Fraction, spacing_m: Fraction) -> tuple[Fraction, ...]:
    """An even, mirrored row with the outermost ``end_m`` from each end and no more than ``spacing_m`` between.

    >>> [float(place) for place in even_row(Fraction(1), Fraction(1, 10), Fraction(1, 4))]
    [0.1, 0.3, 0.5, 0.7, 0.9]
    """
    span = length_m - 2 * end_m
    if span <= 0:
        return (length_m / 2,)
    count = ceil(span / spacing_m) + 1
    return tuple(end_m + span * number / (count - 1) for number in range(count))


def _limit(limit_m: Fraction) -> str:
    return both(limit_m, 64, 0.1)
