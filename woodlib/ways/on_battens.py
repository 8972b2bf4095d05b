"""A panel on battens below it: its parts and the view from above."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Circle, Line, Mark, box
from ..units.exact import Rounding, even_row
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn
from .given import Given
from .made import MadePiece, Place, Section, Size, Sum, WoodPart
from .making import made, whole_panel
from .plan_drawing import panel, sizes_px, today_lines


def batten_middles(given: Given) -> tuple[Fraction, ...]:
    """Middles of the battens along the panel, mirrored; a single one where two would not stand a batten apart."""
    end, apart = given.batten_row
    if given.length.exact_m - 2 * end < 2 * given.border.exact_m:
        return (given.length.exact_m / 2,)
    whole = given.length.exact_m

    def marked(place: Fraction) -> Fraction:
        """The nearest mark of the rule, alike from both ends; the very middle stays in the middle."""
        if 2 * place > whole:
            return whole - marked(whole - place)
        return place if 2 * place == whole else Rounding(place, given.rule).marked_m

    return tuple(marked(place) for place in even_row(whole, end, apart))


def on_battens(given: Given, length: Size, front: Fraction, sunk: Fraction, whole: Sum) -> MadePiece:
    """A whole panel on battens of one length that begin ``front`` behind its front edge."""
    middles, half = batten_middles(given), given.border.exact_m / 2
    battens = WoodPart(
        "batten",
        len(middles),
        length,
        given.border,
        given.border_thickness,
        note="middles from the left end: " + ", ".join(given.written(m) for m in middles),
    )
    span = front, front + length.exact_m
    zero, wide, thick = Fraction(0), given.width.exact_m, given.thickness.exact_m
    below = thick - sunk, thick - sunk + given.border_thickness.exact_m
    places = [Place("panel", (zero, given.length.exact_m), (zero, wide))]
    places += [Place("batten", (m - half, m + half), span, "across", below=True) for m in middles]
    section = Section("panel", (zero, wide), (zero, thick)), Section("batten", span, below, False, loose=True)
    return made(given, (whole_panel(given), battens), (whole,), places, section, max(thick, below[1]))


def battened(d: Drawn, screwed: bool = True) -> list[Mark]:
    """Two battens below, dashed, screwed on at the middle and near their ends, or at the middle alone."""
    today, now, _ = sizes_px(d)
    reach = 0.97 * today
    marks = [*panel(PLAN_LEFT, PLAN_RIGHT, now), *today_lines(d, PLAN_LEFT, PLAN_RIGHT, today)]
    for x in (PLAN_RIGHT - 60.0, PLAN_RIGHT - 190.0):
        batten = box(x, MIDDLE - 0.5 * reach, 28.0, reach)
        marks.append(Line([*batten, batten[0]], "edge", 1.4, "6 4"))
        away = 0.4 * now if screwed else 0.0
        marks += [Circle(x + 14.0, MIDDLE + s * away, 3.0, "metal", filled=True) for s in (-1.0, 0.0, 1.0)]
    return marks
