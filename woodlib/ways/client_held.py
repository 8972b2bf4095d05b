"""The half of a client's view that is held fast: from above, and the end that splits."""

from __future__ import annotations

from math import exp, sqrt

from ..picture.scene import Area, Line, Mark, corners
from ..words.decided import Pick
from ..words.say import Said
from .client_parts import (
    HALF,
    PLAN_LOW,
    PLAN_TOP,
    Seen,
    end_grain,
    rail_from_above,
    sized,
    slab,
    torn,
    wood_from_above,
)

SPLIT_SHARES = (0.0, 0.18, 0.36, 0.54, 0.72, 0.88, 1.0)  # places along a split, where it turns a little


def held_fast(seen: Seen, left: float, ends: bool) -> list[Mark]:
    """A panel that something keeps from moving: a border across its end, or (``ends`` false) its two long edges."""
    middle = left + 0.5 * HALF
    half = 0.5 * seen.width * seen.px
    low = PLAN_LOW - (seen.border * seen.px if ends else 0.0)
    grip_px = seen.reach * seen.px
    marks: list[Mark] = []
    right_edge = []
    for share in (0.0, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0):
        y = low - share * (low - PLAN_TOP)
        held = seen.grip * exp(-(low - y) / max(grip_px, 1e-6)) if ends else 1.0
        right_edge.append((half + 0.5 * seen.drawn(seen.goes * seen.width) * (1.0 - held), y))
    outline = [(middle - dx, y) for dx, y in reversed(right_edge)] + [(middle + dx, y) for dx, y in right_edge]
    marks += wood_from_above(seen, outline, middle - half, 2.0 * half)
    today = [[(middle + side * half, PLAN_TOP), (middle + side * half, low)] for side in (-1.0, 1.0)]
    marks += [Line(points, "quiet", 1.0, "2 3") for points in today]
    zone = corners(middle - half + 1, low - min(grip_px, 0.9 * (low - PLAN_TOP)), middle + half - 1, low - 1)
    marks += [Area(zone, "past-limit", shown=seen.past), Area(zone, "pulled-hard", shown=seen.pulled)]
    if ends:
        marks += rail_from_above(seen, corners(middle - half, low, middle + half, PLAN_LOW))
    split = seen.drawn(seen.split) if seen.level == 2 else 0.0
    tip = low - max(min(grip_px, 0.8 * (low - PLAN_TOP)), 20.0)
    jag = (0.0, 1.6, -1.4, 1.2, -1.0, 0.6, 0.0)
    steps = [(share, low - share * (low - tip), shift) for share, shift in zip(SPLIT_SHARES, jag, strict=True)]
    sides = [
        [(middle + shift + side * 0.5 * split * sqrt(1.0 - share), y) for share, y, shift in steps] for side in (-1, 1)
    ]
    marks.append(Area([*sides[0], *reversed(sides[1])], "split", shown=seen.past))
    return [*marks, *torn(left)]


def held_cut(seen: Seen, left: float, split_text: Said | Pick | str) -> list[Mark]:
    """End grain at the middle of the held end, with its split open where it is past its limit."""
    middle = left + 0.5 * HALF
    open_px = seen.split * seen.cut_px if seen.level == 2 else 0.0
    whole = slab(seen, left + 2, left + HALF - 2, seen.thickness)
    marks = end_grain(seen, whole, middle)
    top, low = whole[0][1], whole[2][1]
    jag = (0.6, -0.8, 1.0, -0.6, 0.4)
    ys = [top + (low - top) * k / 4.0 for k in range(5)]
    crack = [(middle + j - 0.5 * open_px, y) for j, y in zip(jag, ys, strict=True)]
    crack += [(middle + j + 0.5 * open_px, y) for j, y in zip(reversed(jag), reversed(ys), strict=True)]
    marks.append(Area(crack, "split", shown=seen.past))
    marks += sized(left, middle - 0.5 * open_px, middle + 0.5 * open_px, split_text, seen.past)
    return marks
