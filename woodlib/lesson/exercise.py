"""An exercise: a question with a known answer, and what to say to every answer somebody may give."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from ..errors import InputError
from .question import OPTION, Question

Solution = Callable[[], float | str]


@dataclass(frozen=True)
class Judgement:
    """``right`` is True, False, or None for what could not be read; ``sentence`` says why."""

    right: bool | None
    sentence: str


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

    def judge(self, given: Any) -> Judgement:
        """What to say to an answer; never raises for what a learner can type."""
        try:
            value = self.question.read(given)
        except InputError as error:
            return Judgement(None, str(error))
        if self._is_right(value):
            return Judgement(True, f"Right: {self.question.text(self.answer, self.safe)}." + _after(self.why))
        near = [(self._distance(value, miss), why) for miss, why in self.known_misses.items() if self._is(value, miss)]
        if near:
            return Judgement(False, "Not yet. " + min(near)[1])
        return Judgement(False, self._unknown_miss(value))

    def _is_right(self, value: float | str) -> bool:
        if not self.safe or isinstance(value, str) or isinstance(self.answer, str):
            return self._is(value, self.answer)
        beyond = value - self.answer if self.safe == "up" else self.answer - value
        return -_HAIR * self.tolerance <= beyond <= self.tolerance

    def _is(self, value: float | str, other: float | str) -> bool:
        # The slack keeps an answer that was rounded to the very edge of the tolerance on the good side.
        return value == other if isinstance(value, str) else self._distance(value, other) <= self.tolerance * (1 + 1e-9)

    def _distance(self, value: float | str, other: float | str) -> float:
        return 0.0 if isinstance(value, str) or isinstance(other, str) else abs(value - other)

    def _unknown_miss(self, value: float | str) -> str:
        if isinstance(value, str) or isinstance(self.answer, str):
            return f"Not yet: {value!r} is not it. Look once more at the picture above."
        said = self.question.text(value)
        if not self.safe:
            return f"Not yet: {said} is {'too high' if value > self.answer else 'too low'}."
        more = self.question.text(abs(value - self.answer))
        if (value > self.answer) == (self.safe == "up"):
            return f"Not yet: {said} is safe, but {more} more than needed."
        return f"Not yet: {said} is {more} too little: it binds before the year is over."


_HAIR = 0.15  # of the tolerance: what rounding an answer to a ruler may take off the safe side


def _after(sentence: str) -> str:
    return f" {sentence}" if sentence else ""
