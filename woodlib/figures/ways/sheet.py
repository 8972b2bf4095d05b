"""What the drawings of ways to build share: the sheet's lay-out, fixed scales, a way's numbers, pieces of wood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from ...reading.decided import Decided
from ...reading.say import fine_length, movement, say
from ..scene import Area, Line, Mark, Window, Words, box, dimension_line
from ..wood import grain_lines

WIDTH, HEIGHT = 720.0, 420.0
PLAN_LEFT, PLAN_WIDTH = 14.0, 300.0
SECTION_LEFT, SECTION_WIDTH = 340.0, 366.0
TOP, BOTTOM = 48.0, 362.0
MIDDLE = 0.5 * (TOP + BOTTOM)
EXAGGERATIONS = (40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2)
MOST_DRAWN = 0.15  # of the width; beyond it screws would leave the batten they sit in
MONTHS = ("today", "driest", "dampest")

Number = float | Decided


@dataclass(frozen=True)
class Scale:
    """What stays put while sliders move: px per metre in plan and section, and how much the plan exaggerates."""

    plan_px: float
    times: int
    section_px: float


@dataclass(frozen=True)
class Drawn:
    """A way as it is drawn: smooth numbers, sizes by name (to cut, and as they will stand), the piece, scale, month.

    ``piece`` holds ``width``, ``length``, ``thickness``, ``border_width`` and ``border_thickness`` in metres; only
    ``width`` may move with a slider.
    """

    key: str
    numbers: Mapping[str, float]
    sizes: Mapping[str, Number]
    piece: Mapping[str, float]
    scale: Scale
    month: str = "today"

    def moved(self, name: str) -> float:
        """How far a travel has gone outward in this month, careful end, m; zero today."""
        if self.month == "today":
            return 0.0
        return -self.numbers[f"{name}_narrowing"] if self.month == "driest" else self.numbers[f"{name}_widening"]

    def either(self, today: Number, driest: Number, dampest: Number) -> Number:
        """The number of this month."""
        return {"today": today, "driest": driest, "dampest": dampest}[self.month]

    @property
    def width_change(self) -> float:
        """Best guess of the change of width in this month, m."""
        return self.either(0.0, -self.numbers["narrowing_mid"], self.numbers["widening_mid"])

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


def wood(outline: list, role: str = "wood", along: str = "x", seed: int = 3, count: int = 4) -> list[Mark]:
    """A rectangle of long grain with its outline."""
    lines = tuple(grain_lines(outline, along, count, seed))
    return [Area(outline, role), Window(outline, lines), Line([*outline, outline[0]], "edge", 1.6)]


def end_wood(outline: list, role: str = "wood-end") -> list[Mark]:
    """An upright rectangle of end grain, shaded by slanting lines."""
    (left, top), (right, _), (_, low), _ = outline
    span = right - left
    steps = np.linspace(0.0, 1.0, 13)
    slants = tuple(
        Line([(left + span * float(s), low), (left + span * float(s) + 14.0, top)], "late-wood", 0.7) for s in steps
    )
    return [Area(outline, role), Window(outline, slants), Line([*outline, outline[0]], "edge", 1.6)]


def shape(points: list, role: str = "border-wood") -> list[Mark]:
    """Any filled outline."""
    return [Area(points, role), Line([*points, points[0]], "edge", 1.6)]


def hollow(points: list) -> list[Mark]:
    """Room that is left free."""
    return [Area(points, "gap"), Line([*points, points[0]], "edge", 1.2)]


def sized(start, end, metres: Number, rounding: str = "up", fine: bool = False, offset: float = -7.0) -> list[Mark]:
    """A dimension line with a size as the shop reads it."""
    number = movement(metres, rounding) if not fine else fine_length(metres, rounding)
    return dimension_line(start, end, say("{size}", size=number), size=15, offset=offset)


def label(x: Number, y: Number, text: str, anchor: str = "start", role: str = "ink") -> Mark:
    """A word on the drawing."""
    return Words(x, y, text, role, 15, anchor)


def broken(left: float, top: Number, height: Number) -> list[Mark]:
    """A wavy edge of paper: the piece goes on to the left."""
    steps = np.linspace(0.0, 1.0, 11)
    wave = [(left + 4.0 + 3.0 * float(np.sin(9.0 * s)), top + height * float(s)) for s in steps]
    return [Area([*wave, (left - 3.0, top + height), (left - 3.0, top)], "paper"), Line(wave, "quiet", 1.2)]


def rectangle(left: Number, top: Number, right: Number, low: Number) -> list:
    """Corners of an upright rectangle from its sides."""
    return box(left, top, right - left, low - top)
