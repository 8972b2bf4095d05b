"""Pieces as they are built, seen from above by a client: framed, ended, free, in an opening, of boards, round."""

from __future__ import annotations

from math import cos, pi, sin

from ..picture.scene import Area, Circle, Line, Mark, Window, corners
from ..picture.stem import Stem, face_grain, stems
from .client_parts import (
    HALF,
    PLAN_LOW,
    PLAN_TOP,
    Seen,
    rail_from_above,
    stile_from_above,
    torn,
    wood_from_above,
)


def framed_plan(seen: Seen, left: float) -> list[Mark]:
    """A loose panel in its frame; the tongue shows in the line."""
    middle, px = left + 0.5 * HALF, seen.px
    half, border = 0.5 * seen.width * px, seen.border * px
    inside = corners(middle - half + border, PLAN_TOP, middle + half - border, PLAN_LOW - border)
    line = max(seen.line * px * seen.times / 2.0, 1.0)
    panel = corners(inside[0][0] + line, PLAN_TOP, inside[1][0] - line, PLAN_LOW - border - 2.0)
    marks: list[Mark] = [Area(inside, "shadow")]
    marks += wood_from_above(seen, panel, middle - half + border, 2.0 * (half - border))
    marks += stile_from_above(seen, corners(middle - half, PLAN_TOP, middle - half + border, PLAN_LOW))
    marks += stile_from_above(seen, corners(middle + half - border, PLAN_TOP, middle + half, PLAN_LOW))
    marks += rail_from_above(seen, corners(middle - half + border, PLAN_LOW - border, middle + half - border, PLAN_LOW))
    return [*marks, *torn(left)]


def ended_plan(seen: Seen, left: float) -> list[Mark]:
    """A panel that becomes wider and narrower past an end piece that does not."""
    middle, px = left + 0.5 * HALF, seen.px
    half, low = 0.5 * seen.width * px, PLAN_LOW - seen.border * px
    now = half + 0.5 * seen.drawn(seen.goes * seen.width)
    marks = wood_from_above(seen, corners(middle - now, PLAN_TOP, middle + now, low), middle - half, 2.0 * half)
    marks += rail_from_above(seen, corners(middle - half, low, middle + half, PLAN_LOW))
    return [*marks, *torn(left)]


def free_plan(seen: Seen, left: float) -> list[Mark]:
    """A panel that nothing stops, with today's width dotted."""
    middle = left + 0.5 * HALF
    half = 0.5 * seen.width * seen.px
    now = half + 0.5 * seen.drawn(seen.goes * seen.width)
    marks = wood_from_above(seen, corners(middle - now, PLAN_TOP, middle + now, PLAN_LOW), middle - half, 2.0 * half)
    for side in (-1.0, 1.0):
        marks.append(Line([(middle + side * half, PLAN_TOP), (middle + side * half, PLAN_LOW)], "quiet", 1.0, "2 3"))
    return [*marks, *torn(left)]


def opening_plan(seen: Seen, left: float) -> list[Mark]:
    """A part in its opening, standing on its lower edge, the line above it."""
    room = PLAN_LOW - PLAN_TOP - 24.0
    tall = min(seen.width * seen.px * 0.86, room)
    low = 0.5 * (PLAN_TOP + PLAN_LOW) + 0.5 * tall
    line = min(seen.line / seen.width * tall * seen.times, 0.4 * tall)
    case = corners(left + 4, low - tall - 10, left + HALF - 4, low + 10)
    hole = corners(left + 14, low - tall, left + HALF - 14, low)
    part = corners(left + 16, low - tall + line, left + HALF - 16, low)
    marks = [*stile_from_above(seen, case), Area(hole, "gap")]
    grain = [
        Line([(left + 16, y), (left + HALF - 16, y + 1.5)], "late-wood", 0.8)
        for y in (low - tall * share for share in (0.12, 0.3, 0.45, 0.62, 0.8))
    ]
    marks += [Area(part, "grid" if seen.painted else "wood"), Window(part, () if seen.painted else tuple(grain))]
    return [*marks, Line([*part, part[0]], "edge", 1.4)]


def boards_plan(seen: Seen, left: float) -> list[Mark]:
    """Boards side by side, each with its own line."""
    middle, half = left + 0.5 * HALF, 0.5 * seen.width * seen.px
    count = 5
    one = 2.0 * half / count
    line = min(max(seen.line * seen.px * seen.times, 0.8), 0.3 * one)
    marks: list[Mark] = [Area(corners(middle - half, PLAN_TOP, middle + half, PLAN_LOW), "shadow")]
    for number, stem in enumerate(stems(count, seen.ring_angle_deg)):
        begin = middle - half + number * one
        outline = corners(begin + 0.5 * line, PLAN_TOP, begin + one - 0.5 * line, PLAN_LOW)
        tall = (PLAN_LOW - PLAN_TOP) / seen.px
        grain = face_grain(stem, begin, PLAN_LOW, one / seen.px, seen.thickness, tall, seen.px, 6)
        marks += [Area(outline, "grid" if seen.painted else "wood")]
        marks += [Window(outline, () if seen.painted else tuple(grain)), Line([*outline, outline[0]], "edge", 1.2)]
    return [*marks, *torn(left)]


def round_plan(seen: Seen, left: float) -> list[Mark]:
    """The end of a round in its ring or hole, oval as the month makes it."""
    x, y, radius = left + 0.5 * HALF, 0.5 * (PLAN_TOP + PLAN_LOW), 40.0
    more = min(seen.line / seen.width * radius * seen.times, 10.0)
    turns = [2.0 * pi * k / 36 for k in range(37)]
    across, along = radius * (1.0 + 0.5 * seen.goes * seen.times), radius * (1.0 + 0.25 * seen.goes * seen.times)
    oval = [(x + along * cos(turn), y + across * sin(turn)) for turn in turns]
    stem = Stem(seen.ring_angle_deg, 0.02, 0.0)
    px = 2.0 * radius / seen.width
    rings = [Circle(x, y + 0.55 * seen.width * px, n * 0.11 * seen.width * px, "late-wood", 1.0) for n in range(1, 12)]
    return [
        Circle(x, y, radius + more + 13.0, "border-wood", filled=True),
        Circle(x, y, radius + more + 13.0, "edge", 1.4),
        Circle(x, y, radius + more, "gap", filled=True),
        Circle(x, y, radius + more, "edge", 1.2),
        Area(oval, "grid" if seen.painted else "wood-end"),
        Window(oval, () if seen.painted or stem.pith_m <= 0 else tuple(rings)),
        Line(oval, "edge", 1.4),
    ]
