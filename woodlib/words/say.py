"""Sentences with numbers in them, kept as numbers until somebody reads them.

A sentence is not formatted when it is made: the reader chooses inches, millimetres or both, and a handout writes
it anew whenever a slider moves.

>>> sentence = say("The panel moves {move} over the year.", move=length(0.0048))
>>> plain_text(sentence, "metric")
'The panel moves 5 mm over the year.'
"""

from __future__ import annotations

import string
from dataclasses import dataclass
from typing import Any

from ..errors import InputError
from ..units import FORMATS
from ..units.exact import INCH_M
from .decided import Decided, Pick, Sliding, now, pick
from .many import Many


@dataclass(frozen=True)
class Number:
    """A number to show: an SI value, the kind of quantity, and which way it may be rounded."""

    value: Sliding
    kind: str
    rounding: str = "nearest"

    def text(self, units: str = "both") -> str:
        """The number with its unit, for ``units`` "both", "inch" or "metric"."""
        wanted = FORMATS[self.kind]
        if units == "both":
            return wanted.text(float(now(self.value)), rounding=self.rounding)
        return wanted.parts[0 if units == "inch" else -1].text(float(now(self.value)), self.rounding)


@dataclass(frozen=True)
class Said:
    """A sentence in parts: plain text, numbers, picked words and sentences within it."""

    parts: tuple[Any, ...]


def say(template: str, **values: Any) -> Said:
    """A sentence from a template with ``{names}``; values are numbers to show, picks, sentences or plain text."""
    parts: list[Any] = []
    for text, name, spec, _ in string.Formatter().parse(template):
        if text:
            parts.append(text)
        if name is None:
            continue
        if name not in values or spec:
            raise InputError(f"The sentence {template!r} needs a value for {{{name}}}; give it as {name}=...")
        if isinstance(values[name], float | Decided | Many):
            raise InputError(
                f"The value for {{{name}}} in {template!r} is a bare number; say what it is: length(...), moisture(...)."
            )
        parts.append(values[name])
    return Said(tuple(parts))


def plain_text(words: Any, units: str = "both") -> str:
    """Anything sayable as text: a string, a number to show, a pick, or a sentence of these."""
    if isinstance(words, str):
        return words
    if isinstance(words, Number):
        return words.text(units)
    if isinstance(words, Pick):
        return plain_text(words.chosen, units)
    if isinstance(words, Said):
        return "".join(plain_text(part, units) for part in words.parts)
    return str(words)


def _maker(kind: str):
    def make(value: Sliding, rounding: str = "nearest") -> Number:
        return Number(value, kind, rounding)

    make.__name__ = kind
    make.__doc__ = f"A number to show as {kind.replace('_', ' ')}; ``value`` in SI (percent for percent, degrees C for temperature)."
    return make


length = _maker("length")
movement = _maker("movement")
fine_length = _maker("fine_length")
moisture = _maker("moisture")
humidity = _maker("humidity")
temperature = _maker("temperature")
percent = _maker("percent")
whole_percent = _maker("whole_percent")
stress = _maker("stress")
strain = _maker("strain")
angle = _maker("angle")
days = _maker("days")
mass = _maker("mass")
count = _maker("count")


_LEAST_M = INCH_M / 64


def small_length(size: Sliding) -> Pick:
    """A length that may be too small to write as a fraction."""
    return pick(size, [_LEAST_M], [say("less than {least}", least=fine_length(_LEAST_M)), fine_length(size)])
