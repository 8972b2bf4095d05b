"""Take an answer apart: the numbers in it, the kinks between them, the words, and the places that show them.

A recording splits an answer into what a page can interpolate (*leaves*: plain numbers, in drawing order), what it
must decide for itself (*steps*: larger, smaller, reached and plain arithmetic on them), what may differ from one
choice to another (*words*), and *updates*: which element of the drawing or of the readings shows which of these.
Two recordings of the same structure differ in leaves and words alone. A study asked at many states at once is taken
apart once, with the leaves of all states.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from ..picture.scene import Area, Circle, Line, Picture, Window, Words, flatten_points, walk
from ..study.answer import Answer, Reading
from ..study.readings import said_places, tone_class
from ..words.decided import Decided, Pick, Sliding, check_index
from ..words.many import Many
from ..words.say import Number, Said
from ..words.steps import STEPS

# Slots: leaf k is k, step j is -1 - j. Words are referred to as ["w", k], numbers to show as ["n", slot, kind,
# rounding], picks as ["k", slot, [options]], sentences as lists that begin with "s".
PATH, ATTRIBUTE, CLASS, TEXT = 0, 1, 2, 3


@dataclass(frozen=True)
class Recording:
    """Answers taken apart: leaves of shape (states, leaves); ``exact[k]`` tells that leaf k is printed or decides something."""

    leaves: np.ndarray
    exact: list[bool]
    steps: list[tuple[str, int, int]]
    words: list[str]
    updates: list[list[Any]]

    @cached_property
    def numbers(self) -> np.ndarray:
        """All numbers by slot, shape (states, leaves and steps)."""
        return made_numbers(self.steps, self.leaves)

    def signature(self) -> tuple:
        """Equal for answers whose structure is the same; may be kept in a dict."""
        return repr(self.updates), tuple(self.steps), tuple(self.exact), len(self.words)

    def is_made_like(self, other: Recording) -> bool:
        """Whether two answers have the same structure; many times quicker than comparing signatures."""
        return (
            self.exact == other.exact
            and len(self.words) == len(other.words)
            and self.steps == other.steps
            and self.updates == other.updates
        )


def made_numbers(steps: Sequence[Sequence[Any]], leaves: np.ndarray, lean: float = 0.0) -> np.ndarray:
    """All numbers by slot, decided ones from the end: shape (states, leaves and steps), from (states, leaves).

    An edge counts as reached the share ``lean`` of the numbers sooner, or later where it is below zero.
    """
    numbers = np.concatenate([leaves, np.empty((len(leaves), len(steps)))], axis=1)
    for step, (name, first, second) in enumerate(steps, start=1):
        a, b = numbers[:, first], numbers[:, second]
        if lean and name == "reached":
            a = a + lean * np.maximum(np.abs(a), np.abs(b))
        numbers[:, -step] = STEPS[name].python(a, b)
    return numbers


class _Recorder:
    def __init__(self) -> None:
        self.pieces: list[tuple[int, Any]] = []  # first leaf, and values that broadcast to (states, how many)
        self.exact: list[bool] = []
        self.steps: list[tuple[str, int, int]] = []
        self.words: list[str] = []
        self.updates: list[list[Any]] = []
        self.picks: list[tuple[int, int]] = []  # slot, and how many options there are
        self._known: dict[int, int] = {}

    def leaf(self, value: Any, exact: bool) -> int:
        self.pieces.append((len(self.exact), value.values[:, None] if type(value) is Many else float(value)))
        self.exact.append(exact)
        return len(self.exact) - 1

    def slot(self, value: Sliding, exact: bool) -> int:
        if type(value) is not Decided:
            return self.leaf(value, exact)
        known = self._known.get(id(value))
        if known is None:
            first = self.slot(value.first, True)
            second = first if value.second is value.first else self.slot(value.second, True)
            self.steps.append((value.step, first, second))
            known = self._known[id(value)] = -len(self.steps)
        return known

    def slots(self, points: object) -> list[int]:
        """Slots of coordinates; an unbroken run of leaves is [first, count] with count negative."""
        first = len(self.exact)
        if isinstance(points, Many) or (isinstance(points, np.ndarray) and points.dtype != object):
            states = points.values if isinstance(points, Many) else points[None]
            block = states.reshape(len(states), -1)
            self.pieces.append((first, block))
            self.exact.extend([False] * block.shape[1])
            return [first, -block.shape[1]]
        values = flatten_points(points)
        if any(isinstance(value, Decided) for value in values):
            return [self.slot(value, False) for value in values]
        for value in values:
            self.leaf(value, False)
        return [first, -len(values)]

    def leaves(self, states: int) -> np.ndarray:
        """All leaves at all states."""
        table = np.empty((states, len(self.exact)))
        for first, piece in self.pieces:
            table[:, first : first + (piece.shape[1] if isinstance(piece, np.ndarray) else 1)] = piece
        return table

    def said(self, words: Any) -> Any:
        if isinstance(words, str):  # most of all that is said
            self.words.append(words)
            return ["w", len(self.words) - 1]
        if isinstance(words, Number):
            return ["n", self.slot(words.value, True), words.kind, words.rounding]
        if isinstance(words, Pick):
            slot = self.slot(words.index, True)
            self.picks.append((slot, len(words.options)))
            return ["k", slot, [self.said(option) for option in words.options]]
        if isinstance(words, Said):
            return ["s", *[self.said(part) for part in words.parts]]
        if isinstance(words, bool):
            words = "" if words else " off"
        self.words.append(str(words))
        return ["w", len(self.words) - 1]

    def mark(self, element: int, mark: Any) -> None:
        if isinstance(mark, Window):
            self.updates.append([PATH, element, True, self.slots(mark.points)])
            return
        if isinstance(mark, Line | Area):
            self.updates.append([PATH, element, isinstance(mark, Area), self.slots(mark.points)])
        elif isinstance(mark, Circle):
            for name, value in (("cx", mark.x), ("cy", mark.y), ("r", mark.radius)):
                self.updates.append([ATTRIBUTE, element, name, self.slot(value, False)])
        else:
            for name, value in (("x", mark.x), ("y", mark.y)):
                self.updates.append([ATTRIBUTE, element, name, self.slot(value, False)])
            self.updates.append([TEXT, element, self.said(mark.text)])
        self.updates.append([CLASS, element, class_prefix(mark), self.said(mark.role), self.said(mark.shown)])


def class_prefix(mark: Line | Area | Circle | Words) -> str:
    """The class of a mark's element up to its role."""
    if isinstance(mark, Line) or (isinstance(mark, Circle) and not mark.filled):
        return "l l-"
    return "w-" if isinstance(mark, Words) else "a-"


def elements(picture: Picture) -> Iterator[Any]:
    """The marks in the order of their ``path``, ``circle`` and ``text`` elements."""
    return iter(walk(picture.marks))


def record(answer: Answer, states: int = 1) -> Recording:
    """Take an answer for so many states apart; elements are counted through the drawing first, then through the ``data-s`` places."""
    recorder = _Recorder()
    element = 0
    for mark in elements(answer.picture):
        recorder.mark(element, mark)
        element += 1
    for said in said_places(answer):
        if isinstance(said, Reading):
            tone = said.tone
            options = (
                Pick(tone.index, tuple(map(tone_class, tone.options))) if isinstance(tone, Pick) else tone_class(tone)
            )
            recorder.updates.append([CLASS, element, "", recorder.said(options), recorder.said(True)])
        else:
            recorder.updates.append([TEXT, element, recorder.said(said)])
        element += 1
    recorder.updates.append([TEXT, element, recorder.said(answer.picture_in_words)])
    made = Recording(recorder.leaves(states), recorder.exact, recorder.steps, recorder.words, recorder.updates)
    for slot, count in dict.fromkeys(recorder.picks):
        if np.isfinite(made.numbers[:, slot]).all():  # what is not finite is refused as such
            check_index(made.numbers[:, slot], count)
    return made
