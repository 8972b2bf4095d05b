"""The piece from above, with its movement drawn a stated number of times larger than it is."""

from __future__ import annotations

import numpy as np

from ..scene import Area, Circle, Line, Mark, Window, box, corners
from ..wood import grain_lines
from .sheet import MIDDLE, PLAN_LEFT, PLAN_WIDTH, Drawn, broken, end_wood, wood

RIGHT = PLAN_LEFT + PLAN_WIDTH


def _now(d: Drawn, today: float) -> float:
    return today + d.width_change * d.scale.plan_px * d.scale.times


def _sizes(d: Drawn) -> tuple[float, float, float]:
    """Width today and now, and the border, px."""
    today = d.piece["width"] * d.scale.plan_px
    return today, _now(d, today), min(d.piece["border_width"] * d.scale.plan_px, 70.0)


def _panel(left: float, right: float, width: float, boards: int = 3) -> list[Mark]:
    outline = box(left, MIDDLE - 0.5 * width, right - left, width)
    marks = wood(outline, count=6)
    seams = [
        Line([(left, MIDDLE + width * (k / boards - 0.5)), (right, MIDDLE + width * (k / boards - 0.5))], "edge", 0.8)
        for k in range(1, boards)
    ]
    return [*marks, Window(outline, tuple(seams)), *broken(left, MIDDLE - 0.52 * width, 1.04 * width)]


def _today(d: Drawn, left: float, right: float, today: float) -> list[Mark]:
    ys = (MIDDLE - 0.5 * today, MIDDLE + 0.5 * today)
    return [Line([(left, y), (right, y)], "today", 1.4, "5 4") for y in ys]


def _across_end(d: Drawn, pins: bool = False, alike: bool = False) -> list[Mark]:
    today, now, border = _sizes(d)
    end = RIGHT - border
    height = now if alike else today
    cross = wood(box(end, MIDDLE - 0.5 * height, border, height), "border-wood", "x" if alike else "y", 31)
    marks = [*_panel(PLAN_LEFT, end, now), *_today(d, PLAN_LEFT, end, today), *cross]
    if pins:
        away = d.numbers["outer_distance"] * d.scale.plan_px
        marks += [Circle(end + 0.4 * border, MIDDLE + s * away, 3.5, "metal", filled=True) for s in (-1.0, 0.0, 1.0)]
    return marks


def glued(d: Drawn) -> list[Mark]:
    """A border glued across the end, which keeps its share of the movement; the curve between is drawn by eye."""
    today, now, border = _sizes(d)
    end, share = RIGHT - border, d.numbers["held_share"]
    steps = np.linspace(0.0, 1.0, 21)
    rise = np.clip((steps - 0.3) / 0.7, 0.0, 1.0)
    kept = [share * float(s * s * (3.0 - 2.0 * s)) for s in rise]
    xs = [PLAN_LEFT + (end - PLAN_LEFT) * float(s) for s in steps]
    half = [0.5 * (now + (today - now) * part) for part in kept]
    upper = [(x, MIDDLE - h) for x, h in zip(xs, half, strict=True)]
    lower = [(x, MIDDLE + h) for x, h in zip(xs[::-1], half[::-1], strict=True)]
    widest = box(PLAN_LEFT, MIDDLE - 0.6 * today, end - PLAN_LEFT, 1.2 * today)
    return [
        *wood_round([*upper, *lower], tuple(grain_lines(widest, "x", 8, 3)), "wood"),
        *broken(PLAN_LEFT, MIDDLE - 0.52 * now, 1.04 * now),
        *_today(d, PLAN_LEFT, end, today),
        *wood(box(end, MIDDLE - 0.5 * today, border, today), "border-wood", "y", 31),
        Line([(end, MIDDLE - 0.5 * today), (end, MIDDLE + 0.5 * today)], "glue", 3.5),
    ]


def breadboard(d: Drawn) -> list[Mark]:
    """An end on pins."""
    return _across_end(d, pins=True)


def own_blank(d: Drawn) -> list[Mark]:
    """An end piece whose grain runs with the panel's."""
    return _across_end(d, alike=True)


def along_edges(d: Drawn) -> list[Mark]:
    """Strips along both edges, moving with the panel."""
    today, now, border = _sizes(d)
    strip = border * now / today
    inner = now - 2.0 * strip
    marks = _panel(PLAN_LEFT, RIGHT, inner)
    for top in (MIDDLE - 0.5 * now, MIDDLE + 0.5 * inner):
        marks += wood(box(PLAN_LEFT, top, PLAN_WIDTH, strip), "border-wood", seed=41)
    return [*marks, *broken(PLAN_LEFT, MIDDLE - 0.52 * now, 1.04 * now), *_today(d, PLAN_LEFT, RIGHT, today)]


def frame(d: Drawn, mitred: bool = False) -> list[Mark]:
    """A frame around the panel; nothing moves outside that could be seen."""
    whole, _, border = _sizes(d)
    end, inner = RIGHT - border, whole - 2.0 * border
    marks = _panel(PLAN_LEFT, end, inner)
    for top in (MIDDLE - 0.5 * whole, MIDDLE + 0.5 * inner):
        marks += wood(box(PLAN_LEFT, top, PLAN_WIDTH, border), "border-wood", seed=41)
    marks += wood(box(end, MIDDLE - 0.5 * inner, border, inner), "border-wood", "y", 31)
    if mitred:
        for side in (-1.0, 1.0):
            corner = MIDDLE + side * 0.5 * inner
            marks.append(Line([(end, corner), (RIGHT, corner + side * border)], "edge", 2.0))
    return [*marks, *broken(PLAN_LEFT, MIDDLE - 0.52 * whole, 1.04 * whole)]


def mitred(d: Drawn) -> list[Mark]:
    """A frame whose corners are cut at 45 degrees."""
    return frame(d, mitred=True)


def battened(d: Drawn) -> list[Mark]:
    """Two battens below, dashed."""
    today, now, _ = _sizes(d)
    reach = 0.97 * today
    marks = [*_panel(PLAN_LEFT, RIGHT, now), *_today(d, PLAN_LEFT, RIGHT, today)]
    for x in (RIGHT - 60.0, RIGHT - 190.0):
        batten = box(x, MIDDLE - 0.5 * reach, 28.0, reach)
        marks.append(Line([*batten, batten[0]], "edge", 1.4, "6 4"))
        away = 0.4 * now * (0.0 if d.way.key == "sliding_dovetail" else 1.0)
        marks += [Circle(x + 14.0, MIDDLE + s * away, 3.0, "metal", filled=True) for s in (-1.0, 0.0, 1.0)]
    return marks


def on_apron(d: Drawn) -> list[Mark]:
    """An apron below, dashed, fixed at the middle of its end rail."""
    today, now, _ = _sizes(d)
    half, end = 0.38 * today, RIGHT - 26.0
    apron = [(PLAN_LEFT, MIDDLE - half), (end, MIDDLE - half), (end, MIDDLE + half), (PLAN_LEFT, MIDDLE + half)]
    return [
        *_panel(PLAN_LEFT, RIGHT, now),
        *_today(d, PLAN_LEFT, RIGHT, today),
        Line(apron, "edge", 1.4, "6 4"),
        Circle(RIGHT - 34.0, MIDDLE, 4.0, "metal", filled=True),
    ]


def in_opening(d: Drawn) -> list[Mark]:
    """A part in its opening, standing on its lower or hinged edge; the gap at the other is drawn as much larger."""
    opening = d.piece["width"] * d.scale.plan_px
    top, low = MIDDLE - 0.5 * opening, MIDDLE + 0.5 * opening
    today = low - opening + d.sizes["gap_today"] * (d.scale.plan_px * d.scale.times)
    edge = today - d.width_change * d.scale.plan_px * d.scale.times
    return [
        *end_wood(corners(PLAN_LEFT, top - 14.0, RIGHT, top)),
        *end_wood(corners(PLAN_LEFT, low, RIGHT, low + 14.0)),
        *wood(corners(PLAN_LEFT, edge, RIGHT, low), count=8),
        Line([(PLAN_LEFT, today), (RIGHT, today)], "today", 1.4, "5 4"),
    ]


def drawer(d: Drawn) -> list[Mark]:
    """A drawer from below: the bottom fixed at the front (below), passing the back (above)."""
    today, now, _ = _sizes(d)
    low = MIDDLE + 0.5 * today
    today_edge = low - today
    back = corners(PLAN_LEFT + 14.0, today_edge - 4.0, RIGHT - 14.0, today_edge + 10.0)
    sides = [corners(x, today_edge - 4.0, x + 14.0, low) for x in (PLAN_LEFT, RIGHT - 14.0)]
    return [
        *wood(corners(PLAN_LEFT + 14.0, low - now, RIGHT - 14.0, low), count=9),
        Line([*back, back[0]], "edge", 1.4, "6 4"),
        *wood(sides[0], "border-wood", "y"),
        *wood(sides[1], "border-wood", "y"),
        *wood(corners(PLAN_LEFT, low, RIGHT, low + 16.0), "border-wood"),
        Circle(PLAN_LEFT + 0.5 * PLAN_WIDTH, today_edge + 3.0, 3.0, "metal", filled=True),
    ]


def boards(d: Drawn) -> list[Mark]:
    """Four boards upright in a case, each about its own middle."""
    change = d.width_change / d.piece["width"] * d.scale.times
    pitch = (PLAN_WIDTH - 28.0) / 4.0
    top, low = MIDDLE - 110.0, MIDDLE + 110.0
    sides = [corners(x, top, x + 14.0, low) for x in (PLAN_LEFT, RIGHT - 14.0)]
    marks = [*end_wood(sides[0]), *end_wood(sides[1])]
    for k in range(4):
        middle, half = PLAN_LEFT + 14.0 + pitch * (k + 0.5), 0.5 * pitch * 0.7 * (1.0 + change)
        marks += wood(corners(middle - half, top, middle + half, low), along="y", seed=k + 1)
        marks += [Circle(middle, y, 3.0, "metal", filled=True) for y in (top + 12.0, low - 12.0)]
    return marks


def round_part(d: Drawn) -> list[Mark]:
    """A round and what it becomes: its rings stay, its outline goes oval."""
    middle = PLAN_LEFT + 0.5 * PLAN_WIDTH
    ways = [d.moved(name) / d.piece["width"] * d.scale.times for name in ("large", "small")]
    turn = np.linspace(0.0, 2.0 * np.pi, 49)
    outline = [
        (middle + 120.0 * (1.0 + ways[0]) * float(np.cos(a)), MIDDLE + 120.0 * (1.0 + ways[1]) * float(np.sin(a)))
        for a in turn
    ]
    rings = tuple(grain_lines(box(middle - 180.0, MIDDLE - 180.0, 360.0, 360.0), "x", 16, 7))
    today = [(middle + 120.0 * float(np.cos(a)), MIDDLE + 120.0 * float(np.sin(a))) for a in turn]
    return [*wood_round(outline, rings), Line(today, "today", 1.4, "5 4")]


def wood_round(outline: list, rings: tuple, role: str = "wood-end") -> list[Mark]:
    """Wood inside a closed curve."""
    return [Area(outline, role), Window(outline, rings), Line([*outline, outline[0]], "edge", 1.8)]
