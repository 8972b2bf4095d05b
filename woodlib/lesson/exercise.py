"""An exercise: a question with a known answer, and what to say to every answer somebody may give."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from math import inf
from typing import Any

from ..errors import InputError
from .question import OPTION, Question

Solution = Callable[[], float | str]


@dataclass(frozen=True)
class Judgement:
    """``right`` is True, False, or None for what could not be read; ``sentence`` says why."""

    right: bool | None
    sentence: str


SAID, MORE = "{said}", "{more}"
"""Parts of a band's words that are filled in: the answer as it was given, and how far it is from the right one."""


@dataclass(frozen=True)
class Band:
    """What is said to every answer from the end of the band before it up to ``up_to``, in SI."""

    up_to: float
    right: bool
    words: tuple[str, ...]


@dataclass(frozen=True)
class Exercise:
    """A question, its solution, and the wrong answers worth an explanation.

    ``solution`` is computed when it is needed, by the library that the lesson is about; ``tolerance`` in SI (percent
    for percents); ``misses`` maps a likely wrong answer to the sentence that explains it; ``way`` tells how to get
    there, for somebody who has tried; ``why`` is said with a right answer. ``safe`` "up" where a size must not be smaller (a
    slot, a gap), "down" where it must not be larger: then the tolerance counts on that side alone.

    >>> exercise = Exercise(Question("half", "Half an inch in mm?", "length"), lambda: 0.0127, 0.0003,
    ...                     {0.00127: "A factor of ten."})
    >>> exercise.judge("13 mm").right, exercise.judge("1.27 mm").sentence
    (True, 'Not yet. A factor of ten.')
    """

    question: Question
    solution: Solution
    tolerance: float = 0.0
    misses: Mapping[Any, str] = field(default_factory=dict)
    why: str = ""
    way: str = ""
    safe: str = ""

    def __post_init__(self) -> None:
        if self.question.kind != OPTION and not self.tolerance > 0:
            raise InputError(
                f"The exercise {self.question.key!r} has tolerance {self.tolerance:g}; one with a typed answer needs "
                "more than 0."
            )

    @property
    def answer(self) -> float | str:
        """The right answer, as its question reads it."""
        return self.question.read(self.solution())

    @property
    def known_misses(self) -> dict[float | str, str]:
        """The wrong answers worth an explanation, as the question reads them."""
        return {self.question.read(given): why for given, why in self.misses.items()}

    @cached_property
    def bands(self) -> tuple[Band, ...]:
        """What is said to a typed answer, from the smallest to the largest; empty where one chooses.

        The one table that judges, here and on a page without Python.
        """
        if isinstance(self.answer, str):
            return ()
        reach = self.tolerance * (1 + 1e-9)  # what was rounded to the very edge is on the good side
        misses = sorted(float(miss) for miss in self.known_misses)
        edges = {self.answer, *self._good_side(self.answer)}
        edges |= {miss + side for miss in misses for side in (-reach, reach)}
        edges |= {(a + b) / 2 for a, b in pairwise(misses)}
        found: list[Band] = []
        for low, high in pairwise([-inf, *sorted(edges), inf]):
            middle = high - 1.0 if low == -inf else low + 1.0 if high == inf else (low + high) / 2
            band = Band(high, *self._said_to(middle))
            if found and found[-1].words == band.words:
                found.pop()
            found.append(band)
        return tuple(found)

    @cached_property
    def choices(self) -> dict[str, tuple[bool, str]]:
        """What is said to each option; empty where one types."""
        if not isinstance(self.answer, str):
            return {}
        elsewhere = "Not yet: {!r} is not it. Look once more at the picture above."
        said = {option: (False, elsewhere.format(option)) for option in self.question.options}
        said |= {str(miss): (False, f"Not yet. {why}") for miss, why in self.known_misses.items()}
        return said | {self.answer: (True, self._praise())}

    def judge(self, given: Any) -> Judgement:
        """What to say to an answer; never raises for what a learner can type."""
        try:
            value = self.question.read(given)
        except InputError as error:
            return Judgement(None, str(error))
        if isinstance(value, str) or isinstance(self.answer, str):
            return Judgement(*self.choices[str(value)])
        band = next(band for band in self.bands if value <= band.up_to)
        said = " ".join(given.split()) if isinstance(given, str) else self.question.text(value)
        filled = {SAID: said, MORE: self.question.text(abs(value - self.answer))}
        return Judgement(band.right, "".join(filled.get(part, part) for part in band.words))

    def _said_to(self, value: float) -> tuple[bool, tuple[str, ...]]:
        """Whether a typed answer is right, and the words for it."""
        answer = float(self.answer)
        low, high = self._good_side(answer)
        if low <= value <= high:
            return True, (self._praise(),)
        near = [(abs(value - float(miss)), why) for miss, why in self.known_misses.items()]
        if near and min(near)[0] <= self.tolerance * (1 + 1e-9):
            return False, (f"Not yet. {min(near)[1]}",)
        if not self.safe:
            return False, ("Not yet: ", SAID, f" is too {'high' if value > answer else 'low'}.")
        if (value > answer) == (self.safe == "up"):
            needs = " more than needed." if self.safe == "up" else " less than it may be."
            return False, ("Not yet: ", SAID, " is safe, but ", MORE, needs)
        harm = " too little: it binds before the year is over." if self.safe == "up" else " too much."
        return False, ("Not yet: ", SAID, " is ", MORE, harm)

    def _good_side(self, answer: float) -> tuple[float, float]:
        """From where to where an answer is right."""
        reach = self.tolerance * (1 + 1e-9)
        below, above = {"": (reach, reach), "up": (_HAIR * reach, reach), "down": (reach, _HAIR * reach)}[self.safe]
        return answer - below, answer + above

    def _praise(self) -> str:
        return " ".join(filter(None, [f"Right: {self.question.text(self.answer, self.safe)}.", self.why]))


_HAIR = 0.15  # of the tolerance: what rounding an answer to a ruler may take off the safe side
