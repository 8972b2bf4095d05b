"""What the drawings of ways to build share: the lay-out, fixed scales, a way's numbers, pieces of wood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..picture.scene import Area, Line, Mark, Role, Window, Words, dimension_line
from ..picture.wood import grain_lines
from ..words.decided import Decided
from ..words.say import Said, fine_length, length, say
from .judge import Judgement
from .way import Way

PLAN_LEFT, PLAN_WIDTH = 14.0, 300.0
PLAN_RIGHT = PLAN_LEFT + PLAN_WIDTH
SECTION_LEFT, SECTION_WIDTH = 340.0, 366.0
TOP, BOTTOM = 48.0, 362.0
MIDDLE = 0.5 * (TOP + BOTTOM)
WIDTH, HEIGHT = 720.0, 420.0


EXAGGERATIONS = (40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2)


MOST_DRAWN = 0.2  # of the width; beyond it screws would leave the batten they sit in


Number = Any


@dataclass(frozen=True)
class Scale:
    """What stays put while sliders move: px per metre in plan and section, and how much the plan exaggerates."""

    plan_px: float
    times: int
    section_px: float


@dataclass(frozen=True)
class Drawn:
    """A way as it is drawn: its judgement, the sizes of the piece, the scale, and the month, ``driest`` or ``dampest``.

    ``piece`` holds ``width``, ``length``, ``thickness``, ``border_width`` and ``border_thickness`` in metres; only
    ``width`` may move with a slider.
    """

    judged: Judgement
    piece: Mapping[str, Number]
    scale: Scale
    month: str

    @property
    def way(self) -> Way:
        """The way that is drawn."""
        return self.judged.way

    @property
    def numbers(self) -> Mapping[str, Number]:
        """Its smooth numbers."""
        return self.judged.numbers

    @property
    def sizes(self) -> Mapping[str, Number]:
        """Its sizes by key, to cut and as they will stand."""
        return self.judged.sizes

    def moved(self, name: str) -> float:
        """How far a travel has gone outward in this month, careful end, m."""
        return -self.numbers[f"{name}_narrowing"] if self.month == "driest" else self.numbers[f"{name}_widening"]

    def either(self, driest: Number, dampest: Number) -> Number:
        """The number of this month."""
        return driest if self.month == "driest" else dampest

    @property
    def width_change(self) -> float:
        """Best guess of the change of width in this month, m."""
        return self.either(-self.numbers["narrowing_mid"], self.numbers["widening_mid"])

    def px(self, metres: Number) -> Number:
        """A length in the section, px."""
        return metres * self.scale.section_px


def scale_for(widest_m: float, furthest_strain: float, section_m: float, margin_m: float = 0.0) -> Scale:
    """A scale at which a plan of the widest panel and a section of ``section_m`` stay on their sheet.

    ``furthest_strain`` is the largest change of width over width that may be drawn; ``margin_m`` wood beside the panel.
    """
    fitting = [times for times in EXAGGERATIONS if times * furthest_strain <= MOST_DRAWN]
    times = fitting[0] if fitting else 1
    plan = (BOTTOM - TOP) / (widest_m * (1.0 + times * furthest_strain) + 2.0 * margin_m)
    return Scale(plan, times, SECTION_WIDTH / section_m)


def wood(
    outline: list, role: Role = "wood", along: str = "x", seed: int = 3, count: int = 4, within: list | None = None
) -> list[Mark]:
    """A rectangle of long grain with its outline. Grain ``within`` a place stays put, and the outline shows its part;
    that of a border, and what goes with a decided outline, is straight: few numbers for a page."""
    decided = any(isinstance(value, Decided) for corner in outline for value in corner)
    straight = role == "border-wood" if within else decided
    lines = (
        _straight(within or outline, along, count) if straight else grain_lines(within or outline, along, count, seed)
    )
    return [Area(outline, role), Window(outline, tuple(lines)), Line([*outline, outline[0]], "edge", 1.6)]


def _straight(outline: list, along: str, count: int) -> list[Mark]:
    """Straight grain right across the sheet, of which the outline shows its part."""
    (left, top), _, (right, low), _ = outline
    marks: list[Mark] = []
    for k in range(count):
        share = (k + 0.5) / count
        if along == "x":
            y = top + (low - top) * share
            points = [(0.0, y), (WIDTH, y)]
        else:
            x = left + (right - left) * share
            points = [(x, 0.0), (x, HEIGHT)]
        marks.append(Line(points, "late-wood", 0.7 if k % 3 else 1.2))
    return marks


def end_wood(outline: list, role: str = "wood-end", from_above: bool = False) -> list[Mark]:
    """An upright rectangle of end grain, shaded by slanting lines; in the section, or in the view ``from_above``."""
    return [Area(outline, role), Window(outline, _SLANTS[from_above]), Line([*outline, outline[0]], "edge", 1.6)]


def _slanting(left: float, right: float) -> tuple[Mark, ...]:
    """Slanting lines over all of a drawing, of which an outline shows its part, as hatching does."""
    tall = BOTTOM - TOP + 40.0
    return tuple(
        Line([(float(x), BOTTOM + 30.0), (float(x) + 0.25 * tall, TOP - 10.0)], "late-wood", 0.7)
        for x in np.arange(left - 0.25 * tall, right, 20.0)
    )


_SLANTS = _slanting(SECTION_LEFT, SECTION_LEFT + SECTION_WIDTH), _slanting(PLAN_LEFT, PLAN_RIGHT)


def shape(points: list, role: str = "border-wood") -> list[Mark]:
    """Any filled outline."""
    return [Area(points, role), Line([*points, points[0]], "edge", 1.6)]


def hollow(points: list) -> list[Mark]:
    """Room that is left free."""
    return [Area(points, "gap"), Line([*points, points[0]], "edge", 1.2)]


def sized(start, end, metres: Number, rounding: str = "up", fine: bool = False, offset: float = -7.0) -> list[Mark]:
    """A dimension line with a size as the shop reads it."""
    number = length(metres, rounding) if not fine else fine_length(metres, rounding)
    clear = offset + 4.0 if offset > 0.0 else offset  # a phone shows letters larger, and the line must not cross them
    return dimension_line(start, end, say("{size}", size=number), size=15, offset=clear)


def label(x: Number, y: Number, text: str | Said, anchor: str = "start", role: str = "ink") -> Mark:
    """A word on the drawing."""
    return Words(x, y, text, role, 15, anchor)


def broken(left: float, top: Number, height: Number) -> list[Mark]:
    """A wavy edge of paper: the piece goes on to the left."""
    steps = np.linspace(0.0, 1.0, 11)
    wave = [(left + 4.0 + 3.0 * float(np.sin(9.0 * s)), top + height * float(s)) for s in steps]
    return [Area([*wave, (left - 3.0, top + height), (left - 3.0, top)], "paper"), Line(wave, "quiet", 1.2)]
