"""Take an answer apart: the numbers in it, the kinks between them, the words, and the places that show them.

A recording splits an answer into what a page can interpolate (*leaves*: plain numbers, in drawing order), what it
must decide for itself (*steps*: larger, smaller, reached and plain arithmetic on them), what may differ from one
choice to another (*words*), and *updates*: which element of the drawing or of the readings shows which of these.
Two recordings of the same structure differ in leaves and words alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from ..picture.scene import Area, Circle, Line, Picture, Window, Words, flatten_points, walk
from ..study.answer import Answer, Reading
from ..study.readings import said_places, tone_class
from ..words.decided import Decided, Pick
from ..words.say import Number, Said

# Slots: leaf k is k, step j is -1 - j. Words are referred to as ["w", k], numbers to show as ["n", slot, kind,
# rounding], picks as ["k", slot, [options]], sentences as lists that begin with "s".
PATH, ATTRIBUTE, CLASS, TEXT = 0, 1, 2, 3


@dataclass(frozen=True)
class Recording:
    """One answer taken apart. ``exact[k]`` tells that leaf k is printed or decides something."""

    leaves: list[float]
    exact: list[bool]
    steps: list[tuple[str, int, int]]
    words: list[str]
    updates: list[list[Any]]

    def signature(self) -> tuple:
        """Equal for answers whose structure is the same; may be kept in a dict."""
        return repr(self.updates), tuple(self.steps), len(self.leaves), len(self.words)

    def is_made_like(self, other: Recording) -> bool:
        """Whether two answers have the same structure; many times quicker than comparing signatures."""
        return (
            len(self.leaves) == len(other.leaves)
            and len(self.words) == len(other.words)
            and self.steps == other.steps
            and self.updates == other.updates
        )


class _Recorder:
    def __init__(self) -> None:
        self.leaves: list[float] = []
        self.exact: list[bool] = []
        self.steps: list[tuple[str, int, int]] = []
        self.words: list[str] = []
        self.updates: list[list[Any]] = []
        self._known: dict[int, int] = {}

    def slot(self, value: float | Decided, exact: bool) -> int:
        if not isinstance(value, Decided):
            self.leaves.append(float(value))
            self.exact.append(exact)
            return len(self.leaves) - 1
        if id(value) not in self._known:
            first, second = self.slot(value.first, True), self.slot(value.second, True)
            self.steps.append((value.step, first, second))
            self._known[id(value)] = -len(self.steps)
        return self._known[id(value)]

    def slots(self, points: object) -> list[int]:
        """Slots of coordinates; an unbroken run of leaves is [first, count] with count negative."""
        values = flatten_points(points)
        if Decided in set(map(type, values)):
            return [self.slot(value, False) for value in values]
        first = len(self.leaves)
        self.leaves.extend(values)
        self.exact.extend([False] * len(values))
        return [first, -len(values)]

    def said(self, words: Any) -> Any:
        if isinstance(words, str):  # most of all that is said
            self.words.append(words)
            return ["w", len(self.words) - 1]
        if isinstance(words, Number):
            return ["n", self.slot(words.value, True), words.kind, words.rounding]
        if isinstance(words, Pick):
            return ["k", self.slot(words.index, True), [self.said(option) for option in words.options]]
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


def record(answer: Answer) -> Recording:
    """Take an answer apart; elements are counted through the drawing first, then through the ``data-s`` places."""
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
    return Recording(recorder.leaves, recorder.exact, recorder.steps, recorder.words, recorder.updates)
