"""A board sketch out of words: one line of text a mark, in px of a sheet 360 wide and 144 high.

``line x y x y ...``, ``dash x y ...``, ``arrow x y x y``, ``area ROLE x y ...``, ``circle x y r``, and ``text x y words``
(middled; ends in `` start`` where it begins at x).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from ..errors import InputError
from ..picture.palette import ROLES
from ..picture.scene import Area, Circle, Line, Mark, Picture, Words

WIDTH, HEIGHT, LETTERS, HEAD = 360.0, 144.0, 12.0, 6.0


def sketch(title: str, lines: Sequence[str]) -> Picture:
    """The picture of a sketch; raises :class:`InputError` for a line that means nothing.

    >>> len(sketch("A panel", ["line 0 0 100 0", "arrow 10 20 90 20", "text 50 40 it moves"]).marks)
    4
    """
    return Picture(title, WIDTH, HEIGHT, tuple(mark for line in lines for mark in _marks(line)))


def _marks(line: str) -> list[Mark]:
    kind, *rest = line.split(" ")
    try:
        if kind == "text":
            words, start = " ".join(rest[2:]), rest[-1] == "start"
            words, anchor = (words.removesuffix(" start"), "start") if start else (words, "middle")
            return [Words(float(rest[0]), float(rest[1]), words, "ink", LETTERS, anchor)]
        if kind == "circle":
            x, y, radius = map(float, rest)
            return [Circle(x, y, radius, "ink", 1.4)]
        role, numbers = (rest[0], rest[1:]) if kind == "area" else ("ink", rest)
        points = _points(numbers)
        if kind == "area" and role in ROLES:
            return [Area(points, role), Line([*points, points[0]], "edge", 1.2)]
        if kind in ("line", "dash"):
            return [Line(points, "ink" if kind == "line" else "quiet", 1.5, "" if kind == "line" else "5 4")]
        if kind == "arrow" and len(points) == 2:
            return [Line(points, "stop", 1.8), Line(_head(*points), "stop", 1.8)]
    except (ValueError, IndexError, TypeError):
        pass
    raise InputError(f"The sketch has a line {line!r}, which draws nothing; write it like 'arrow 10 20 90 20'.")


def _points(numbers: Sequence[str]) -> list[tuple[float, float]]:
    values = [float(number) for number in numbers]
    return list(zip(values[::2], values[1::2], strict=True))


def _head(begin: tuple[float, float], end: tuple[float, float]) -> list[tuple[float, float]]:
    turn = math.atan2(end[1] - begin[1], end[0] - begin[0])
    sides = [(end[0] - HEAD * math.cos(turn + side), end[1] - HEAD * math.sin(turn + side)) for side in (-0.5, 0.5)]
    return [sides[0], end, sides[1]]
