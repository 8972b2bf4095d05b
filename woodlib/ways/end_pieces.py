"""A panel of the whole width between two end pieces: its sizes, its parts and the view from above."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Circle, Mark, box
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn, wood
from .given import Given
from .made import JointLine, Place, Section, WoodPart
from .making import ZERO
from .plan_drawing import panel, sheet_box, sizes_px, today_lines
from .steps import Step

CUT_END_PIECES = Step("cut the end pieces to size", ["parallel face"], ["square end pieces"])


def end_pieces(given: Given) -> WoodPart:
    """Two pieces across the ends, their grain along their own length."""
    return WoodPart("end piece", 2, given.width, given.border, given.border_thickness)


def end_places(given: Given, panel: str = "panel", grain: str = "across") -> tuple[Place, ...]:
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    across = (Fraction(0), wide)
    return (
        Place("end piece", (Fraction(0), border), across, grain),
        Place(panel, (border, long - border), across),
        Place("end piece", (long - border, long), across, grain),
    )


def end_section(given: Given, end: bool = True, tongue: tuple[Fraction, Fraction] | None = None) -> list[Section]:
    """Cut along the piece: two ends, the panel between them, and its tongues (length, thickness) in the ends."""
    long, border = given.length.exact_m, given.border.exact_m
    thick, ends = given.thickness.exact_m, given.border_thickness.exact_m
    found = [
        Section("end piece", (ZERO, border), (ZERO, ends), end),
        Section("end piece", (long - border, long), (ZERO, ends), end),
        Section("panel", (border, long - border), (ZERO, thick), False),
    ]
    if tongue:
        reach, tongue_thick = tongue
        depth = (thick - tongue_thick) / 2, (thick + tongue_thick) / 2
        found.append(Section("tongue", (border - reach, border), depth, False, loose=True))
        found.append(Section("tongue", (long - border, long - border + reach), depth, False, loose=True))
    return found


def end_lines(given: Given, outward: Fraction, loose: bool) -> tuple[JointLine, ...]:
    long, border = given.length.exact_m, given.border.exact_m
    return (
        JointLine("left end piece", "across", border, border - outward, border, loose),
        JointLine("right end piece", "across", long - border, long - border, long - border + outward, loose),
    )


def across_end(d: Drawn, pins: bool = False, alike: bool = False) -> list[Mark]:
    today, now, border = sizes_px(d)
    end = PLAN_RIGHT - border
    height = now if alike else today
    cross = wood(
        box(end, MIDDLE - 0.5 * height, border, height),
        "border-wood",
        "x" if alike else "y",
        31,
        22 if alike else 4,
        sheet_box(end),
    )
    marks = [*panel(PLAN_LEFT, end, now), *today_lines(d, PLAN_LEFT, end, today), *cross]
    if pins:
        away = d.numbers["outer_distance"] * d.scale.plan_px
        marks += [Circle(end + 0.4 * border, MIDDLE + s * away, 3.5, "metal", filled=True) for s in (-1.0, 0.0, 1.0)]
    return marks
