"""A question put to a learner, and how an answer to it is read: options by name, quantities as the shop writes them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from ..errors import InputError
from ..study.inputs import Choice, read_kind
from ..units import exact_number
from ..units.spelling import plain
from ..words.say import Number

OPTION = "option"
EXAMPLES = {
    "length": "3/16 in or 5 mm",
    "movement": "3/16 in or 5 mm",
    "fine_length": "1/64 in or 0.4 mm",
    "humidity": "45 %",
    "moisture": "8 %",
    "percent": "2.5 %",
    "temperature": "68 degF or 20 degC",
    "days": "30 days",
    "angle": "45 deg",
    "mass": "12 lb or 5 kg",
    "stress": "600 psi or 4 MPa",
    "count": "4",
}
"""Kind of typed answer -> how to write it."""

LOOSE_START = re.compile(r"^\s*(about|around|roughly|some|ca\.?|circa|~|≈)\s*", re.IGNORECASE)
NAME_OF_PERCENT = re.compile(r"(?<=[\d%\s])\s*(rh|mc|relative humidity|moisture content)\.?\s*$", re.IGNORECASE)


@dataclass(frozen=True)
class Question:
    """A question with options to choose from, or with a ``kind`` of quantity to type.

    >>> width = Question("gap", "How wide is the gap?", "length")
    >>> width.text(width.read("3/16"))
    '3/16 in (5 mm)'
    """

    key: str
    words: str
    kind: str = OPTION
    options: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.kind == OPTION and len(set(self.options)) < 2:
            raise InputError(
                f"The question {self.key!r} has {len(set(self.options))} options; give at least two different ones, "
                f"or a kind of quantity to type: {', '.join(EXAMPLES)}."
            )
        if self.kind != OPTION and (self.kind not in EXAMPLES or self.options):
            raise InputError(
                f"The question {self.key!r} has kind {self.kind!r} and {len(self.options)} options; give options "
                f"alone, or one of these kinds: {', '.join(EXAMPLES)}."
            )

    @property
    def how(self) -> str:
        """How to answer, in a few words."""
        return "Choose one." if self.kind == OPTION else f"Type it like this: {EXAMPLES[self.kind]}."

    def read(self, given: Any) -> float | str:
        """What was answered: an option, or a number in SI (percent for percents). Raises InputError in one sentence."""
        if given is None or (isinstance(given, str) and not given.strip()):
            raise InputError(f"There is no answer yet. {self.how}")
        if self.kind == OPTION:
            return Choice(self.key, "Your answer", self.options, self.options[0]).read(given)
        if isinstance(given, str):
            given = NAME_OF_PERCENT.sub("", LOOSE_START.sub("", given))
        return read_typed(given, self.kind)

    def text(self, value: float | str, rounding: str = "nearest") -> str:
        """An answer as it is shown, rounded the safe way where one is given."""
        return value if isinstance(value, str) else Number(value, self.kind, rounding or "nearest").text()


SHARES = ("humidity", "moisture", "percent")
ASK_SIGN = "Your answer is {given!r}: that could be {number:g} % or {hundredfold:g} %; write it with its sign."
ASK_UNIT = "Your answer is {given!r}: that could be {bare} psi or {bare} MPa; write it with its unit."
DAYS = {"week": 7.0, "month": 30.4, "year": 365.0}
BARE = re.compile(r"\s*[\d.,]+\s*")
_SPAN = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(week|month|year)s?\s*", re.IGNORECASE)


def _in_days(given: str) -> str:
    """Weeks, months and years, as people say them.

    >>> _in_days("4 months"), _in_days("30 days")
    ('121.6 days', '30 days')
    """
    found = _SPAN.fullmatch(given)
    return f"{float(found[1]) * DAYS[found[2].lower()]:g} days" if found else given


def read_typed(given: Any, kind: str) -> float:
    """A typed quantity in SI; ``count`` is a bare number.

    >>> read_typed("45 %", "humidity"), read_typed("1-1/2", "count")
    (45.0, 1.5)
    """
    if kind == "count" and isinstance(given, str):
        try:
            return float(exact_number(plain(given)))
        except (InputError, ValueError, ZeroDivisionError, OverflowError):
            sentence = f"Your answer is {given!r}, which is not a number; write it like {EXAMPLES[kind]}."
            raise InputError(sentence) from None
    if kind == "stress" and isinstance(given, str) and BARE.fullmatch(given):
        raise InputError(ASK_UNIT.format(given=given, bare=given.strip()))
    given = _in_days(given) if kind == "days" and isinstance(given, str) else given
    number = read_kind(given, kind, "Your answer")
    if kind in SHARES and isinstance(given, str) and "%" not in given and 0.0 < number < 1.0:
        raise InputError(ASK_SIGN.format(given=given, number=number, hundredfold=100 * number))
    if not -1e15 < number < 1e15:
        raise InputError(f"Your answer is {given!r}; write one finite number, like {EXAMPLES[kind]}.")
    return number
