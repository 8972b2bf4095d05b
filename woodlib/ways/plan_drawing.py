"""The piece from above, with its movement drawn a stated number of times larger than it is."""

from __future__ import annotations

import numpy as np

from ..picture.scene import Area, Line, Mark, Window, box, corners
from ..picture.wood import grain_lines
from .drawn import BOTTOM, MIDDLE, PLAN_LEFT, PLAN_RIGHT, TOP, Drawn, broken, wood


def sheet_box(left: float = PLAN_LEFT, right: float = PLAN_RIGHT) -> list[tuple[float, float]]:
    """All of the view from above between two places along the grain: where grain is drawn that stays put."""
    return corners(left, TOP, right, BOTTOM)


def now_px(d: Drawn, today: float) -> float:
    return today + d.width_change * d.scale.plan_px * d.scale.times


def sizes_px(d: Drawn) -> tuple[float, float, float]:
    """Width today and now, and the border, px."""
    today = d.piece["width"] * d.scale.plan_px
    return today, now_px(d, today), min(d.piece["border_width"] * d.scale.plan_px, 70.0)


def panel(left: float, right: float, width: float, boards: int = 3) -> list[Mark]:
    outline = box(left, MIDDLE - 0.5 * width, right - left, width)
    marks = wood(outline, count=6, within=sheet_box(left, right))
    seams = [
        Line([(left, MIDDLE + width * (k / boards - 0.5)), (right, MIDDLE + width * (k / boards - 0.5))], "edge", 0.8)
        for k in range(1, boards)
    ]
    return [*marks, Window(outline, tuple(seams)), *broken(left, MIDDLE - 0.52 * width, 1.04 * width)]


def today_lines(d: Drawn, left: float, right: float, today: float) -> list[Mark]:
    ys = (MIDDLE - 0.5 * today, MIDDLE + 0.5 * today)
    return [Line([(left, y), (right, y)], "today", 1.4, "5 4") for y in ys]


def wood_round(outline: list, rings: tuple, role: str = "wood-end") -> list[Mark]:
    """Wood inside a closed curve."""
    return [Area(outline, role), Window(outline, rings), Line([*outline, outline[0]], "edge", 1.8)]


def glued(d: Drawn) -> list[Mark]:
    """A border glued across the end, which keeps its share of the movement; the curve between is drawn by eye."""
    today, now, border = sizes_px(d)
    end, share = PLAN_RIGHT - border, d.numbers["held_share"]
    steps = np.linspace(0.0, 1.0, 21)
    rise = np.clip((steps - 0.3) / 0.7, 0.0, 1.0)
    kept = [share * float(s * s * (3.0 - 2.0 * s)) for s in rise]
    xs = [PLAN_LEFT + (end - PLAN_LEFT) * float(s) for s in steps]
    half = [0.5 * (now + (today - now) * part) for part in kept]
    upper = [(x, MIDDLE - h) for x, h in zip(xs, half, strict=True)]
    lower = [(x, MIDDLE + h) for x, h in zip(xs[::-1], half[::-1], strict=True)]
    return [
        *wood_round([*upper, *lower], tuple(grain_lines(sheet_box(PLAN_LEFT, end), "x", 6, 3)), "wood"),
        *broken(PLAN_LEFT, MIDDLE - 0.52 * now, 1.04 * now),
        *today_lines(d, PLAN_LEFT, end, today),
        *wood(box(end, MIDDLE - 0.5 * today, border, today), "border-wood", "y", 31, within=sheet_box(end)),
        Line([(end, MIDDLE - 0.5 * today), (end, MIDDLE + 0.5 * today)], "glue", 3.5),
    ]
