"""Marks that the shop drawings share: the sheet, its heading and scale, upright dimensions, and holes with their places."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Area, Circle, Line, Mark, Words, box, dimension_line
from .hardware import SetHardware
from .lists import size_text
from .plan import SettingOut

WIDTH, HEIGHT = 720.0, 540.0
LEFT, TOP, ROOM_ALONG, ROOM_ACROSS = 92.0, 98.0, 560.0, 236.0


def scale_for(long: Fraction, wide: Fraction) -> float:
    """Pixels per metre at which the plan fits its room."""
    return min(ROOM_ALONG / float(long), ROOM_ACROSS / float(wide))


def scale_text(scale: float) -> str:
    """The scale on paper, where the sheet prints at 96 px an inch."""
    return f"Drawn at 1 to {96 / 0.0254 / scale:.1f} where the sheet is 7-1/2 in (190 mm) wide; do not measure off it."


def head(title: str, notes: tuple[str, ...], tall: float = HEIGHT) -> list[Mark]:
    """The title above, the notes below."""
    kept = [note for note in notes if note]
    below = tall - 14 - 20 * (len(kept) - 1)
    return [
        Words(LEFT - 72, 26, title, "ink", 18 if len(title) < 70 else 14, "start", bold=True),
        *(Words(LEFT - 72, below + 20 * number, note, "quiet", 14, "start") for number, note in enumerate(kept)),
    ]


def upright(x: float, top: float, size: Fraction, scale: float, first: str) -> list[Mark]:
    """An upright dimension with its text turned along it, or on two level lines where it is too short for that."""
    bottom, text = top + float(size) * scale, size_text(size, first)
    line = dimension_line((x, top), (x, bottom), "")
    if bottom - top > 7.5 * len(text):
        return [*line, Words(x - 8, (top + bottom) / 2, text, "ink", 14, turn=90)]
    begin, end = text.rstrip(")").split(" (")
    middle = max((top + bottom) / 2, top + 14)
    return [*line, Words(x - 4, middle + 2, begin, "ink", 14, "end"), Words(x - 4, middle + 18, end, "ink", 14, "end")]


def holes(plan: SettingOut, scale: float) -> list[Mark]:
    """Holes from the front edge, which is drawn at the bottom, with their distance from the left end."""
    marks: list[Mark] = []
    _, wide, _ = plan.panel_m
    front = TOP + float(wide) * scale
    y_dimension = front + 24
    for item in plan.hardware:
        centres = [(LEFT + float(along) * scale, front - float(across) * scale) for along, across in item.centres_m]
        for x, y in centres:
            marks += [
                Circle(x, y, max(3.0, float(item.fit.drill.size_m) / 2 * scale), "ink", 1.4),
                Line([(x - 7, y), (x + 7, y)], "ink", 0.8),
                Line([(x, y - 7), (x, y + 7)], "ink", 0.8),
            ]
        marks += slots(item, centres, scale)
        (x0, y0), (x1, y1) = centres[0], centres[-1]
        text = size_text(item.pair.centres_m, plan.first)
        if item.runs == "along the grain":
            marks += dimension_line((x0, y_dimension), (x1, y_dimension), "", size=14)
            middle = (x0 + x1) / 2
            marks.append(Line([(middle, y0 - 16), (middle, y_dimension + 46)], "quiet", 0.8, dash="8 3 2 3"))
            half = 3.7 * len(text)  # a ground, so that the centre line does not run through the number
            marks.append(Area(box(middle - half, y_dimension + 7, 2 * half, 18), "paper"))
            marks.append(Words(middle, y_dimension + 20, text, "ink", 14))
        else:
            marks.append(Words(x0 + 14, (y0 + y1) / 2 + 5, text, "ink", 14, "start"))
            marks += dimension_line((x0 + 9, y0), (x1 + 9, y1), "")
    return marks


def slots(item: SetHardware, centres: list[tuple[float, float]], scale: float) -> list[Mark]:
    """Slots across the grain as outlines about their middles; further from the round hole is away from it."""
    marks: list[Mark] = []
    for place, (x, y) in zip(item.pair.holes_m, centres, strict=True):
        found = item.slots.at(place) if item.slots else None
        if item.slots is None or found is None:
            continue
        length, middle = (float(rounding.marked_m) * scale for rounding in found)
        wide = max(6.0, float(item.fit.drill.size_m) * scale)
        away = -1.0 if float(place) > item.slots.plan.fixed_m else 1.0  # px grow downward, towards the front edge
        outline = box(x - wide / 2, y + away * middle - length / 2, wide, length)
        marks.append(Line([*outline, outline[0]], "dry", 1.4))
        marks.append(Words(x + 14, y - 7, f"slot {found[0].text}", "ink", 14, "start"))
    return marks


def middles(plan: SettingOut, scale: float, y: float) -> list[Mark]:
    """A chain from the left end over the centre lines of hardware along the grain."""
    marks: list[Mark] = []
    at = Fraction(0)
    for middle in sorted(item.pair.middle_m for item in plan.hardware if item.runs == "along the grain"):
        x0, x1 = LEFT + float(at) * scale, LEFT + float(middle) * scale
        marks += dimension_line((x0, y), (x1, y), size_text(middle - at, plan.first), size=14)
        at = middle
    return marks


def holes_text(plan: SettingOut) -> str:
    """How wide the holes are and how far in, in a line."""
    if not plan.hardware:
        return ""
    places = {(item.inset_m, plan.edge if item.runs == "along the grain" else "left end") for item in plan.hardware}
    bores = {item.fit.drill.text for item in plan.hardware}
    bored = f"Holes {' and '.join(sorted(bores))}"
    if len(places) > 1 or len(bores) > 1:
        return f"{bored}, marked from their centre lines; how far in, see the hole list."
    inset, edge = min(places)
    return f"{bored}, {size_text(inset, plan.first)} from the {edge}, marked from their centre lines."
