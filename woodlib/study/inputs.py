"""What can be changed in a study: a choice, a span with a unit and a step, an on/off switch."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from ..errors import InputError
from ..units import metres, number_in
from ..words.say import Number


def read_kind(value: Any, kind: str, name: str) -> float:
    """A number in the unit of its kind from a plain number or from text with a unit ("20 in", "68 degF", "35 % RH")."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    if kind in ("length", "fine_length", "movement"):
        return metres(value, name=name)
    unit = {"temperature": "degC", "angle": "degree", "days": "day", "mass": "kg", "stress": "Pa"}.get(kind, "percent")
    return number_in(
        value, unit, name=name, default_unit=unit, share={"humidity": "rh", "moisture": "mc"}.get(kind, "")
    )


@dataclass(frozen=True)
class Choice:
    """One of several named options; ``options`` maps the value to its label (or lists values that are labels).

    ``ordered`` options follow each other, like months, and are moved along with a slider.
    """

    key: str
    label: str
    options: Mapping[str, str] | tuple[str, ...]
    start: str
    ordered: bool = False

    @property
    def labels(self) -> dict[str, str]:
        """Value to label, in order."""
        return dict(self.options) if isinstance(self.options, Mapping) else {name: name for name in self.options}

    def read(self, value: Any) -> str:
        """The option meant by a value or label, whatever its case."""
        known = {text.casefold(): name for name, label in self.labels.items() for text in (name, label)}
        wanted = str(value).strip().casefold()
        if wanted in known:
            return known[wanted]
        near = get_close_matches(wanted, known, 1)
        hint = f" Did you mean {known[near[0]]!r}?" if near else ""
        raise InputError(f"{self.label} is {value!r}; choose one of: {', '.join(self.labels)}.{hint}")

    def text(self, value: str, units: str = "both") -> str:
        """The label of a value."""
        return self.labels[value]


@dataclass(frozen=True)
class Span:
    """A quantity between two ends, moved in steps. Numbers in SI; ``kind`` as in :func:`woodlib.units.write_number`."""

    key: str
    label: str
    kind: str
    low: float
    high: float
    step: float
    start: float

    @property
    def positions(self) -> int:
        """How many places the slider has."""
        return round((self.high - self.low) / self.step) + 1

    def at(self, position: int) -> float:
        """The value at a slider place, 0 to ``positions`` - 1."""
        return self.low + position * self.step

    def place(self, value: float) -> int:
        """The slider place nearest to a value."""
        return round((value - self.low) / self.step)

    def read(self, value: Any) -> float:
        """A number in SI, or text with a unit, inside the span; values between two steps are taken as they are."""
        number = read_kind(value, self.kind, name=self.label)
        slack = 1e-9 * max(abs(self.low), abs(self.high))
        if not math.isfinite(number) or not self.low - slack <= number <= self.high + slack:
            raise InputError(
                f"{self.label} is {self.text(number) if math.isfinite(number) else value}; "
                f"this study goes from {self.text(self.low)} to {self.text(self.high)}."
            )
        return min(max(number, self.low), self.high)

    def text(self, value: float, units: str = "both") -> str:
        """The value with its unit."""
        return Number(value, self.kind).text(units)


@dataclass(frozen=True)
class Switch:
    """Something that is so or not so; ``start`` tells which at first."""

    key: str
    label: str
    start: bool = False

    def read(self, value: Any) -> bool:
        """True or False from a bool or from yes/no words."""
        words = {"yes": True, "on": True, "true": True, "no": False, "off": False, "false": False}
        if isinstance(value, bool):
            return value
        if str(value).strip().casefold() in words:
            return words[str(value).strip().casefold()]
        raise InputError(f"{self.label} is {value!r}; write yes or no.")

    def text(self, value: bool, units: str = "both") -> str:
        """Yes or no."""
        return "yes" if value else "no"


Input = Choice | Span | Switch
