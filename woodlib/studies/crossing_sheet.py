"""The sheet of crossing the grain: scale and places, title, view from the side, sizes, legend.

Panel and border from above, their thickness from the side, one board's end with its rings, and the words beside them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..picture.scene import Area, Line, Mark, Words, box
from ..picture.wood import board_end
from ..words.decided import Decided, in_sight, pick
from ..words.say import length, say
from .crossing_numbers import INCH_M, LENGTH_M, RINGS_DEG, THICKNESS_M, Season

WIDTH_PX, HEIGHT_PX = 720.0, 458.0
TIMES = 12  # movement is drawn this many times too large
PX_PER_M = 8.6 / INCH_M
MIDDLE_Y, CUT_X = 207.0, 26.0  # middle of the width, and where the panel is cut at mid-length
END_X = CUT_X + PX_PER_M * LENGTH_M / 2
SIDE_Y = 393.0  # middle of the thickness, seen from the side
ROLES = ("squeezed", "at-rest", "pull-1", "pull-2", "pull-3", "pull-4")
SHARES = (-0.02, 0.05, 0.2, 0.35, 0.5)  # of the strength, between the roles
# The way of the load in lines, with the numbers of its steps.
LOAD_PATH = (
    ("1", "The border hardly changes its length."),
    ("2", "Glue passes that hold on as shear,"),
    ("", "most of it near the corners."),
    ("3", "So across the middle the panel is"),
    ("", "pulled apart: that is where it cracks."),
)
_COLUMN_X = 318.0
_BOARD_X, _BOARD_Y = 636.0, 118.0  # a board's end

Point = tuple[Any, Any]


@dataclass(frozen=True)
class Drawn:
    """What every picture shows: the sizes of panel and border, and the smooth numbers of both and of the year.

    ``width``, ``border``, ``thickness`` (of the border) in metres; ``rings``
    how all boards are cut.
    """

    rings: str
    width: Decided
    border: Decided
    thickness: Decided
    season: Season

    @property
    def half_px(self) -> Decided:
        """Half the panel's width as it was glued up."""
        return self.width * (PX_PER_M / 2)


def rectangle(left: Any, right: Any, half: Any, middle: float = MIDDLE_Y) -> list[Point]:
    """Corners about a middle line, half as high each way; px."""
    top, bottom = middle - half, half + middle
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def head(drawn: Drawn, words: str, whole: Decided | None = None) -> list[Mark]:
    """Title, what is cut off, the shape on the day it was glued up, and the view from the side; ``whole`` is half the
    width in px where strips lie along the long edges."""
    half = drawn.half_px if whole is None else whole
    end: Any = drawn.border * PX_PER_M + END_X if whole is None else END_X
    wave = np.linspace(-1.0, 1.0, 21)
    cut = [(CUT_X - 10.0 + 3.0 * np.sin(2.5 * np.pi * place), half * place + MIDDLE_Y) for place in wave.tolist()]
    return [
        Words(12, 24, words, "ink", 16, "start", bold=True),
        Line(cut, "quiet", 1.2),
        Line(rectangle(CUT_X, end, half), "ghost", 1.4, "5 4"),
        *_from_the_side(drawn, end, whole is None),
        *board_end(_BOARD_X, _BOARD_Y, 74.0, 24.0, RINGS_DEG[drawn.rings], 90.0, 8.0, 40.0),
        Words(_BOARD_X + 74.0, _BOARD_Y + 42.0, "a board's end", "quiet", 14, "end"),
    ]


def _from_the_side(drawn: Drawn, end: Any, crossing: bool) -> list[Mark]:
    """Panel and border in their thickness, and the sizes in words."""
    panel, border = in_sight(PX_PER_M * THICKNESS_M / 2), drawn.thickness * (PX_PER_M / 2)
    marks: list[Mark] = []
    parts = (
        ((CUT_X, END_X, panel, "wood"), (END_X, end, border, "border-wood"))
        if crossing
        else ((CUT_X, END_X, border, "border-wood"),)
    )
    for left, right, half, role in parts:
        ring = rectangle(left, right, half, SIDE_Y)
        marks += [Area(ring, role), Line([*ring, ring[0]], "edge", 1.4)]
    sizes = say(
        "Panel {w}, border {b} by {h}.",
        w=length(drawn.width),
        b=length(drawn.border),
        h=length(drawn.thickness),
    )
    return [
        *marks,
        Words(12, 424, sizes, "quiet", 14, "start"),
        Words(
            12,
            446,
            f"Above: half a panel; movement {TIMES} times too large. Below it: from the side.",
            "quiet",
            14,
            "start",
        ),
    ]


def pull_legend(warning: Decided, legend: tuple[Any, ...]) -> list[Mark]:
    """What the shades, the numbers and the lines of a glued border mean."""
    title, *shades = legend
    marks: list[Mark] = [Words(_COLUMN_X, 58, title, "ink", 15, "start", bold=True)]
    for k, (role, words) in enumerate(zip(ROLES, shades, strict=True)):
        y = 70 + 22 * k
        marks += [
            Area(box(_COLUMN_X, y, 30, 17), role),
            Line([*box(_COLUMN_X, y, 30, 17), (_COLUMN_X, y)], "quiet", 0.8),
            Words(_COLUMN_X + 40, y + 14, words, "ink", 14, "start"),
        ]
    for k, (number, line) in enumerate(LOAD_PATH):
        marks += [Words(_COLUMN_X, 228 + 21 * k, number, "ink", 14, "start", bold=True)] if number else []
        marks.append(Words(_COLUMN_X + 20, 228 + 21 * k, line, "ink", 14, "start"))
    shown = pick(warning, [1.0], [False, True])
    marks += [
        Line([(_COLUMN_X, 339), (_COLUMN_X + 30, 339)], "ink", 2.6, shown=shown),
        Words(_COLUMN_X + 40, 344, "if it cracks: here, along the grain", "ink", 14, "start", shown=shown),
        Line([(_COLUMN_X, 361), (_COLUMN_X + 30, 361)], "glue", 4.5, shown=shown),
        Words(_COLUMN_X + 40, 366, "or here, along the glue line", "ink", 14, "start", shown=shown),
        Line([(_COLUMN_X, 383), (_COLUMN_X + 30, 383)], "ghost", 1.4, "5 4"),
        Words(_COLUMN_X + 40, 388, "as it was glued up", "ink", 14, "start"),
    ]
    return marks


def says(lines: tuple[tuple[str, bool], ...]) -> list[Mark]:
    """Lines of text beside the picture, some of them bold."""
    return [
        Words(_COLUMN_X, 200 + 24 * k, words, "ink", 15, "start", bold=bold)
        for k, (words, bold) in enumerate(lines)
        if words
    ]
