"""The sheet with the blank that a panel is cut from: waste, numbered pieces, glue lines and dowels, to one standard scale."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise, zip_longest

from ..picture.scene import Picture
from .plan import SettingOut
from .section_drawing import size, title_block
from .sheet import PX_MM, Sheet, scale_in, scale_text
from .sheet_words import check_blank


def blank_sheet(plan: SettingOut, paper: str = "A4") -> Picture:
    """The blank from its show face, front edge below. Raises :class:`InputError` where nothing is glued up."""
    check_blank(plan)
    blank, first = plan.glued_blank, plan.first
    sheet = Sheet(f"{plan.title}: the blank", paper)
    long, wide = blank.length.total_m, blank.width.total_m
    scale = min(
        scale_in(first, float(long), sheet.right - sheet.left - 220, 1),
        scale_in(first, float(wide), sheet.low - sheet.top - 260, 1),
    )
    px = scale * 1000 * PX_MM
    left, top = sheet.left + 40, sheet.top + 110
    low = top + float(wide) * px

    def at(along: Fraction, across: Fraction) -> tuple[float, float]:
        return left + float(along) * px, low - float(across) * px

    def outline(along: tuple[Fraction, Fraction], across: tuple[Fraction, Fraction]) -> list[tuple[float, float]]:
        return [at(along[0], across[1]), at(along[1], across[1]), at(along[1], across[0]), at(along[0], across[0])]

    nothing = Fraction(0)
    sheet.shape(outline((nothing, long), (nothing, wide)), "grid")
    inside = blank.width.span(1)
    pieces = [(part, begin, end) for part, begin, end in blank.length.spans() if part.kind == "piece"]
    for part, begin, end in pieces:
        sheet.shape(outline((begin, end), inside), "wood" if part.name == "panel" else "border-wood")
        x, y = at((begin + end) / 2, inside[1])
        sheet.ring(x, y + 18, 12)
        sheet.text(x, y + 23, str(part.number), 14, True, "middle")
    _glue_lines(plan, sheet, at, px)
    stops = sorted({nothing, long, *(end for _, *ends in pieces for end in ends)})
    for number, row in enumerate((stops, [nothing, long])):
        y = top - 24 - 40 * number
        for begin, end in pairwise(row):
            low_spot, high_spot = at(begin, wide), at(end, wide)
            sheet.dimension((low_spot[0], y), (high_spot[0], y), size(end - begin, first), (low_spot, high_spot))
    for number, row in enumerate((sorted({nothing, *inside, wide}), [nothing, wide])):
        x = left + float(long) * px + 24 + 70 * number
        for begin, end in pairwise(row):
            low_spot, high_spot = at(long, begin), at(long, end)
            sheet.dimension((x, low_spot[1]), (x, high_spot[1]), size(end - begin, first), (low_spot, high_spot))
    notes = (
        f"{blank.text(first)}; {plan.edge} below",
        "Number the pieces on the show face before the first cut.",
        *(f"{part.number}: {part.name}, {size(part.size_m, first)} long" for part, *_ in pieces),
    )
    for number, note in enumerate(notes):
        sheet.text(sheet.left + 10, low + 48 + 19 * number, note, 12, not number)
    return sheet.finish(title_block(plan, scale_text(scale), "the blank"))


def _glue_lines(plan: SettingOut, sheet: Sheet, at, px: float) -> None:
    """Where boards meet, and the dowels across each joint; those in the way of a cut in the colour of a stop."""
    if plan.boards is None:
        return
    for across, joint in zip_longest(plan.boards.joints_m, plan.joints):
        sheet.line([at(Fraction(0), across), at(plan.glued_blank.length.total_m, across)], "glue", 1.2, "6 3")
        if joint is None:  # too thin for dowels
            continue
        reach, role = joint.joint.reach_m, "stop" if joint.places_m is None else "ink"
        for place in joint.places_m or joint.wanted_m:
            sheet.line(
                [at(place, across - reach), at(place, across + reach)], role, max(2.0, float(joint.joint.size_m) * px)
            )
