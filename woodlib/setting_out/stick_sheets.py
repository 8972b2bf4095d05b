"""Story sticks: strips at full size with every joint and hole on its place, and two bars to check the print."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ..picture.scene import Picture
from ..ways.made import MadePiece
from .plan import SettingOut
from .section_drawing import size, title_block
from .sheet import MARGIN, PX_MM, Sheet, wide

STRIP_M, STRIPS = 0.2, 3  # so long that what is written at its end still finds room on both papers


def _stops(plan: SettingOut, axis: int) -> dict[Fraction, str]:
    """What is marked along one axis of the piece, by place."""
    made, runs = plan.piece, ("across", "along")[axis]
    found: dict[Fraction, list[str]] = {}
    for place, name in _joint_stops(made, runs):
        found.setdefault(place, []).append(name)
    for item in plan.hardware:
        for centre in item.centres_m:
            found.setdefault(centre[axis], []).append(item.pair.name)
    for fixing in made.fixings:
        found.setdefault((fixing.along_m, fixing.across_m)[axis], []).append(
            f"bore {size(fixing.diameter.exact_m, plan.first)}"
        )
    return {place: ", ".join(dict.fromkeys(names)) for place, names in sorted(found.items())}


def _joint_stops(made: MadePiece, runs: str) -> Iterator[tuple[Fraction, str]]:
    """Where joints are marked: in a frame its inner edge, and the shoulder, the end and the groove of what floats in it."""
    whole = made.size_m[1] if runs == "along" else made.size_m[0]
    for line in made.lines:
        if line.runs != runs:
            continue
        floats = line.loose and made.way.framed and made.panel is not None
        yield line.at_m, "inner edge of the frame" if floats else line.name
        if floats and made.panel:
            size_m = (made.panel.width if runs == "along" else made.panel.length).exact_m
            low = line.at_m < whole / 2
            shoulder, bottom = (line.high_m, line.low_m) if low else (line.low_m, line.high_m)
            begins = "panel's bevel begins" if any(part.bevel for part in made.section) else "panel's shoulder"
            yield from ((shoulder, begins),) if shoulder != line.at_m else ()
            yield (whole - size_m) / 2 if low else (whole + size_m) / 2, "panel's end"
            yield bottom, "bottom of its groove"


def stick_sheets(plan: SettingOut, paper: str = "A4") -> tuple[Picture, ...]:
    """Strips at full size with every joint and hole on its place, three on a sheet, and two bars to check the print."""
    strips = []
    for axis, name in enumerate(("along, from the left end", f"across, from the {plan.edge}")):
        stops, whole = _stops(plan, axis), plan.piece.size_m[axis]
        count = max(1, -(-whole // Fraction(STRIP_M).limit_denominator(1000)))
        for number in range(count if stops else 0):
            begin = number * Fraction(STRIP_M).limit_denominator(1000)
            end = min(whole, begin + Fraction(STRIP_M).limit_denominator(1000))
            inside = {p: what for p, what in stops.items() if begin <= p <= end}
            if inside or number in (0, count - 1):
                strips.append((name, number + 1, count, begin, end, inside))
    groups = [strips[at : at + STRIPS] for at in range(0, len(strips), STRIPS)]
    return tuple(_stick(plan, paper, number, group) for number, group in enumerate(groups, start=1))


def _stick(plan: SettingOut, paper: str, number: int, strips: list) -> Picture:
    sheet = Sheet(f"{plan.title}: story stick {number}", paper)
    px, left = 1000 * PX_MM, MARGIN + 24
    for x, long_m, said in ((left, 0.1, "100 mm"), (left + 460, 3 * 0.0254, "3 in")):
        y = sheet.top + 40
        sheet.dimension((x, y), (x + long_m * px, y), f"measure first: {said}")
    for row, (name, part, count, begin, end, stops) in enumerate(strips):
        y = sheet.top + 170 + row * 150
        sheet.line([(left, y), (left + float(end - begin) * px, y)], "ink", 2.6)
        shown = [
            (left + float(place - begin) * px, f"{size(place, plan.first)} {what}") for place, what in stops.items()
        ]
        for x, text, level in _stairs(shown):
            top = y - 16 - 15 * level
            sheet.line([(x, y), (x, top)], "ink", 1.0)
            sheet.text(x + 5, top + 9, text, 11)
        for place in (begin, end):
            x = left + float(place - begin) * px
            sheet.line([(x, y), (x, y + 10)], "ink", 1.0, "4 3")
        caption = f"Strip {part} of {count}, {name}: {size(begin, plan.first)} to {size(end, plan.first)}"
        sheet.text(left + 8, y + 22, caption, 12)
    return sheet.finish(title_block(plan, "1:1", f"{number + 2} story stick"))


def _stairs(said: list[tuple[float, str]]) -> list[tuple[float, str, int]]:
    """Marks with how high each is written: above every mark to its right that its text would run into."""
    found: list[tuple[float, str, int]] = []
    for x, text in reversed(said):
        over = [level for other, _, level in found if other < x + 10 + wide(text, 11)]
        found.append((x, text, max(over, default=-1) + 1))
    return found
