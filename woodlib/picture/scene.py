"""A picture as data: a fixed sheet, and marks on it in the order they are drawn.

A picture is built by a pure function from numbers. Its *structure* (which marks, which roles, how many points)
stays the same while sliders move; only coordinates, picked roles and words change. That is what lets the same
picture be drawn live, printed as a still, and frozen into a page. Coordinates are in px of the sheet, y downward;
a :class:`Frame` turns lengths or data into px.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from ..errors import InputError
from ..words.decided import Decided, Pick, Sliding, now
from ..words.many import Many
from ..words.say import Said

Coordinate = Sliding
Role = str | Pick
Shown = bool | Pick


@dataclass(frozen=True)
class Line:
    """A stroke through points, shape (n, 2), in px."""

    points: object
    role: Role = "ink"
    width: float = 1.5
    dash: str = ""
    shown: Shown = True


@dataclass(frozen=True)
class Area:
    """A filled outline through points, shape (n, 2), in px."""

    points: object
    role: Role = "wood"
    shown: Shown = True


@dataclass(frozen=True)
class Circle:
    """A ring (or a filled disc) around a centre, in px."""

    x: Coordinate
    y: Coordinate
    radius: Coordinate
    role: Role = "ink"
    width: float = 1.2
    filled: bool = False
    shown: Shown = True


@dataclass(frozen=True)
class Words:
    """A line of text at a point; ``anchor`` is start, middle or end; ``turn`` in degrees, counter-clockwise."""

    x: Coordinate
    y: Coordinate
    text: str | Said | Pick
    role: Role = "ink"
    size: float = 15.0
    anchor: str = "middle"
    bold: bool = False
    turn: float = 0.0
    shown: Shown = True


@dataclass(frozen=True)
class Window:
    """Marks seen only inside an outline, shape (n, 2), in px: rings inside a board, a curve inside its axes."""

    points: object
    marks: tuple


Mark = Line | Area | Circle | Words | Window
_MARKS = (Line, Area, Circle, Words, Window)


@dataclass(frozen=True)
class Gauge:
    """A scale of the picture on which somebody's guess of this ``kind`` can be marked, from ``low`` to ``high`` in SI.

    Where it lies is told by the one mark with the role ``said`` (:func:`gauge_mark`).
    """

    kind: str
    low: float
    high: float


@dataclass(frozen=True)
class Picture:
    """A sheet of ``width`` x ``height`` px with a title and marks, and perhaps a gauge for guesses."""

    title: str
    width: float
    height: float
    marks: tuple[Mark, ...] = field(default_factory=tuple)
    gauge: Gauge | None = None

    def __post_init__(self) -> None:
        for mark in walk(self.marks):
            if not isinstance(mark, _MARKS):
                raise InputError(
                    f"The picture {self.title!r} holds a {type(mark).__name__}, which is no mark: an image cannot slide. "
                    "Draw it with Line, Area, Circle, Words and Window; a coloured field is a grid of areas."
                )


def flatten_points(points: Any) -> list[Coordinate]:
    """Points as x0, y0, x1, y1 ...; decided numbers and those of many states stay what they are."""
    if isinstance(points, np.ndarray) and points.dtype != object:
        return points.ravel().tolist()
    if isinstance(points, Many):
        return list(points.ravel())
    return [value if isinstance(value, (Decided, Many)) else float(value) for point in points for value in point]


def box(x: Coordinate, y: Coordinate, width: Coordinate, height: Coordinate) -> list[tuple[Coordinate, Coordinate]]:
    """The four corners of an upright rectangle from its upper left corner, px."""
    return corners(x, y, x + width, y + height)


def corners(
    left: Coordinate, top: Coordinate, right: Coordinate, low: Coordinate
) -> list[tuple[Coordinate, Coordinate]]:
    """The four corners of an upright rectangle from its sides, px; from the upper left, clockwise."""
    return [(left, top), (right, top), (right, low), (left, low)]


@dataclass(frozen=True)
class Frame:
    """A region of the sheet with straight scales: data to px.

    >>> frame = Frame(left=50, top=10, width=100, height=80, x_low=0, x_high=10, y_low=0, y_high=4)
    >>> frame.x(5), frame.y(4)
    (100.0, 10.0)
    """

    left: float
    top: float
    width: float
    height: float
    x_low: float
    x_high: float
    y_low: float
    y_high: float

    def x(self, value):
        """Data to px from the left of the sheet."""
        return (value - self.x_low) * (self.width / (self.x_high - self.x_low)) + self.left

    def y(self, value):
        """Data to px from the top of the sheet (data grow upward)."""
        return (value - self.y_low) * (-self.height / (self.y_high - self.y_low)) + (self.top + self.height)

    def points(self, x_values, y_values):
        """Curve through data, shape (n, 2), px."""
        x, y = (row if isinstance(row, Many | np.ndarray) else np.asarray(row) for row in (x_values, y_values))
        return np.column_stack([self.x(x), self.y(y)])

    def gauge(self, kind: str, along: str) -> tuple[Gauge, Line]:
        """A gauge on the "x" or the "y" scale, and the mark that says where it lies."""
        low, high = (self.left, self.top + self.height), (self.left + self.width, self.top)
        if along == "x":
            return Gauge(kind, self.x_low, self.x_high), gauge_mark(low, (high[0], low[1]), (0.0, -self.height))
        return Gauge(kind, self.y_low, self.y_high), gauge_mark(low, (low[0], high[1]), (self.width, 0.0))

    @property
    def outline(self) -> list[tuple[float, float]]:
        """The frame's rectangle, px."""
        return box(self.left, self.top, self.width, self.height)

    def axes(
        self,
        x_ticks: Iterable[tuple[float, str]],
        y_ticks: Iterable[tuple[float, str]],
        x_label: str = "",
        y_label: str = "",
        size: float = 13.0,
    ) -> list[Mark]:
        """Grid lines, tick labels and axis names, with the ticks the author chose (a picture never rescales itself)."""
        bottom = self.top + self.height
        marks: list[Mark] = []
        for value, label in y_ticks:
            y = self.y(value)
            marks.append(Line([(self.left, y), (self.left + self.width, y)], "grid", 1.0))
            marks.append(Words(self.left - 7, y + size * 0.35, label, "quiet", size, "end"))
        for value, label in x_ticks:
            marks.append(Words(self.x(value), bottom + size + 6, label, "quiet", size))
        marks.append(Line([(self.left, bottom), (self.left + self.width, bottom)], "quiet", 1.2))
        if x_label:
            marks.append(Words(self.left + self.width / 2, bottom + 2 * size + 12, x_label, "quiet", size))
        if y_label:
            marks.append(Words(self.left, self.top - 9, y_label, "quiet", size, "start"))
        return marks


def dimension_line(
    start: tuple[Coordinate, Coordinate],
    end: tuple[Coordinate, Coordinate],
    text: str | Said | Pick,
    role: Role = "ink",
    offset: float = -7.0,
    size: float = 15.0,
    shown: Shown = True,
) -> list[Mark]:
    """A measured length: a line with a small bar at each end and its number, level or upright."""
    (x0, y0), (x1, y1) = start, end
    upright = bool(np.abs(now(x1) - now(x0)) < np.abs(now(y1) - now(y0)))
    bar = (4.0, 0.0) if upright else (0.0, 4.0)
    marks: list[Mark] = [Line([start, end], role, 1.4, shown=shown)]
    for x, y in (start, end):
        marks.append(Line([(x - bar[0], y - bar[1]), (x + bar[0], y + bar[1])], role, 1.4, shown=shown))
    middle_x, middle_y = (x0 + x1) * 0.5, (y0 + y1) * 0.5
    if upright:
        marks.append(
            Words(middle_x + offset, middle_y + 5, text, role, size, "start" if offset > 0 else "end", shown=shown)
        )
    else:
        marks.append(
            Words(middle_x, middle_y + (offset if offset < 0 else offset + size * 0.7), text, role, size, shown=shown)
        )
    return marks


def gauge_mark(
    low: tuple[Coordinate, Coordinate], high: tuple[Coordinate, Coordinate], across: tuple[float, float]
) -> Line:
    """Where a gauge lies: an unseen line from its low end to its high end, px, and on by ``across``, along which a guess
    is drawn."""
    return Line([low, high, (high[0] + across[0], high[1] + across[1])], "said", shown=False)


def placed(marks: Iterable[Mark], times: float, right: float, down: float) -> list[Mark]:
    """The same marks drawn ``times`` as large and moved, px; strokes and letters keep their size.

    >>> placed([Circle(10.0, 20.0, 4.0)], 0.5, 100.0, 0.0)[0].radius
    2.0
    """

    # A decided number that several points share stays one number, so that a page decides it once.
    known: dict[tuple[int, float], tuple[Coordinate, Coordinate]] = {}

    def at(old: Coordinate, shift: float) -> Coordinate:
        if not isinstance(old, Decided):
            return old * times + shift
        return known.setdefault((id(old), shift), (old * times + shift, old))[0]

    def points(old: Any) -> list[tuple[Coordinate, Coordinate]]:
        if isinstance(old, Many) or (isinstance(old, np.ndarray) and old.dtype != object):
            return old * times + np.array([right, down])
        return [(at(x, right), at(y, down)) for x, y in old]

    def moved(mark: Mark) -> Mark:
        if isinstance(mark, Window):
            return Window(points(mark.points), tuple(map(moved, mark.marks)))
        if isinstance(mark, Line | Area):
            return replace(mark, points=points(mark.points))
        round_one = {"radius": at(mark.radius, 0.0)} if isinstance(mark, Circle) else {}
        return replace(mark, x=at(mark.x, right), y=at(mark.y, down), **round_one)

    return [moved(mark) for mark in marks]


def walk(marks: Sequence[Mark]) -> Iterable[Mark]:
    """Every mark in drawing order, windows before what they hold."""
    for mark in marks:
        yield mark
        if isinstance(mark, Window):
            yield from walk(mark.marks)
